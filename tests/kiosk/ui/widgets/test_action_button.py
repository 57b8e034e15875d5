"""The main button: when it takes a tap, and when its sign turns."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from kivy.animation import Animation

from kiosk.ui.theme import theme
from kiosk.ui.widgets.action_button import Chip, MainButton, SecondButton
from tests.helpers.contrast import contrast
from tests.helpers.offscreen import frames, pixel, tap_at, touch_at


@pytest.fixture
def button(window: Any) -> Iterator[MainButton]:
    made = MainButton(text="Keep 3.6 g", size_hint_x=None, width=542, pos=(444, 20))
    window.add_widget(made)
    frames(2)
    yield made
    Animation.cancel_all(made)


def taps(button: MainButton) -> int:
    count = 0

    def counted(_button: MainButton) -> None:
        nonlocal count
        count += 1

    button.bind(on_release=counted)
    tap_at(*button.center)
    return count


def test_a_ready_button_fires_once(button: MainButton) -> None:
    assert taps(button) == 1


@pytest.mark.parametrize("state", ["waiting", "off"])
def test_a_button_that_waits_or_is_off_does_not_fire(button: MainButton, state: str) -> None:
    button.state_name = state
    assert taps(button) == 0


def test_it_is_darker_while_pressed(window: Any, button: MainButton) -> None:
    touch_at(*button.center).touch_down()
    frames(2)
    assert pixel(window, button.x + 8, button.center_y) == pytest.approx(theme.act_d[:3], abs=0.01)


@pytest.mark.parametrize("state", ["ready", "waiting", "off"])
def test_its_words_can_be_read_in_every_state(button: MainButton, state: str) -> None:
    """At least 4.5: WCAG 2.2, success criterion 1.4.3."""
    button.state_name = state
    ground, _, words = button.colours()
    assert contrast(ground, words) >= 4.5
    assert tuple(button.children[0].color) == pytest.approx(words)


def turning(button: MainButton) -> bool:
    return button._turning is not None


def test_the_sign_turns_only_while_it_waits(button: MainButton) -> None:
    theme.less_motion = False
    assert not turning(button)
    button.state_name = "waiting"
    assert turning(button)
    button.state_name = "ready"
    assert not turning(button)


def test_the_sign_rests_with_less_motion(button: MainButton) -> None:
    button.state_name = "waiting"
    assert not turning(button)


def test_the_sign_rests_when_the_button_is_not_shown(window: Any, button: MainButton) -> None:
    theme.less_motion = False
    button.state_name = "waiting"
    window.remove_widget(button)
    assert not turning(button)


def test_the_words_stay_clear_of_the_sign(button: MainButton) -> None:
    button.text = "Waiting for the scale to come back, please"
    frames(2)
    label = button.children[0]
    assert label.texture_size[1] <= button.height
    assert label.right <= button.right - button.height * 0.8


def test_a_second_button_needs_no_sign(window: Any) -> None:
    button = SecondButton(text="Just trying", size_hint=(None, None), size=(240, 70))
    window.add_widget(button)
    frames(2)
    assert button.children[0].halign == "center"


def test_a_chip_is_as_wide_as_its_answer(window: Any) -> None:
    short, long = (Chip(text=text) for text in ("in the jar", "counted pieces kept out"))
    for chip in (short, long):
        window.add_widget(chip)
    frames(2)
    assert short.width < long.width
    assert long.children[0].texture_size[1] <= long.height
