"""What the keys of a keyboard say on the sheet in front."""

from __future__ import annotations

import pytest

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui.keyboard import said_by_key, said_by_text
from kiosk.ui.presenters.page_views import TextView
from kiosk.ui.presenters.views import CodeView, GuessView, MessageView, button

BACKSPACE, ENTER, PAD_ENTER, PAD_4 = 8, 13, 271, 260
WORDS = TextView(typed="Wren", main=button("Done", Person.ENTER))
NOTHING_YET = TextView(main=button("Done", Person.ENTER, state="off"))


@pytest.mark.parametrize("sheet", [CodeView(), GuessView()])
@pytest.mark.parametrize(("code", "digit"), [(ord("4"), "4"), (PAD_4, "4")])
def test_a_digit_is_typed_on_a_pad(sheet: CodeView | GuessView, code: int, digit: str) -> None:
    assert said_by_key(code, sheet) == PersonEvent(Person.TYPE, digit)


@pytest.mark.parametrize("sheet", [CodeView(), GuessView(), WORDS])
def test_backspace_rubs_out(sheet: CodeView | GuessView | TextView) -> None:
    assert said_by_key(BACKSPACE, sheet) == PersonEvent(Person.RUB_OUT)


@pytest.mark.parametrize("code", [ENTER, PAD_ENTER])
def test_enter_ends_the_words(code: int) -> None:
    assert said_by_key(code, WORDS) == PersonEvent(Person.ENTER)


def test_enter_ends_no_words_that_are_not_there() -> None:
    assert said_by_key(ENTER, NOTHING_YET) is None


@pytest.mark.parametrize("code", [ord("4"), PAD_4, ord(".")])
def test_a_character_of_words_is_not_typed_twice(code: int) -> None:
    assert said_by_key(code, WORDS) is None


def test_a_point_is_no_part_of_a_code() -> None:
    assert said_by_key(ord("."), CodeView()) is None


@pytest.mark.parametrize("code", [ord("4"), BACKSPACE, ENTER])
def test_where_nothing_is_typed_no_key_says_anything(code: int) -> None:
    assert said_by_key(code, MessageView()) is None


@pytest.mark.parametrize("text", ["w", "W", "é", "ñ", "4", " ", "'", "-"])
def test_words_are_typed_as_the_keyboard_writes_them(text: str) -> None:
    assert said_by_text(text, WORDS) == [PersonEvent(Person.TYPE, text)]


def test_what_cannot_be_seen_is_not_typed() -> None:
    assert said_by_text("a\tb", WORDS) == [
        PersonEvent(Person.TYPE, "a"),
        PersonEvent(Person.TYPE, "b"),
    ]


def test_a_code_is_typed_by_its_keys_alone() -> None:
    assert said_by_text("4", CodeView()) == []
