from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.line_framing import LONGEST, Line, LineFramer

BYTES = st.binary(max_size=400) | st.lists(
    st.sampled_from([b"\r\n", b"\r", b"\n", b"\x02", b"\x03", b"12.3 g", b"x" * 70, b"5C"])
).map(b"".join)


def lines(*chunks: bytes, whole: bool = True) -> list[Line]:
    framer = LineFramer(whole)
    return [line for chunk in chunks for line in framer.feed(chunk)]


@pytest.mark.parametrize("end", [b"\r\n", b"\r", b"\n", b"\n\r", b"\r\r\n"])
def test_any_line_end_ends_a_line_and_none_makes_an_empty_one(end: bytes) -> None:
    assert lines(b"12.3 g" + end + b"12.4 g" + end) == [
        Line(b"12.3 g", True),
        Line(b"12.4 g", True),
    ]


@given(BYTES, st.integers(1, 20))
def test_where_a_stream_is_cut_makes_no_difference(data: bytes, size: int) -> None:
    chunks = [data[at : at + size] for at in range(0, len(data), size)]
    assert lines(*chunks) == lines(data)


@given(BYTES)
def test_no_line_is_longer_than_the_longest(data: bytes) -> None:
    assert all(0 < len(line.raw) <= LONGEST for line in lines(data))


def test_the_first_line_after_opening_may_lack_its_beginning() -> None:
    assert lines(b"2.3 g\r\n12.4 g\r\n", whole=False) == [
        Line(b"2.3 g", False),
        Line(b"12.4 g", True),
    ]


def test_what_follows_an_endless_stretch_is_not_whole_either() -> None:
    begun = lines(b"x" * LONGEST + b"12.3 g\r12.4 g\r")
    assert [line.whole for line in begun] == [False, False, True]


def test_a_line_between_stx_and_etx_is_whole_even_after_opening() -> None:
    assert lines(b"\x0212.3 g\x03", whole=False) == [Line(b"12.3 g", True, wrapped=True)]


@pytest.mark.parametrize("check", [b"", b"A", b"5C", b"5C\r\n", b"\x02", b"\x03", b"\r", b"\xff"])
def test_check_characters_after_etx_belong_to_no_line(check: bytes) -> None:
    wrapped = Line(b"12.3 g", True, wrapped=True)
    data = (b"\x0212.3 g\x03" + check) * 3
    assert lines(data) == [wrapped] * 3


def test_a_wrapped_line_that_lost_its_end_is_not_glued_to_the_next() -> None:
    assert lines(b"\x0212.3\x0212.4 g\x03") == [
        Line(b"12.3", False, wrapped=True),
        Line(b"12.4 g", True, wrapped=True),
    ]


def test_one_stray_stx_does_not_deafen_for_lines_without() -> None:
    assert lines(b"12.3\x02 g\r\n12.4 g\r\n")[-1] == Line(b"12.4 g", True)


@pytest.mark.parametrize("raw", [b"12.3\xff", b"12.3\x00", b"\x1b12.3"])
def test_only_printable_characters_are_text(raw: bytes) -> None:
    assert Line(raw, True).text is None


def test_a_tab_is_a_space() -> None:
    assert Line(b"12.3\tg", True).text == "12.3 g"
