"""A sitting's clock: starts, pauses, ends, and waits for who has extra time."""

from __future__ import annotations

from datetime import timedelta

from kiosk.rounds.clock import Clock, Going, clock, sittings_over
from kiosk.rounds.contents import ClockNote, ClockTurn
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules
from tests.helpers.pan import STARTED
from tests.helpers.round_notes import said, team, with_teams

MINUTE = 60


def turned(state: RoundState, turn: ClockTurn, minutes: float, reason: str = "") -> RoundState:
    return said(state, ClockNote(sitting=1, turn=turn, reason=reason), seconds=minutes * MINUTE)


def started() -> RoundState:
    return turned(with_teams(["Wren"], Rules(minutes=30)), ClockTurn.START, 0)


def at(state: RoundState, minutes: float) -> Clock:
    return clock(state, 1, STARTED + timedelta(minutes=minutes))


def test_before_the_start_all_the_time_is_left() -> None:
    found = at(with_teams(["Wren"], Rules(minutes=30)), 0)
    assert (found.going, found.left) == (Going.NOT_STARTED, timedelta(minutes=30))


def test_it_runs_down_and_is_over() -> None:
    assert at(started(), 12).left == timedelta(minutes=18)
    assert (at(started(), 30).going, at(started(), 99).left) == (Going.OVER, timedelta(0))


def test_a_pause_does_not_count_and_says_why() -> None:
    state = turned(started(), ClockTurn.PAUSE, 10, "fire drill")
    assert (at(state, 25).left, at(state, 25).reason) == (timedelta(minutes=20), "fire drill")
    state = turned(state, ClockTurn.GO_ON, 25)
    assert at(state, 30).left == timedelta(minutes=15)


def test_a_machine_that_wakes_up_in_the_past_loses_no_time() -> None:
    assert at(started(), -500).left == timedelta(minutes=30)


def test_who_has_extra_time_works_on() -> None:
    state = said(started(), team("Heron", extra_minutes=10))
    found = at(state, 31)
    assert (found.going, found.all_over) == (Going.OVER, False)
    assert [(each.label, left) for each, left in found.behind] == [("Heron", timedelta(minutes=9))]
    assert at(state, 40).all_over


def test_stopped_is_over_for_everybody() -> None:
    state = turned(said(started(), team("Heron", extra_minutes=10)), ClockTurn.STOP, 5, "all done")
    assert (at(state, 6).all_over, at(state, 6).reason) == (True, "all done")
    assert sittings_over(state, STARTED) == [1]


def test_a_pause_that_comes_too_late_changes_nothing() -> None:
    assert at(turned(started(), ClockTurn.PAUSE, 31, "fire drill"), 32).going is Going.OVER
    stopped = turned(started(), ClockTurn.STOP, 10, "all done")
    late = turned(stopped, ClockTurn.PAUSE, 11, "fire drill")
    assert (at(late, 12).going, at(late, 12).reason) == (Going.OVER, "all done")


def test_signs_come_at_ten_five_and_one_minute() -> None:
    found = [at(started(), minutes).sign() for minutes in (19, 20, 25, 28.9, 29, 30)]
    assert found == [None, 10, 5, 5, 1, None]
