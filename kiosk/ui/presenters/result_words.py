"""Results in words: how far they are, places, which task, which side; and one score."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from decimal import Decimal

from kiosk.rounds.contents import Stage
from kiosk.rounds.results import Answered, Row
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.presenters.cup_views import ON_TARGET_PERCENT
from kiosk.ui.presenters.wall_views import time_left


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreMark:
    """One score: its points, its side ("" without an answer), estimate / real value or None."""

    points: str
    side: str = ""
    share: float | None = None
    corrected: bool = False


def task_short(state: RoundState, division: str, task: Task) -> str:
    """How a task is called in the head of a table: the letter says which jar or box it is."""
    if task is Task.MASS:
        return say("results.head.cup")
    key = state.key(division, task)
    return say(
        "results.head.jar" if task.value.startswith("count") else "results.head.box",
        letter=key.letter if key else "",
    ).strip()


def plate_of(stage: Stage) -> str:
    """How far the results are, in one word."""
    return say(f"results.plate.{stage}")


def plate_note(stage: Stage, left: timedelta) -> str:
    """What is left of the time for protests."""
    if stage is not Stage.RELEASED:
        return ""
    if not left:
        return say("results.protest_over")
    return say("results.protest_left", left=time_left(left))


def nth(place: int) -> str:
    """A place as people say it: 1st, 2nd, 11th."""
    last = 0 if place % 100 in (11, 12, 13) else place % 10
    return say(f"results.nth.{last if last in (1, 2, 3) else 'other'}", place=place)


def range_words(row: Row) -> str:
    """Where the keys' uncertainty may put a team."""
    if row.safe:
        return say("results.safe")
    low, high = min(row.place, row.place_low), max(row.place, row.place_high)
    return say(
        "results.range.two" if high - low == 1 else "results.range.many",
        low=nth(low), high=nth(high),
    )  # fmt: skip


def side_of(answered: Answered, half_width_percent: Decimal) -> str:
    """Under, over or on target: within 2 % of the real value, or inside the key's interval."""
    error = answered.error_percent
    if error is None:
        return ""
    if abs(error) <= max(Decimal(ON_TARGET_PERCENT), half_width_percent):
        return "on target"
    return "over" if error > 0 else "under"


def mark_of(state: RoundState, row: Row, place: int, *, digits: int | None = None) -> ScoreMark:
    """One of a team's scores."""
    answered, points = row.answered[place], row.scores[place]
    key = state.key(row.team.division, answered.task)
    width = key.half_width_percent if key else Decimal(0)
    estimate = answered.estimate
    return ScoreMark(
        points=number(points, state.rules.decimals if digits is None else digits),
        side=side_of(answered, width),
        share=None if estimate is None else float(estimate / answered.actual),
        corrected=answered.corrected,
    )
