from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.line_text import (
    after_number,
    bare,
    is_grouped,
    lone_signs,
    numbers_in,
    point_of,
    unit_named,
    words_in,
)


@pytest.mark.parametrize(
    ("text", "point", "values"),
    [
        ("+00123.45", ".", ["123.45"]),
        ("-    0,35", ",", ["-0.35"]),
        ("-12.3", ".", ["-12.3"]),
        (".254", ".", ["0.254"]),
        ("12. g", ".", ["12"]),
        ("14:23:05 8.1", ".", ["14", "23", "5", "8.1"]),
        ("2026-03-14", ".", ["2026", "3", "14"]),
        ("14.03.2026", ".", ["14.03", "2026"]),
        ("07,0012.5", ",", ["7.0012", "5"]),
        ("1_0", ".", ["1", "0"]),
        ("--12.3", ".", ["12.3"]),
    ],
)
def test_numbers_are_found_with_their_signs(text: str, point: str, values: list[str]) -> None:
    assert [n.value for n in numbers_in(text, point)] == [Decimal(value) for value in values]


def test_digits_of_other_scripts_are_no_number() -> None:
    assert numbers_in("١٢.٣ g", ".") == []


def test_a_number_too_long_for_any_balance_has_no_value() -> None:
    [number] = numbers_in("1" * 16, ".")
    assert number.value is None


@given(st.text(max_size=60))
def test_every_number_found_stands_in_the_text(text: str) -> None:
    for point in (".", ",", ""):
        for number in numbers_in(text, point):
            assert text[number.start : number.end].endswith(number.digits)


@pytest.mark.parametrize(
    ("text", "point"),
    [("0,35 g", ","), ("ST,+12.3", "."), ("1,234.5", "."), ("1,2,3", "."), ("12 g", ".")],
)
def test_a_comma_is_the_decimal_sign_only_where_no_point_is(text: str, point: str) -> None:
    assert point_of(text) == point


def test_brackets_are_taken_out() -> None:
    assert bare("87.3[1]") == ("87.31", True)
    assert bare("87.31") == ("87.31", False)


@pytest.mark.parametrize(
    ("word", "unit"),
    [("g", "g"), ("G", "g"), ("KG", "kg"), ("Oz", "oz"), ("lbs", "lb"), ("t", "t"), ("T", None),
     ("pcs", None), ("", None)],
)  # fmt: skip
def test_units_are_known_whatever_their_capitals(word: str, unit: str | None) -> None:
    assert unit_named(word) == unit


def test_a_mark_glued_to_the_unit_is_a_word_of_its_own() -> None:
    assert [word.text for word in after_number("kgS x")] == ["kg", "S", "x"]
    assert [word.text for word in after_number("ozt")] == ["ozt"]
    assert [word.text for word in after_number(" gS")] == ["gS"]


def test_words_come_with_their_columns() -> None:
    assert [(w.text, w.column) for w in words_in("ST, A3")] == [("ST", 0), (",", 2), ("A3", 4)]


@pytest.mark.parametrize(
    ("text", "places"),
    [
        ("-;ST; 12.3", [0]),
        ("12.3- g", [4]),
        ("- 12.3 g", []),
        ("2026-03-14 12.3", []),
        ("---", [0, 1, 2]),
    ],
)
def test_signs_that_belong_to_no_number_are_seen(text: str, places: list[int]) -> None:
    assert list(lone_signs(text, numbers_in(text, "."))) == places


@pytest.mark.parametrize(
    ("text", "grouped"),
    [("1,234.5", True), ("1 234.5", True), ("1'234.5", True), ("7;234.5", False),
     ("1,+234.5", False), ("1  234.5", False)],
)  # fmt: skip
def test_the_end_of_a_longer_number_is_suspected(text: str, grouped: bool) -> None:
    assert is_grouped(text, numbers_in(text, ".")[-1]) is grouped
