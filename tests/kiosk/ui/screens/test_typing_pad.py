"""Fingers on the keypad that stands in the pan's place."""

from __future__ import annotations

from typing import Any

import pytest

from kiosk.ui.presenters.pad_views import PadView
from kiosk.ui.screens.typing_pad import TypingPad
from kiosk.ui.widgets.number_pad import PadKey
from tests.helpers.offscreen import frames, tap_at


class Desk:
    """Hears what the pad says."""

    def __init__(self) -> None:
        self.heard: list[str] = []

    def pad_key(self, says: str) -> None:
        self.heard.append(says)

    def pad_done(self) -> None:
        self.heard.append("done")

    def pad_empty(self) -> None:
        self.heard.append("empty")


def shown(window: Any, **look: Any) -> tuple[TypingPad, Desk]:
    desk = Desk()
    view = PadView(**({"text": "12", "done_text": "That\nis it", "empty_text": "Empty"} | look))
    pad = TypingPad(desk=desk, view=view, size_hint=(None, None), size=(384, 430), pos=(16, 104))
    window.add_widget(pad)
    frames(2)
    return pad, desk


def key(pad: TypingPad, says: str) -> PadKey:
    return next(each for each in pad.walk() if isinstance(each, PadKey) and each.says == says)


@pytest.mark.parametrize("says", ["7", "0", ".", "rub out"])
def test_a_key_says_its_sign(window: Any, says: str) -> None:
    pad, desk = shown(window)
    tap_at(*key(pad, says).center)
    assert desk.heard == [says]


@pytest.mark.parametrize(("name", "says"), [("done_key", "done"), ("empty_key", "empty")])
def test_the_keys_beside_the_digits(window: Any, name: str, says: str) -> None:
    pad, desk = shown(window)
    tap_at(*pad.ids[name].center)
    assert desk.heard == [says]


def test_where_nothing_can_be_done_the_key_is_quiet(window: Any) -> None:
    pad, desk = shown(window, done_on=False)
    tap_at(*pad.ids.done_key.center)
    assert desk.heard == []


def test_where_only_an_empty_pan_helps_no_digit_is_taken(window: Any) -> None:
    pad, desk = shown(window, digits=False, done_on=False)
    for says in ("7", "rub out"):
        tap_at(*key(pad, says).center)
    tap_at(*pad.ids.done_key.center)
    assert desk.heard == []
    tap_at(*pad.ids.empty_key.center)
    assert desk.heard == ["empty"]
