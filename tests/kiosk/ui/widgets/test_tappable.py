"""One finger, one release, one event."""

from __future__ import annotations

from typing import Any

import pytest
from kivy.clock import Clock

from kiosk.ui.theme import theme
from kiosk.ui.widgets.tappable import Tappable
from tests.helpers.offscreen import tap_at, touch_at


class Tapped:
    """A thing in the middle of the window that counts its taps, on a clock of its own."""

    def __init__(self, window: Any, monkeypatch: pytest.MonkeyPatch) -> None:
        self.now, self.count = 100.0, 0
        monkeypatch.setattr(Clock, "get_time", lambda: self.now, raising=False)
        self.thing = Tappable(size_hint=(None, None), size=(200, 80), pos=(400, 300))
        self.thing.bind(on_release=self._count)
        window.add_widget(self.thing)

    def _count(self, _thing: Tappable) -> None:
        self.count += 1

    def tap(self, x: float = 500, y: float = 340) -> None:
        tap_at(x, y)


@pytest.fixture
def tapped(window: Any, monkeypatch: pytest.MonkeyPatch) -> Tapped:
    return Tapped(window, monkeypatch)


def test_a_tap_counts_once(tapped: Tapped) -> None:
    tapped.tap()
    assert tapped.count == 1


def test_a_bounce_does_not_count(tapped: Tapped) -> None:
    tapped.tap()
    tapped.now += 0.3
    tapped.tap()
    assert tapped.count == 1


def test_a_second_tap_counts_after_a_while(tapped: Tapped) -> None:
    tapped.tap()
    tapped.now += 0.5
    tapped.tap()
    assert tapped.count == 2


def test_nothing_counts_before_the_finger_is_lifted(tapped: Tapped) -> None:
    touch_at(500, 340).touch_down()
    assert tapped.count == 0
    assert tapped.thing.pressed


def test_a_finger_that_slides_off_does_not_count(tapped: Tapped) -> None:
    touch = touch_at(500, 340)
    touch.touch_down()
    touch.touch_move(100, 100)
    touch.touch_up()
    assert tapped.count == 0
    assert not tapped.thing.pressed


def test_two_fingers_at_once_count_once(tapped: Tapped) -> None:
    fingers = touch_at(450, 340), touch_at(550, 340)
    for finger in fingers:
        finger.touch_down()
    for finger in fingers:
        finger.touch_up()
    assert tapped.count == 1


def test_a_tap_beside_it_does_not_count(tapped: Tapped) -> None:
    tapped.tap(x=390)
    assert tapped.count == 0


def test_what_cannot_be_tapped_counts_nothing(tapped: Tapped) -> None:
    tapped.thing.tappable = False
    tapped.tap()
    assert tapped.count == 0


def test_disabled_counts_nothing(tapped: Tapped) -> None:
    tapped.thing.disabled = True
    tapped.tap()
    assert tapped.count == 0


def test_a_small_thing_has_a_full_target(tapped: Tapped) -> None:
    tapped.thing.size = (20, 20)
    tapped.thing.center = (500, 340)
    tapped.tap(x=500 - theme.tap / 2 + 1)
    assert tapped.count == 1
