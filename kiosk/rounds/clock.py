"""The clock of a sitting, worked out of what was noted about it: it survives any restart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from kiosk.records.round_notes import NoteKind
from kiosk.rounds.contents import ClockNote, ClockTurn, Team
from kiosk.rounds.state import RoundState

SIGNS_AT_MINUTES = (10, 5, 1)
TOLD_BY = (NoteKind.ROUND, NoteKind.CLOCK)  # all but extra time, which is told by the teams
LATELY = timedelta(days=1)  # longer than any extra time


class Going(StrEnum):
    """What a clock does."""

    NOT_STARTED = "not started"
    RUNNING = "running"
    PAUSED = "paused"
    OVER = "over"


@dataclass(frozen=True, slots=True, kw_only=True)
class Clock:
    """A sitting's clock at one moment; ``left`` is what remains, never below zero.

    ``reason`` says why it is paused or was stopped. ``behind`` are teams with extra time that is
    not over yet, and what remains of it.
    """

    going: Going
    left: timedelta
    reason: str = ""
    behind: tuple[tuple[Team, timedelta], ...] = ()

    @property
    def all_over(self) -> bool:
        """Whether nobody works any more."""
        return self.going is Going.OVER and not self.behind

    def sign(self) -> int | None:
        """The minutes of the latest quiet sign that was due, None before the first."""
        due = [minutes for minutes in SIGNS_AT_MINUTES if self.left <= timedelta(minutes=minutes)]
        return due[-1] if due and self.going in (Going.RUNNING, Going.PAUSED) else None


def clock(state: RoundState, sitting: int, now: datetime) -> Clock:
    """The clock of that sitting at that moment (UTC).

    A moment before the last note (a machine woke up in the past) counts as that note's.
    """
    whole = timedelta(minutes=state.rules.minutes)
    notes = state.clock_notes(sitting)
    if not notes:
        return Clock(going=Going.NOT_STARTED, left=whole)
    stopped = next((note for _, note in notes if note.turn is ClockTurn.STOP), None)
    if stopped is not None:
        return Clock(going=Going.OVER, left=timedelta(0), reason=stopped.reason)
    worked, running = _worked(notes, now)
    last = notes[-1][1]
    left = max(timedelta(0), whole - worked)
    behind = tuple(
        (team, remains)
        for team in state.teams_of(sitting=sitting)
        if team.extra_minutes
        and (remains := whole + timedelta(minutes=team.extra_minutes) - worked) > timedelta(0)
    )
    if not running and (left or behind):
        return Clock(going=Going.PAUSED, left=left, reason=last.reason, behind=behind)
    return Clock(going=Going.RUNNING if left else Going.OVER, left=left, behind=behind)


def _worked(notes: Sequence[tuple[datetime, ClockNote]], now: datetime) -> tuple[timedelta, bool]:
    """How long the clock ran until ``now``, and whether it runs."""
    worked, since = timedelta(0), None
    for at, note in notes:
        if note.turn in (ClockTurn.START, ClockTurn.GO_ON):
            since = since or at
        elif since is not None:
            worked += max(timedelta(0), at - since)
            since = None
    if since is None:
        return worked, False
    return worked + max(timedelta(0), now - since), True


def somebody_works(state: RoundState, now: datetime) -> bool:
    """Whether a clock runs or is paused, extra time included; of a round without its teams too.

    A pause of days was forgotten.
    """
    return any(
        not found.all_over and (found.going is not Going.PAUSED or _lately(state, sitting, now))
        for sitting in begun_sittings(state)
        for found in [clock(state, sitting, now)]
    )


def begun_sittings(state: RoundState) -> list[int]:
    """The sittings whose clocks were started, those that have no team any more too."""
    return sorted(note.sitting for note in state.all_latest(ClockNote))


def lately(state: RoundState, now: datetime) -> bool:
    """Whether a clock was started, paused or stopped so lately that extra time may run."""
    return any(_lately(state, sitting, now) for sitting in begun_sittings(state))


def _lately(state: RoundState, sitting: int, now: datetime) -> bool:
    return any(now - at < LATELY for at, _ in state.clock_notes(sitting)[-1:])


def sittings_over(state: RoundState, now: datetime) -> list[int]:
    """The sittings in which nobody works any more."""
    return [sitting for sitting in state.sittings if clock(state, sitting, now).all_over]
