from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.texts.typed import MOST_CHARACTERS, NotANumberError, typed_number, typed_whole_number


@pytest.mark.parametrize(
    "text", ["0", "12", "3.40", "+3.4", "-3.4", ".5", "5.", "007", "0" * MOST_CHARACTERS]
)
def test_a_plain_number_keeps_its_digits(text: str) -> None:
    assert str(typed_number(text, "It")) == str(Decimal(text))


def test_spaces_around_a_number_do_not_matter() -> None:
    assert typed_number(" 3.40\t", "It").as_tuple() == Decimal("3.40").as_tuple()


@pytest.mark.parametrize(
    "text",
    [
        *("1_0", "1e3", "1E3", "nan", "inf", "-inf", "Infinity", "0x10", "1/2", "1,5", "1 000"),
        *("--1", "+-1", "1.2.3", ".", "-", "\u0661\u0662", "\uff11", "\u22125", "1\n2", "12 g"),
    ],
)
def test_anything_else_is_refused_in_one_line(text: str) -> None:
    with pytest.raises(NotANumberError, match=r"^It is not a number: .*Use digits") as refusal:
        typed_number(text, "It")
    assert "\n" not in str(refusal.value)


@pytest.mark.parametrize("text", ["", " ", "\t"])
def test_blank_has_its_own_sentence(text: str) -> None:
    with pytest.raises(NotANumberError, match="It is blank"):
        typed_number(text, "It")


def test_a_number_has_a_stated_length() -> None:
    with pytest.raises(NotANumberError, match="more than 40 characters"):
        typed_number("1" * 41, "It")


def test_a_long_text_is_shown_in_part() -> None:
    with pytest.raises(NotANumberError) as refusal:
        typed_number("x" * 40, "It")
    assert "x" * 24 + "…" in str(refusal.value)


@pytest.mark.parametrize(("text", "number"), [("100", 100), ("100.0", 100), ("+7", 7)])
def test_a_whole_number(text: str, number: int) -> None:
    assert typed_whole_number(text, "It") == number


@pytest.mark.parametrize("text", ["0", "-5", "2.5"])
def test_no_whole_number_above_zero(text: str) -> None:
    with pytest.raises(NotANumberError, match="must be a whole number above zero"):
        typed_whole_number(text, "It")
