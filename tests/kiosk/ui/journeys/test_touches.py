"""Fingers that come twice, too soon or too late; Escape, and a window closed in the middle."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from kivy.base import EventLoop

from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.ui.app import ESCAPE, KioskApp
from kiosk.ui.theme import theme
from kiosk.ui.walk import Finger
from tests.helpers.journey import QUIET, Journey
from tests.helpers.key_hands import KeyHands

Start = Callable[..., Journey]
EMPTY_G, FILLED_G = 12.3, 105.7
PIECES = "SELECT pieces FROM keys_changed WHERE pieces IS NOT NULL ORDER BY place"


def take_to_fill(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    journey.bench.lift()
    journey.until_screen("take cup")


# Fingers -------------------------------------------------------------------------------------


def test_a_double_tap_counts_once(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    journey.wait(0.5)
    place = journey.middle_of("Count 200 at once")
    journey.touch(*place)
    journey.touch(*place)
    journey.wait(1.0)
    assert journey.kept(PIECES) == [(200,)]


def test_two_taps_with_a_pause_count_twice(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    journey.tap("Count 200 at once")
    journey.tap("Count 300 at once")
    assert journey.kept(PIECES) == [(200,), (300,)]


def test_a_double_tap_keeps_a_sample_once(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    hands.lay_sample()
    main = journey.scene.sheet.main
    assert main is not None
    journey.wait(0.5)
    place = journey.middle_of(main.text)
    journey.touch(*place)
    journey.touch(*place)
    journey.wait(1.0)
    assert journey.rows("key_masses") == 2  # the tray and one sample


def test_a_touch_right_after_a_change_of_screen_is_swallowed(journey: Journey) -> None:
    journey.tap("Fill a cup")
    journey.touch(*journey.middle_of("Heron"))
    journey.wait(0.5)
    assert journey.screen == "choices"


def test_a_touch_a_quarter_second_after_a_change_counts(journey: Journey) -> None:
    journey.tap("Fill a cup")
    journey.wait(0.3)
    journey.touch(*journey.middle_of("Heron"))
    journey.until_screen("put on")


def test_a_finger_that_lifts_after_the_screen_has_changed_does_nothing(journey: Journey) -> None:
    take_to_fill(journey)
    journey.wait(0.5)
    finger = Finger(*journey.middle_of("Next pair"), *journey.window.size)
    EventLoop.post_dispatch_input("begin", finger)
    journey.put(FILLED_G)
    journey.until_title("Whose cup is on the pan?")
    EventLoop.post_dispatch_input("end", finger)
    journey.wait(0.5)
    assert journey.title == "Whose cup is on the pan?"


def test_a_finger_that_slides_off_does_nothing(journey: Journey) -> None:
    x, y = journey.middle_of("Fill a cup")
    finger = Finger(x, y, *journey.window.size)
    journey.wait(0.5)
    EventLoop.post_dispatch_input("begin", finger)
    finger.move({"x": 0.95, "y": 0.5})
    EventLoop.post_dispatch_input("update", finger)
    EventLoop.post_dispatch_input("end", finger)
    journey.wait(0.5)
    assert journey.screen == "home"


# Escape and closing --------------------------------------------------------------------------


@pytest.fixture
def app(journey: Journey) -> Iterator[KioskApp]:
    """The app around the kiosk of the journey, deaf again when the test ends."""
    app = KioskApp(lambda: journey.kiosk, QUIET)
    app.build()
    yield app
    journey.window.unbind(on_resize=app._resized, on_keyboard=app._key, on_textinput=app._text)


def press_key(journey: Journey, key: int) -> bool:
    heard = journey.window.dispatch("on_keyboard", key, 0, "", [])
    journey.wait(0.2)
    return bool(heard)


@pytest.mark.usefixtures("app")
def test_escape_asks_like_home(journey: Journey) -> None:
    take_to_fill(journey)
    assert press_key(journey, ESCAPE)
    assert journey.title == "Leave cup 1 for now?"


@pytest.mark.usefixtures("app")
def test_escape_twice_leaves_nothing(journey: Journey) -> None:
    take_to_fill(journey)
    press_key(journey, ESCAPE)
    press_key(journey, ESCAPE)
    assert journey.title == "Leave cup 1 for now?"


@pytest.mark.usefixtures("app")
def test_escape_at_the_table_stays_there(journey: Journey) -> None:
    assert press_key(journey, ESCAPE)
    assert journey.screen == "home"


@pytest.mark.usefixtures("app")
def test_escape_leads_back_from_the_choice_of_a_pair(journey: Journey) -> None:
    journey.tap("Fill a cup")
    press_key(journey, ESCAPE)
    assert journey.screen == "home"


@pytest.mark.usefixtures("app")
def test_other_keys_are_left_to_others(journey: Journey) -> None:
    journey.wait(0.2)
    assert not press_key(journey, ord("q"))


@pytest.mark.usefixtures("app")
def test_the_look_follows_the_window(journey: Journey) -> None:
    journey.window.dispatch("on_resize", 1280, 800)
    assert theme.u == 1.25


def test_the_settings_panel_of_the_toolkit_stays_away(app: KioskApp) -> None:
    assert app.open_settings() is False


def test_a_mass_captured_as_the_window_closes_is_kept(start: Start) -> None:
    journey = start()
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    while journey.desk.settled_for_showing:
        journey._clock.pass_by(0.05)
        journey.kiosk.step()
    journey.close()
    assert journey.rows("cups_taken") == 1


@pytest.mark.parametrize("seconds", [0.3, 0.8, 2.0])
def test_closing_while_a_cup_is_being_weighed_loses_no_cup_that_was_shown(
    start: Start, seconds: float
) -> None:
    journey = start()
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.wait(seconds)
    shown = getattr(journey.desk.procedure, "state", None) is WeighEmptyState.WEIGHED
    later = start()
    assert len(later.desk.facts.cups) == shown


def test_closing_without_a_scale_finishes_all_writing(start: Start) -> None:
    journey = start()
    journey.table.unplug()
    journey.wait(1.0)
    journey.close()
    assert journey.kiosk.writer.close(0)
