"""The cups of a round by touch: weighed empty, handed in, and everything that goes otherwise."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kiosk.procedures.queue_steps import QueueState
from kiosk.ui.presenters.queue_views import QueueView
from tests.helpers.journey import Journey
from tests.helpers.queue_journey import (
    begin_round,
    go_to,
    lift,
    nets,
    queue_of,
    stands,
    tap_on_sheet,
    until_state,
    weigh,
)

TEAMS = ("Avocet", "Curlew", "Dunlin", "Heron", "Teal")
Start = Callable[..., Journey]


def test_five_cups_from_empty_to_handed_in(start: Start) -> None:
    journey = start()
    begin_round(journey, TEAMS)
    go_to(journey, "Empty cups")
    for number in range(1, 6):
        weigh(journey, f"cup {number} empty")
    assert journey.title == "All cups are done."
    assert set(stands(journey).values()) == {"out"}

    journey = start()  # the kiosk was closed over the half-hour
    go_to(journey, "Filled cups")
    weigh(journey, "cup 1 filled")

    # Cup 3 is put on where cup 2 was asked for, and seen when it is recorded already.
    journey.tap_thing("another cup: 3")
    until_state(journey, QueueState.RECORDED)
    tap_on_sheet(journey, "Another cup? Tap here.", "3")
    until_state(journey, QueueState.RECORDED)
    assert stands(journey)["Dunlin"] == "in"
    assert stands(journey)["Curlew"] == "out"
    lift(journey)

    # Cup 2 is set aside, cup 4 was spilled on the way, cup 5 is recorded and undone.
    tap_on_sheet(journey, "Set aside", "Spilled or cracked", "Spilled after hand-in")
    assert journey.seen.count("1 set aside") == 1
    weigh(journey, "cup 5 filled")
    tap_on_sheet(journey, "Undo cup 5")
    weigh(journey, "cup 5 filled")

    # Closed in the middle, it goes on where it was: with the cup that was set aside.
    journey = start()
    go_to(journey, "Filled cups")
    assert "comes back" in journey.seen
    weigh(journey, "cup 2 filled")
    assert journey.title == "All cups are done."
    assert stands(journey) == dict.fromkeys(TEAMS, "in") | {"Heron": "no mass"}
    assert nets(journey) == pytest.approx(
        {"Avocet": 95, "Curlew": 95, "Dunlin": 95, "Teal": 95}, abs=1.0
    )
    assert journey.rows("round_notes") > len(TEAMS) * 3


def test_no_mass_is_on_the_screen_while_a_cup_is_on_the_pan(start: Start) -> None:
    journey = start()
    begin_round(journey, TEAMS)
    go_to(journey, "Empty cups")
    seen: set[str] = set()
    journey.put(87.6)
    for _ in range(40):
        journey.step()
        pan = journey.scene.pan
        assert pan.phase == "hidden" or float(pan.number) < 2, pan
        seen.add(str(queue_of(journey).state.value))
        assert "87" not in journey.seen
    assert {"put on", "weighing", "recorded"} <= seen
    before = journey.pixels()
    journey.put(20.0)  # whatever happens under the cover, nothing moves
    journey.wait(0.3)
    assert journey.pixels() == before


def test_crumbs_are_seen_and_brushed_away(start: Start) -> None:
    journey = start()
    begin_round(journey, TEAMS)
    go_to(journey, "Empty cups")
    journey.tap_thing("cup 1 empty")
    until_state(journey, QueueState.RECORDED)
    journey.tap("crumbs")
    journey.tap("cup 1 empty")
    until_state(journey, QueueState.DIRTY)
    journey.tap("Put away")
    sheet, pan = journey.scene.sheet, journey.scene.pan
    assert isinstance(sheet, QueueView)
    assert [step.text for step in sheet.pair] == ["Brush the pan.", "Put cup 2 on, empty."]
    assert (pan.phase, pan.number, pan.line1) == ("not zero", "0.6", "should be 0.0 g")
    journey.tap_thing("crumbs")
    until_state(journey, QueueState.PUT_ON)


def test_a_cup_that_will_not_rest_is_offered_to_be_set_aside(start: Start) -> None:
    journey = start()
    begin_round(journey, TEAMS)
    go_to(journey, "Empty cups")
    journey.put(12.3)
    journey.bench.lean()
    journey.until(lambda: journey.screen == "trouble", "the causes")
    journey.tap("Set cup 1 aside")
    assert queue_of(journey).list.current == queue_of(journey).list.numbered(2)
    journey.bench.let_go()
    journey.bench.lift()
    until_state(journey, QueueState.PUT_ON)
