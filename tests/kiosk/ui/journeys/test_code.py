"""The coach's code, by touch."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kiosk.ui.walk import StuckError
from tests.helpers.journey import QUIET, Journey
from tests.helpers.key_hands import KeyHands

CODE, OTHER = "271828", "314159"
IDLE_S = QUIET.coach_idle_s


@pytest.fixture
def locked(journey: Journey) -> Journey:
    """A kiosk as it stands after the start."""
    journey.desk.lock.close()
    return journey


def type_code(journey: Journey, code: str, main: str = "Open") -> None:
    for digit in code:
        journey.tap(digit)
    journey.tap(main)


def choose(journey: Journey, code: str = CODE) -> None:
    type_code(journey, code, "Go on")
    type_code(journey, code, "Keep this code")


def test_the_first_time_a_code_is_chosen(locked: Journey) -> None:
    locked.tap("Make a count key")
    locked.until_title("Choose a code for the coach.")
    choose(locked)
    locked.until_title("What is in the jar?")


def test_without_a_code_the_drawers_open_for_now(locked: Journey) -> None:
    locked.tap("The scale")
    locked.tap("No code yet")
    locked.until_title("This is the scale.")


def test_the_code_is_asked_for_after_a_restart(start: Callable[..., Journey]) -> None:
    first = start()
    first.desk.lock.close()
    first.tap("The scale")
    choose(first)
    again = start()
    again.desk.lock.close()
    again.tap("The scale")
    again.until_title("Type the coach's code.")
    type_code(again, OTHER)
    assert "That is not the code." in again.seen
    type_code(again, CODE)
    again.until_title("This is the scale.")


def test_a_forgotten_code_can_be_chosen_anew(start: Callable[..., Journey]) -> None:
    first = start()
    first.desk.lock.close()
    first.tap("The scale")
    choose(first)
    again = start(new_code=True)
    again.desk.lock.close()
    again.tap("The scale")
    again.until_title("Choose a code for the coach.")


def test_back_leaves_the_drawer_closed(locked: Journey) -> None:
    locked.tap("The scale")
    locked.tap("Back")
    locked.until_screen("home")
    locked.tap("The scale")
    locked.until_title("Choose a code for the coach.")


def test_a_minute_without_the_coach_locks_the_drawer_with_everything_in_it(
    locked: Journey,
) -> None:
    locked.tap("Make a count key")
    choose(locked)
    hands = KeyHands(locked)
    hands.choose_material()
    hands.weigh_tray()
    locked.wait(IDLE_S + 1)
    locked.until_title("Type the coach's code.")
    assert locked.scene.pan.number == ""
    type_code(locked, CODE)
    locked.until_title("Count")


def test_what_moves_on_the_pan_keeps_it_open(locked: Journey) -> None:
    locked.tap("Make a count key")
    choose(locked)
    hands = KeyHands(locked)
    hands.choose_material()
    hands.weigh_tray()
    for _ in range(4):
        locked.wait(IDLE_S / 3)
        locked.put(1.0)
    assert locked.screen == "samples"


def test_the_code_may_be_typed_on_a_keyboard(locked: Journey) -> None:
    locked.tap("The scale")
    for digit in CODE + "8":
        assert locked.kiosk.keyboard(ord(digit))
    locked.kiosk.keyboard(8)  # rub out
    locked.kiosk.keyboard(ord("8"))
    locked.step()
    assert "6 of 6" in locked.seen
    locked.tap("Go on")
    locked.until_title("Type the same code again.")


def test_the_things_do_not_cover_the_pad(locked: Journey) -> None:
    locked.tap("The scale")
    locked.until_screen("code")
    with pytest.raises(StuckError):
        locked.find("Things")


def test_escape_does_what_the_button_under_the_cards_says(journey: Journey) -> None:
    journey.tap("Fill a cup")
    journey.tap("Cups of rice")
    journey.until_title("What goes into the cups?")
    journey.kiosk.home()
    journey.until_title("Which pair are you?")
    journey.kiosk.home()
    journey.until_screen("home")
    journey.step()  # and the frame has followed


def test_the_open_lock_locks_at_once(locked: Journey) -> None:
    locked.tap("The scale")
    choose(locked)
    locked.tap("Home")
    locked.tap("Lock now")
    locked.tap("The scale")
    locked.until_title("Type the coach's code.")
