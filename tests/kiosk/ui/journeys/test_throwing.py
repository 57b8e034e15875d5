"""The coach takes a cup off the list that will not come back."""

from __future__ import annotations

from collections.abc import Callable

from tests.helpers.journey import Journey


def test_a_lost_cup_is_asked_about_and_leaves_the_list(journey: Journey) -> None:
    journey.take_cup("Heron", 12.3)
    journey.take_cup("Wren", 14.1)
    journey.tap("Throw a cup away")
    journey.tap("1")
    journey.tap("Throw away")
    journey.wait(0.5)
    assert [cup.number for cup in journey.kiosk.facts.cups] == [2]
    assert journey.rows("tries_thrown_away") == 1


def test_a_cup_that_is_kept_stays_out(journey: Journey) -> None:
    journey.take_cup("Heron", 12.3)
    journey.tap("Throw a cup away")
    journey.tap("1")
    journey.tap("Keep cup")
    journey.wait(0.5)
    assert [cup.number for cup in journey.kiosk.facts.cups] == [1]
    assert journey.rows("tries_thrown_away") == 0


def test_a_thrown_cup_does_not_come_back_with_the_next_start(
    start: Callable[..., Journey],
) -> None:
    journey = start()
    journey.take_cup("Heron", 12.3)
    journey.tap("Throw a cup away")
    journey.tap("1")
    journey.tap("Throw away")
    journey.wait(0.5)
    assert start().kiosk.facts.cups == []
