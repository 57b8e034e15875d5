"""The cable is pulled and returned: nothing is captured wrongly, nothing twice, all goes on."""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum

import pytest

from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.hand_in import HandInState
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.weigh_empty import WeighEmptyState
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands

Way = Callable[[Journey], None]
EMPTY_G, FILLED_G = 12.3, 105.7
ONE_CUP = [(1, "12.3", "93.4")]
GONE_S, BACK_S = 1.5, 4.0


def running(journey: Journey) -> Procedure:
    assert journey.desk.procedure is not None
    return journey.desk.procedure


def until(journey: Journey, state: Enum) -> None:
    journey.until(
        lambda: journey.desk.procedure is not None and running(journey).state is state,
        f"the state {state}",
    )


def pull(journey: Journey) -> None:
    journey.table.unplug()
    journey.wait(GONE_S)


def put_back(journey: Journey) -> None:
    journey.table.plug()
    journey.wait(BACK_S)


def kept_cups(journey: Journey) -> list[tuple[object, ...]]:
    """Number, empty mass and net mass of every cup that was taken, as often as it was kept."""
    return journey.kept(
        "SELECT number, grams, net FROM cups_taken JOIN weighings w ON w.id = empty_id "
        "LEFT JOIN cups_handed_in ON try_id = cups_taken.id"
    )


# The ways to each step, from the instruction for an empty cup --------------------------------


def nothing(_journey: Journey) -> None:
    """The step is there by itself."""


def load_of(grams: float) -> Way:
    def put(journey: Journey) -> None:
        journey.put(grams)

    return put


def lift_too_early(journey: Journey) -> None:
    journey.put(FILLED_G)
    journey.until(lambda: journey.desk.memory.loaded, "the load")
    journey.bench.lift()


def weigh(journey: Journey) -> None:
    journey.put(EMPTY_G)
    until(journey, WeighEmptyState.WEIGHED)


def take(journey: Journey) -> None:
    weigh(journey)
    journey.bench.lift()
    until(journey, WeighEmptyState.FILL)


def ask_to_leave(journey: Journey) -> None:
    take(journey)
    journey.tap("Home")


EMPTY_CUP: dict[WeighEmptyState, Way] = {
    WeighEmptyState.PUT_ON: nothing,
    WeighEmptyState.SETTLING: load_of(EMPTY_G),
    WeighEmptyState.LIFTED_EARLY: lift_too_early,
    WeighEmptyState.TOO_LIGHT: load_of(1.0),
    WeighEmptyState.REALLY_EMPTY: load_of(180.0),
    WeighEmptyState.WEIGHED: weigh,
    WeighEmptyState.FILL: take,
    WeighEmptyState.LEAVING: ask_to_leave,
}


# The ways to each step, from home with one cup out -------------------------------------------


def chosen(then: Way = nothing) -> Way:
    def choose(journey: Journey) -> None:
        journey.tap("1")
        then(journey)

    return choose


def put_and_lift(journey: Journey) -> None:
    journey.put(FILLED_G)
    until(journey, HandInState.WHOSE)
    journey.bench.lift()


def leave_the_hand_in(journey: Journey) -> None:
    journey.tap("Home")


def score(journey: Journey) -> None:
    journey.put(FILLED_G)
    until(journey, HandInState.SCORED)


def score_and_lift(journey: Journey) -> None:
    score(journey)
    journey.bench.lift()


HAND_IN: dict[HandInState, Way] = {
    HandInState.CHOOSE: put_and_lift,
    HandInState.WHOSE: load_of(FILLED_G),
    HandInState.PUT_ON: chosen(),
    HandInState.WEIGHING: chosen(load_of(FILLED_G)),
    HandInState.LIFTED_EARLY: chosen(lift_too_early),
    HandInState.LIGHTER: chosen(load_of(8.0)),
    HandInState.NOTHING_INSIDE: chosen(load_of(EMPTY_G)),
    HandInState.OTHER_CUP: chosen(load_of(EMPTY_G + 5)),
    HandInState.LEAVING: chosen(leave_the_hand_in),
    HandInState.SCORED: chosen(score),
    HandInState.LIFTED: chosen(score_and_lift),
}


def finish_empty_cup(journey: Journey) -> None:
    """From wherever the pair stands to the cup that is out, and home."""
    if running(journey).state is WeighEmptyState.LEAVING:
        journey.tap("Keep going")
    if running(journey).state is not WeighEmptyState.FILL:
        take(journey)
    journey.tap("Home")
    journey.tap("Leave")


def finish_hand_in(journey: Journey) -> None:
    """From wherever the pair stands to the score."""
    if running(journey).state is HandInState.LEAVING:
        journey.tap("Keep going")
    if running(journey).state is HandInState.CHOOSE:
        journey.tap("1")
    if journey.screen != "score":
        score(journey)


@pytest.mark.parametrize("state", EMPTY_CUP)
def test_an_empty_cup_survives_the_cable(journey: Journey, state: WeighEmptyState) -> None:
    journey.ask_for_cup()
    EMPTY_CUP[state](journey)
    until(journey, state)
    survives_the_cable(journey, step_after=2 if state is WeighEmptyState.WEIGHED else None)
    finish_empty_cup(journey)
    journey.tap("1")
    finish_hand_in(journey)
    assert kept_cups(journey) == ONE_CUP


@pytest.mark.parametrize("state", HAND_IN)
def test_a_hand_in_survives_the_cable(journey: Journey, state: HandInState) -> None:
    journey.take_cup(grams=EMPTY_G)
    HAND_IN[state](journey)
    until(journey, state)
    survives_the_cable(journey)
    finish_hand_in(journey)
    assert kept_cups(journey) == ONE_CUP


def survives_the_cable(journey: Journey, step_after: int | None = None) -> None:
    """The trouble shows where the pan is needed, until the pan was seen empty; nothing is kept."""
    step = step_after or journey.scene.sheet.step
    needed, before = running(journey).ask.needs_pan, kept_cups(journey)
    pull(journey)
    assert (journey.screen == "trouble") == needed
    put_back(journey)
    if journey.bench.on_pan:
        assert (journey.screen == "trouble") == needed
    assert kept_cups(journey) == before
    journey.clear()
    assert journey.screen != "trouble"
    assert journey.scene.sheet.step == step


def test_a_cup_that_waits_for_an_empty_pan_survives_the_cable(journey: Journey) -> None:
    journey.ask_for_cup()
    weigh(journey)
    journey.tap("Home")
    journey.tap("Leave")
    journey.tap("1")
    until(journey, HandInState.CLEAR)
    survives_the_cable(journey)
    finish_hand_in(journey)
    assert kept_cups(journey) == ONE_CUP


# A count key ---------------------------------------------------------------------------------


def to_tray(hands: KeyHands) -> None:
    hands.begin()


def to_count(hands: KeyHands) -> None:
    hands.begin()
    hands.weigh_tray()


def to_sample_at_rest(hands: KeyHands) -> None:
    to_count(hands)
    hands.lay_sample()


def to_next_sample(hands: KeyHands) -> None:
    to_sample_at_rest(hands)
    hands.keep()


def to_spread(hands: KeyHands) -> None:
    hands.begin()
    hands.all_samples()


def to_jar(hands: KeyHands) -> None:
    to_spread(hands)
    hands.go_to_jar()


def to_pour(hands: KeyHands) -> None:
    hands.to_pour()
    hands.journey.bench.pour(hands.jar, hands.material, grams=300)
    hands.journey.wait(1.0)


def to_still(hands: KeyHands) -> None:
    hands.to_pour()
    hands.pour(300)


def to_stopping(hands: KeyHands) -> None:
    to_pour(hands)
    hands.journey.tap("Stop here")


KEY: dict[Enum, Callable[[KeyHands], None]] = {
    SamplesState.TRAY_ON: to_tray,
    SamplesState.COUNT: to_count,
    SamplesState.READY: to_sample_at_rest,
    SamplesState.ADD: to_next_sample,
    SamplesState.SPREAD: to_spread,
    ContainerState.EMPTY_ON: to_jar,
    ContainerState.POUR: to_pour,
    ContainerState.STILL: to_still,
    ContainerState.STOPPING: to_stopping,
}


def kept_masses(journey: Journey) -> list[tuple[object, ...]]:
    return journey.kept(
        "SELECT role FROM key_masses WHERE id NOT IN (SELECT mass_id FROM masses_voided) "
        "ORDER BY place"
    )


def finish_key(hands: KeyHands) -> None:
    """From the step at which the pan was emptied to the key."""
    if hands.state is SamplesState.TRAY_ON:
        hands.weigh_tray()
    while hands.state in (SamplesState.COUNT, SamplesState.ADD):
        hands.sample()
    if hands.state is SamplesState.SPREAD:
        hands.go_to_jar()
    if hands.state is ContainerState.EMPTY_ON:
        hands.weigh_jar()
    hands.lift()
    hands.journey.bench.put(hands.jar)
    hands.pour(300)
    hands.finish()


@pytest.mark.parametrize("state", KEY)
def test_a_key_survives_the_cable(journey: Journey, state: Enum) -> None:
    hands = KeyHands(journey)
    KEY[state](hands)
    hands.until_state(state)
    step, before = journey.scene.sheet.step, kept_masses(journey)
    needed = running(journey).ask.needs_pan
    pull(journey)
    assert (journey.screen == "trouble") == needed
    put_back(journey)
    assert kept_masses(journey) == before
    hands.lift()
    assert journey.screen != "trouble"
    assert journey.scene.sheet.step == step
    finish_key(hands)
    assert kept_masses(journey) == [
        ("tray",), ("sample",), ("sample",), ("sample",), ("empty",), ("filled",)
    ]  # fmt: skip
