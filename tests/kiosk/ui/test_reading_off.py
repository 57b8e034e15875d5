"""Typing what a display shows, key by key: what stands on the pad, and what comes of it."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.ui.reading_off import RUB_OUT, ReadingOff
from kiosk.weighing.pan_events import PanEvent, PanKind


class Typist:
    """Fingers on the pad of a pan that showed 0.0, unless `zero` is another."""

    def __init__(self, zero: str = "0.0") -> None:
        self.events: list[PanEvent] = []
        self.pad = ReadingOff(self.events.extend, lambda: 5.0)
        if zero:
            self.type(zero)
            self.pad.done()
            self.events.clear()

    def type(self, text: str) -> None:
        for sign in text:
            self.pad.key(sign)

    @property
    def masses(self) -> list[Decimal | None]:
        return [each.grams for each in self.events if each.kind is PanKind.SETTLED]


@pytest.fixture
def typist() -> Typist:
    return Typist()


def test_what_is_done_is_taken_and_no_longer_to_be_read(typist: Typist) -> None:
    typist.type("12.3")
    typist.pad.done()
    assert typist.masses == [Decimal("12.3")]
    assert (typist.pad.text, typist.pad.note) == ("", "")
    assert typist.events[0].at == 5.0


@pytest.mark.parametrize(
    ("keys", "text"),
    [
        ("12.3", "12.3"), (".5", "0.5"), ("1..2", "1.2"), ("007", "7"), ("0.05", "0.05"),
        ("12345678901", "123456789"), ("-x", ""),
    ],
)  # fmt: skip
def test_only_what_may_become_a_number_is_typed(typist: Typist, keys: str, text: str) -> None:
    typist.type(keys)
    assert typist.pad.text == text


def test_the_last_sign_is_rubbed_out(typist: Typist) -> None:
    typist.type("12.3")
    typist.pad.key(RUB_OUT)
    assert typist.pad.text == "12."


def test_what_is_refused_stays_to_be_put_right(typist: Typist) -> None:
    typist.type("12.")
    typist.pad.done()
    assert "missing after the point" in typist.pad.note
    assert not typist.pad.asking
    typist.type("3")
    assert typist.pad.note == ""
    typist.pad.done()
    assert typist.masses == [Decimal("12.3")]


def test_a_slip_is_asked_about_and_put_right(typist: Typist) -> None:
    typist.type("123")
    typist.pad.done()
    assert typist.pad.asking
    assert typist.events == []
    typist.pad.key(RUB_OUT)
    assert not typist.pad.asking
    typist.type(".3")
    typist.pad.done()
    assert typist.masses == [Decimal("12.3")]


def test_when_it_is_no_slip_the_second_press_takes_it(typist: Typist) -> None:
    typist.type("123")
    typist.pad.done()
    typist.pad.done()
    assert typist.masses == [Decimal(123)]


def test_a_press_on_nothing_says_so(typist: Typist) -> None:
    typist.pad.done()
    assert "Type the number" in typist.pad.note


def test_the_pan_is_said_to_be_empty(typist: Typist) -> None:
    typist.pad.pan_empty()
    assert [(each.kind, each.reading) for each in typist.events] == [(PanKind.PAN_EMPTY, None)]


def test_what_the_empty_pan_shows_is_taken_along(typist: Typist) -> None:
    typist.type("0.1")
    typist.pad.pan_empty()
    (event,) = typist.events
    assert event.kind is PanKind.PAN_EMPTY
    assert event.reading is not None
    assert event.reading.grams == Decimal("0.1")


def test_before_the_zero_nothing_else_is_taken() -> None:
    typist = Typist(zero="")
    typist.pad.pan_empty()
    assert "First type the zero" in typist.pad.note
    typist.type("12.3")
    typist.pad.done()
    assert "Not zero" in typist.pad.note
    assert typist.events == []


ENTER, BACKSPACE = 13, 8


def on_keyboard(typist: Typist, *codes: int) -> list[bool]:
    return [typist.pad.keyboard(code) for code in codes]


def test_a_keyboard_types_as_well(typist: Typist) -> None:
    assert all(on_keyboard(typist, *map(ord, "12,34"), BACKSPACE, ENTER))
    assert typist.masses == [Decimal("12.3")]


def test_the_block_at_the_right_of_a_keyboard_types_as_well(typist: Typist) -> None:
    on_keyboard(typist, 256 + 4, 266, 256 + 2, 271)
    assert typist.masses == [Decimal("4.2")]


def test_a_letter_means_nothing(typist: Typist) -> None:
    assert on_keyboard(typist, ord("a")) == [False]


def test_enter_held_down_never_takes_a_slip(typist: Typist) -> None:
    on_keyboard(typist, *map(ord, "123"), ENTER, ENTER, ENTER)
    assert typist.pad.asking
    assert typist.events == []


def test_what_was_begun_is_dropped_when_nothing_is_asked_for(typist: Typist) -> None:
    typist.type("12")
    typist.pad.clear()
    assert typist.pad.text == ""
