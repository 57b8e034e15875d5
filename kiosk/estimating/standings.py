"""Standings of a round: seven scores for each team, their total, its place, and how sure it is.

A team's place is one more than the number of teams with a higher total, so that equal totals
share a place: 1, 2, 2, 4, unless the rules name tasks that break a tie: among equal totals the
team with more points in the first of them is before the others, and so on. The range of places
says what the uncertainty of the keys can do to a place (see ``kiosk.estimating.place_ranges``);
there exact ties share the better place, so a place that a tie-break gave is taken in.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import TypeVar

from kiosk.estimating.exact import exact, half_up
from kiosk.estimating.place_ranges import DRAWS, SEED, TaskAnswers, place_ranges
from kiosk.estimating.score import ratio_points
from kiosk.settings import Rules, Task
from kiosk.texts import say

LARGEST_HALF_WIDTH = 100  # per cent; from there on a key would allow nothing at all


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """The actual value of a task (g, pieces or cm3) and half its 95 % interval in per cent of it.

    ValueError, with one sentence, for an actual value that is not above zero, or a half width
    that is below zero or 100 and more.
    """

    actual: Decimal
    half_width_percent: Decimal

    def __post_init__(self) -> None:
        if exact(self.actual) <= 0:
            raise ValueError(say("score.actual_not_positive"))
        if not 0 <= exact(self.half_width_percent) < LARGEST_HALF_WIDTH:
            raise ValueError(say("standings.half_width", limit=LARGEST_HALF_WIDTH))


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """The estimates of a team; a task that is not among them earns nothing."""

    team: str
    estimates: Mapping[Task, Decimal]


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Where a team stands: ``scores`` in the order of Task, and the sum of them as shown.

    ``place_low`` and ``place_high`` are the 2.5 and 97.5 % quantiles of its place over the draws.
    """

    place: int
    team: str
    scores: tuple[Decimal, ...]
    total: Decimal
    place_low: int
    place_high: int


def standings(
    keys: Mapping[Task, Key],
    answers: Sequence[Answers],
    rules: Rules,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
) -> list[Standing]:
    """The teams in the order of their places, those with one place in the order given.

    Without ``draws`` the place itself stands for its range. KeyError for a task without a key;
    ValueError, with one sentence, for an estimate below zero.
    """
    ratios = {task: _ratios(task, keys[task], answers) for task in Task}
    scores = list(zip(*(_points(ratios[task], rules) for task in Task), strict=True))
    totals = [sum(row, Decimal(0)) for row in scores]
    ranked = _places(scores, totals, rules)
    low, high = (
        place_ranges(
            [_task_answers(task, keys[task], ratios[task]) for task in Task],
            rules.over,
            draws=draws,
            seed=seed,
        )
        if draws
        else (ranked, ranked)
    )
    found = [
        Standing(
            place=place,
            team=team.team,
            scores=row,
            total=total,
            place_low=min(place, int(first)) if rules.tie_break else int(first),
            place_high=max(place, int(last)) if rules.tie_break else int(last),
        )
        for place, team, row, total, first, last in zip(
            ranked, answers, scores, totals, low, high, strict=True
        )
    ]
    return sorted(found, key=lambda standing: standing.place)


_Rank = TypeVar("_Rank", Decimal, tuple[Decimal, ...])


def places(totals: Sequence[_Rank]) -> list[int]:
    """The place of each total, the highest first, equal ones sharing the better place."""
    rising = sorted(totals)
    return [1 + len(rising) - bisect_right(rising, total) for total in totals]


def _places(
    scores: Sequence[tuple[Decimal, ...]], totals: Sequence[Decimal], rules: Rules
) -> list[int]:
    decide = [list(Task).index(task) for task in rules.tie_break]
    return places(
        [
            (total, *(row[task] for task in decide))
            for row, total in zip(scores, totals, strict=True)
        ]
    )


def _ratios(task: Task, key: Key, answers: Sequence[Answers]) -> tuple[Fraction, ...]:
    """Estimate / actual value, 0 where there is no estimate."""
    actual = exact(key.actual)
    estimates = [exact(team.estimates.get(task, Decimal(0))) for team in answers]
    if any(estimate < 0 for estimate in estimates):
        raise ValueError(say("score.estimate_negative"))
    return tuple(estimate / actual for estimate in estimates)


def _points(ratios: Sequence[Fraction], rules: Rules) -> list[Decimal]:
    return [half_up(ratio_points(ratio, rules.over), rules.decimals) for ratio in ratios]


def _task_answers(task: Task, key: Key, ratios: tuple[Fraction, ...]) -> TaskAnswers:
    return TaskAnswers(
        ratios=ratios,
        half_width=float(exact(key.half_width_percent) / 100),
        one_error_each=task is Task.MASS,
    )
