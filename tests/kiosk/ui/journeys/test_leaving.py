"""Leaving in the middle: asked about, kept, and taken up again, also by another start."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.fill_container import ContainerState
from kiosk.ui.presenters.views import HomeView
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands

Start = Callable[..., Journey]
EMPTY_G, FILLED_G = 12.3, 105.7


def take_to_fill(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    journey.bench.lift()
    journey.until_screen("take cup")


def cups_on_the_table(journey: Journey) -> list[int]:
    sheet = journey.scene.sheet
    assert isinstance(sheet, HomeView)
    return [mark.number for mark in sheet.cups]


# The question --------------------------------------------------------------------------------


def test_home_asks_before_a_taken_cup_is_left(journey: Journey) -> None:
    take_to_fill(journey)
    journey.tap("Home")
    journey.until_title("Leave cup 1 for now?")
    assert {"Keep going", "Leave"} <= set(journey.texts())


def test_keep_going_leads_back_to_filling(journey: Journey) -> None:
    take_to_fill(journey)
    journey.tap("Home")
    journey.tap("Keep going")
    assert journey.screen == "take cup"


def test_leave_parks_the_cup_on_the_table(journey: Journey) -> None:
    take_to_fill(journey)
    journey.tap("Home")
    journey.tap("Leave")
    assert cups_on_the_table(journey) == [1]


def test_home_asks_before_a_hand_in_is_left(journey: Journey) -> None:
    journey.take_cup()
    journey.tap("1")
    journey.tap("Home")
    journey.until_title("Leave cup 1 for now?")


def test_keep_going_leads_back_to_the_hand_in(journey: Journey) -> None:
    journey.take_cup()
    journey.tap("1")
    journey.tap("Home")
    journey.tap("Keep going")
    journey.until_title("Put cup 1 on the pan.")


def test_a_cup_left_while_it_is_weighed_can_still_be_handed_in(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    journey.wait(0.5)
    journey.put(FILLED_G)
    journey.until_title("Cup 1 is being weighed.")
    journey.touch(*journey.middle_of("Home"))
    journey.wait(2.0)
    journey.tap("Keep going")
    journey.until_screen("score")
    assert journey.kept("SELECT net FROM cups_handed_in") == [("93.4",)]


def test_home_does_not_ask_where_nothing_is_left(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.tap("Back")
    assert journey.screen == "home"


def test_home_asks_before_a_key_is_left(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    journey.tap("Home")
    journey.until_title("Leave this key for now?")
    journey.tap("Keep going")
    journey.until_title("Put the empty tray on.")


# Another start -------------------------------------------------------------------------------


def test_a_parked_cup_is_on_the_table_after_another_start(start: Start) -> None:
    start().take_cup()
    assert cups_on_the_table(start()) == [1]


def test_a_parked_cup_is_scored_with_the_mass_of_before(start: Start) -> None:
    start().take_cup(grams=EMPTY_G)
    later = start()
    later.tap("1")
    later.put(FILLED_G)
    later.until_screen("score")
    assert later.score.points == "93.4"


def test_cup_numbers_go_on(start: Start) -> None:
    start().take_cup()
    assert start().take_cup("Wren") == 2


def test_numbers_of_cups_that_are_back_go_on_too(start: Start) -> None:
    first = start()
    first.take_cup(grams=EMPTY_G)
    first.tap("1")
    first.put(FILLED_G)
    first.until_screen("score")
    assert start().take_cup("Wren") == 2


def test_the_material_of_before_is_offered(start: Start) -> None:
    first = start()
    first.tap("Fill a cup")
    first.tap("Cups of rice")
    first.tap("beads")
    first.wait(0.5)
    later = start()
    later.tap("Fill a cup")
    assert "Cups of beads" in later.seen


def test_the_tries_of_a_pair_go_on(start: Start) -> None:
    for filled in (102.3, 122.3):
        journey = start()
        number = journey.take_cup(grams=EMPTY_G)
        journey.tap(str(number))
        journey.put(filled)
        journey.until_screen("score")
        journey.wait(0.5)
    assert [round(error) for error in journey.score.errors] == [-10, 10]


def test_a_half_made_key_is_offered(start: Start) -> None:
    hands = KeyHands(start())
    hands.begin()
    hands.weigh_tray()
    later = start()
    later.tap("Make a count key")
    later.until_title("Go on with pasta?")


def test_a_half_made_key_goes_on_with_its_samples(start: Start) -> None:
    first = KeyHands(start())
    first.begin()
    first.weigh_tray()
    first.sample()
    first.sample()
    later = KeyHands(start())
    later.tray = first.tray
    later.journey.tap("Make a count key")
    later.journey.tap("Go on")
    later.until_state(SamplesState.COUNT)
    later.sample()
    later.until_state(SamplesState.SPREAD)
    assert later.journey.rows("key_masses") == 4


@pytest.mark.parametrize("poured", [False, True])
def test_a_key_left_at_the_jar_goes_on_there(start: Start, poured: bool) -> None:
    first = KeyHands(start())
    first.to_pour()
    if poured:
        first.pour(600)
    later = KeyHands(start())
    later.journey.tap("Make a count key")
    later.journey.tap("Go on")
    later.until_state(ContainerState.POUR)
    later.journey.bench.put(first.jar)
    if not poured:
        later.journey.wait(2.0)
        later.journey.bench.pour(first.jar, first.material, grams=600)
        later.journey.wait(10.0)
    later.until_state(ContainerState.STILL)
    later.finish()
    assert later.journey.rows("key_masses") == 6


def test_a_key_left_before_it_got_its_letter_is_there_again(start: Start) -> None:
    first = KeyHands(start())
    first.to_key()
    shown = first.journey.scene.sheet.title
    later = start()
    later.tap("Make a count key")
    later.tap("Go on")
    later.tap("Yes, all of it")
    later.until_screen("key")
    assert later.scene.sheet.title == shown


def test_starting_over_drops_the_half_made_key(start: Start) -> None:
    first = KeyHands(start())
    first.begin()
    first.weigh_tray()
    later = start()
    later.tap("Make a count key")
    later.tap("Start over")
    later.until_title("What is in the jar?")
    assert later.kept("SELECT reason FROM keys_dropped") == [("started over",)]


def test_the_table_tells_how_many_keys_are_kept(start: Start) -> None:
    first = start()
    KeyHands(first).to_key()
    first.tap("Save as jar A")
    assert "1 key kept" in start().seen


# Simulated and real --------------------------------------------------------------------------


def test_a_simulated_cup_is_not_on_the_table_of_a_real_scale(start: Start) -> None:
    start().take_cup()
    assert cups_on_the_table(start(real=True)) == []


def test_numbers_of_simulated_and_real_cups_go_their_own_ways(start: Start) -> None:
    start().take_cup()
    assert start(real=True).take_cup() == 1


def test_real_masses_are_kept_as_real_and_simulated_ones_as_simulated(start: Start) -> None:
    start().take_cup()
    journey = start(real=True)
    journey.take_cup()
    assert journey.kept("SELECT source FROM weighings ORDER BY place") == [
        ("simulated",),
        ("balance",),
    ]


def test_a_simulated_try_is_not_among_the_real_ones(start: Start) -> None:
    for real in (False, True):
        journey = start(real=real)
        journey.take_cup(grams=EMPTY_G)
        journey.tap("1")
        journey.put(FILLED_G)
        journey.until_screen("score")
        journey.wait(0.5)
    assert len(journey.score.errors) == 1


def test_a_half_made_simulated_key_is_not_offered_on_a_real_scale(start: Start) -> None:
    hands = KeyHands(start())
    hands.begin()
    hands.weigh_tray()
    journey = start(real=True)
    journey.tap("Make a count key")
    journey.until_title("What is in the jar?")


def test_a_letter_of_a_simulated_key_is_free_on_a_real_scale(start: Start) -> None:
    first = start()
    KeyHands(first).to_key()
    first.tap("Save as jar A")
    journey = start(real=True)
    KeyHands(journey).to_key()
    journey.tap("Save as jar A")
    assert journey.kept("SELECT letter, simulated FROM keys_made ORDER BY place") == [
        ("A", 1),
        ("A", 0),
    ]


@pytest.mark.parametrize("real", [False, True])
def test_only_the_simulated_scale_says_so(start: Start, real: bool) -> None:
    scene = start(real=real).scene
    assert (scene.strip.simulated, scene.pan.simulated) == (not real, not real)
