"""A balance that was off, silent, tared by its own key or overloaded: first a clean zero."""

from __future__ import annotations

import pytest

from kiosk.procedures.fill_container import ContainerState
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands

EMPTY_G, FILLED_G = 12.3, 105.7
SILENT_S = 4.0  # longer than any balance takes to answer
REST_S = 3.0


def wake_with(journey: Journey, grams: float) -> None:
    """The balance is switched off with that on its pan, and on again: it shows zero now."""
    journey.put(grams)
    journey.table.switch_off()
    journey.wait(SILENT_S)
    journey.table.switch_on()
    journey.wait(REST_S)


def press_zero(journey: Journey) -> None:
    journey.table.press_zero()
    journey.wait(REST_S)


def switch_off_and_on(journey: Journey) -> None:
    """A load that is too far from its new zero cannot be zeroed by the key."""
    journey.table.switch_off()
    journey.wait(SILENT_S)
    journey.table.switch_on()
    journey.wait(REST_S)


# Switched off --------------------------------------------------------------------------------


def test_a_balance_that_is_off_is_said_to_be_silent(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.table.switch_off()
    journey.until_title("The scale is silent.")
    assert journey.scene.strip.words[0] == "Scale asleep"


def test_an_empty_cup_under_which_it_woke_is_not_weighed(journey: Journey) -> None:
    journey.ask_for_cup()
    wake_with(journey, EMPTY_G)
    journey.bench.lift()
    journey.until_title("Below zero. Empty the pan.")
    assert "Press its zero" in journey.seen
    assert journey.rows("cups_taken") == 0


def test_after_a_clean_zero_the_empty_cup_weighs_what_it_weighs(journey: Journey) -> None:
    journey.ask_for_cup()
    wake_with(journey, EMPTY_G)
    journey.clear()
    press_zero(journey)
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")
    assert journey.kept("SELECT grams FROM weighings") == [("12.3",)]


def test_a_cup_put_on_a_scale_below_zero_is_not_weighed(journey: Journey) -> None:
    journey.ask_for_cup()
    wake_with(journey, EMPTY_G)
    journey.clear()
    journey.put(90.0)
    journey.wait(REST_S)
    assert journey.screen == "trouble"
    assert journey.rows("cups_taken") == 0


def test_a_filled_cup_under_which_it_woke_is_not_scored(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    wake_with(journey, FILLED_G)
    assert journey.screen != "score"
    journey.bench.lift()
    journey.until_title("Below zero. Empty the pan.")
    assert journey.rows("cups_handed_in") == 0


def test_after_a_clean_zero_the_filled_cup_is_scored_rightly(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    wake_with(journey, FILLED_G)
    journey.clear()
    switch_off_and_on(journey)
    journey.put(FILLED_G)
    journey.until_screen("score")
    assert journey.kept("SELECT net FROM cups_handed_in") == [("93.4",)]


def test_a_jar_under_which_it_woke_makes_no_key(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.to_pour()
    hands.pour(200)
    switch_off_and_on(journey)
    journey.bench.lift()
    journey.until_title("Below zero. Empty the pan.")
    assert journey.rows("keys_made") == 0


def test_after_a_clean_zero_the_jar_makes_its_key(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.to_pour()
    hands.pour(200)
    switch_off_and_on(journey)
    journey.clear()
    switch_off_and_on(journey)
    journey.bench.put(hands.jar)
    hands.until_state(ContainerState.STILL)
    journey.tap("Stop here")
    journey.tap("Save as jar A")
    ((low, high),) = journey.kept("SELECT low, high FROM keys_made")
    assert int(str(low)) <= hands.jar.pieces <= int(str(high))


def test_where_the_zero_key_does_nothing_the_screen_says_what_else_helps(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    wake_with(journey, FILLED_G)
    journey.clear()
    assert not journey.table.press_zero()
    assert "switch it off and on" in journey.seen


# Silent, with its port open ------------------------------------------------------------------


def test_a_silent_balance_asks_for_an_empty_pan_when_it_speaks_again(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.table.fall_silent()
    journey.until_title("The scale is silent.")
    journey.table.speak_again()
    journey.until_title("The scale is back.")
    assert journey.rows("cups_taken") == 0


def test_after_the_empty_pan_a_silent_balance_is_used_again(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.table.fall_silent()
    journey.wait(SILENT_S)
    journey.table.speak_again()
    journey.clear()
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")


def test_the_screen_tells_silence_within_three_seconds(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.wait(2.0)
    journey.table.fall_silent()
    journey.wait(3.0)
    assert journey.screen == "trouble"


# Tared by its own key ------------------------------------------------------------------------


def test_a_balance_tared_by_its_key_weighs_no_cup(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    journey.bench.lift()
    journey.until_screen("take cup")
    journey.tap("Next pair")
    journey.put(EMPTY_G)
    journey.wait(REST_S)
    journey.table.press_tare()
    journey.tap("Wren")
    journey.until_title("The scale was tared by its key.")
    assert journey.rows("cups_taken") == 1


def test_after_zero_a_tared_balance_is_used_again(journey: Journey) -> None:
    journey.ask_for_cup()
    weight = journey.put(200.0)
    journey.until_screen("question")
    journey.table.press_tare()
    journey.until_title("The scale was tared by its key.")
    journey.bench.lift(weight)
    journey.wait(REST_S)
    assert journey.screen == "trouble"
    press_zero(journey)
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")


def test_the_tare_key_on_an_empty_pan_is_no_trouble(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.wait(REST_S)
    journey.table.press_tare()
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")


# Too heavy -----------------------------------------------------------------------------------


def test_an_overload_is_said_and_not_captured(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(2500.0)
    journey.until_title("Too heavy. Take something off.")
    assert journey.scene.pan.phase == "too heavy"
    assert journey.rows("weighings") == 0


def test_after_an_overload_the_cup_is_weighed(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(2500.0)
    journey.until_title("Too heavy. Take something off.")
    journey.clear()
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")


def test_an_overload_while_pouring_is_no_key(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.to_pour()
    hands.pour(300)
    weight = journey.put(2000.0)
    journey.until_title("Too heavy. Take something off.")
    journey.bench.lift(weight)
    journey.until_title("Pour, then stop.")
    assert journey.rows("keys_made") == 0


def test_a_few_divisions_below_zero_are_an_empty_pan(journey: Journey) -> None:
    crumbs = journey.put(0.2)
    journey.wait(REST_S)
    press_zero(journey)
    journey.bench.lift(crumbs)
    journey.wait(REST_S)
    journey.ask_for_cup()
    assert journey.screen == "put on"


@pytest.mark.parametrize("hands_s", [0.3, 0.6])
def test_a_quick_change_of_cups_on_a_woken_scale_is_not_weighed(
    journey: Journey, hands_s: float
) -> None:
    journey.ask_for_cup()
    wake_with(journey, EMPTY_G)
    journey.bench.lift()
    journey.wait(hands_s)
    journey.put(90.0)
    journey.wait(REST_S)
    assert journey.rows("cups_taken") == 0
