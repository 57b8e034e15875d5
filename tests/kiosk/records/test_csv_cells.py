from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kiosk.records.csv_cells import harmless, line

TEXTS = st.text(st.characters(codec="utf-8", exclude_characters="\0"))


@pytest.mark.parametrize(
    ("cells", "expected"),
    [  # RFC 4180, section 2: rules 1 and 4 to 7
        (("aaa", "bbb", "ccc"), "aaa,bbb,ccc\r\n"),
        (("aaa", "b\r\nbb", "ccc"), 'aaa,"b\r\nbb",ccc\r\n'),
        (("aaa", 'b"bb', "ccc"), 'aaa,"b""bb",ccc\r\n'),
        (("aaa", "b,bb", "ccc"), 'aaa,"b,bb",ccc\r\n'),
        ((" aaa", "bbb "), '" aaa","bbb "\r\n'),  # spaces are part of a field
    ],
)
def test_lines_are_those_of_rfc_4180(cells: tuple[str, ...], expected: str) -> None:
    assert line(cells) == expected


def test_nothing_is_not_an_empty_text() -> None:
    assert line([None, "", None]) == ',"",\r\n'


@given(st.lists(st.lists(TEXTS, min_size=2, max_size=2), max_size=4))
def test_another_reader_gets_back_what_was_written(rows: list[list[str]]) -> None:
    text = "".join(map(line, rows))
    assert list(csv.reader(io.StringIO(text, newline=""), strict=True)) == rows


@pytest.mark.parametrize(
    "text",
    [
        "=1+1",
        "+49",
        "-2+3",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n=1",
        " =1",
        "\u00a0=1",
        "＝1",
        "＠x",
        "'=1",
    ],
)
def test_a_formula_becomes_a_text(text: str) -> None:
    assert harmless(text) == "'" + text


@pytest.mark.parametrize("text", ["", "Heron", "a=1", "O'Neil", "3-4", "[1]", "Zoé", "🐦"])
def test_other_texts_stay_as_they_are(text: str) -> None:
    assert harmless(text) == text


@given(TEXTS)
def test_taking_off_one_apostrophe_gives_back_every_text(text: str) -> None:
    assert harmless(text).removeprefix("'") == text


@given(TEXTS)
def test_nothing_harmless_begins_like_a_formula(text: str) -> None:
    assert not harmless(text).lstrip().startswith(("=", "+", "-", "@", "＝", "＋", "－", "＠"))
