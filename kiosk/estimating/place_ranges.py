"""How sure a place is: keys are drawn within their intervals, and each draw ranks all teams anew.

A key's 95 % half width is taken as 1.96 standard deviations of a normal distribution; values at
or below zero are drawn again. One draw of a key re-scores every team, because all of them answered
about the same jar or box; cups are weighed one by one, so each team's cup has an error of its own.
Draws are scored without rounding; equal totals share the better place. Each task has its own
stream of random numbers, so that the same round gives the same ranges every time.

What is kept for each team and draw is its place, two bytes up to 65 535 teams; everything else is
done in pieces of about ``PIECE`` numbers.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

from kiosk.estimating.score import ratio_points
from kiosk.estimating.uncertainty import NORMAL_FACTOR
from kiosk.settings import Over

DRAWS = 4000
SEED = 1355
LOW, HIGH = Fraction(25, 1000), Fraction(975, 1000)
PIECE = 100_000
FULL = 100.0  # points

Floats: TypeAlias = NDArray[np.float64]
Places: TypeAlias = NDArray[np.unsignedinteger[Any]]


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskAnswers:
    """What all teams answered to one task: estimate / actual value, one for each team.

    ``half_width`` is half the key's 95 % interval relative to its value, 0 to under 1. With
    ``one_error_each`` every team has a draw of its own.
    """

    ratios: tuple[Fraction, ...]
    half_width: float
    one_error_each: bool


def place_ranges(
    tasks: Sequence[TaskAnswers], over: Over, *, draws: int = DRAWS, seed: int = SEED
) -> tuple[Places, Places]:
    """The 2.5 and the 97.5 % quantile (inverted cdf) of each team's place, in order of teams."""
    teams = len(tasks[0].ratios)
    places = np.empty((draws, teams), dtype=np.uint16 if teams < 2**16 else np.uint32)
    done = 0
    for totals in drawn_totals(tasks, over, draws=draws, seed=seed):
        _rank(totals, places[done : done + len(totals)])
        done += len(totals)
    return _quantiles(places)


def drawn_totals(
    tasks: Sequence[TaskAnswers], over: Over, *, draws: int, seed: int
) -> Iterator[Floats]:
    """The totals of all teams, one row a draw, in pieces; the next piece overwrites this one."""
    teams = len(tasks[0].ratios)
    certain = _certain_points([task for task in tasks if not task.half_width], teams, over)
    uncertain = [
        _DrawnTask(task, np.random.default_rng([seed, number]))
        for number, task in enumerate(tasks)
        if task.half_width
    ]
    rows = min(draws, max(1, PIECE // max(1, teams)))
    whole, part, mirrored = (np.empty((rows, teams)) for _ in range(3))
    for begin in range(0, draws, rows):
        size = min(rows, draws - begin)
        totals, points = whole[:size], part[:size]
        totals[:] = certain
        for task in uncertain:
            task.draw(points)
            _earned(points, mirrored[:size], over)
            totals += points
        yield totals


class _DrawnTask:
    """A task whose key is uncertain, and the stream of its draws."""

    def __init__(self, task: TaskAnswers, random: np.random.Generator) -> None:
        self._full = np.array([FULL * float(ratio) for ratio in task.ratios], dtype=np.float64)
        self._deviation = task.half_width / NORMAL_FACTOR
        self._one_error_each = task.one_error_each
        self._random = random

    def draw(self, out: Floats) -> None:
        """Fill ``out``, one row a draw, with 100 x estimate / drawn key."""
        keys = np.empty((len(out), out.shape[1] if self._one_error_each else 1))
        self._random.standard_normal(out=keys)
        keys *= self._deviation
        keys += 1
        while (impossible := keys <= 0).any():
            again = self._random.standard_normal(np.count_nonzero(impossible))
            keys[impossible] = 1 + self._deviation * again
        np.divide(self._full, keys, out=out)


def _certain_points(tasks: Sequence[TaskAnswers], teams: int, over: Over) -> Floats:
    """Exact sums, rounded once: totals that are equal on paper stay equal here."""
    sums = [Fraction(0)] * teams
    for task in tasks:
        earned = (ratio_points(ratio, over) for ratio in task.ratios)
        sums = [total + points for total, points in zip(sums, earned, strict=True)]
    return np.array([float(total) for total in sums], dtype=np.float64)


def _earned(points: Floats, mirrored: Floats, over: Over) -> None:
    """Turn 100 x estimate / key into points, in place."""
    if over is Over.ZERO:
        points[points > FULL] = 0
        return
    np.subtract(2 * FULL, points, out=mirrored)
    np.minimum(points, mirrored, out=points)
    np.maximum(points, 0, out=points)


def _rank(totals: Floats, places: Places) -> None:
    """Write the place of each total in its row, 1 for the highest; spoils ``totals``."""
    falling = np.negative(totals, out=totals)
    order = np.argsort(falling, axis=1)
    steps = np.arange(1, totals.shape[1] + 1, dtype=places.dtype)
    for row, by_place, place in zip(falling, order, places, strict=True):
        in_order = row[by_place]
        better = in_order[1:] == in_order[:-1]
        if better.any():
            first = steps.copy()
            first[1:][better] = 1
            place[by_place] = np.maximum.accumulate(first)
        else:
            place[by_place] = steps


def _quantiles(places: Places) -> tuple[Places, Places]:
    draws, teams = places.shape
    ends = [ceil(draws * LOW) - 1, ceil(draws * HIGH) - 1]
    low, high = np.empty_like(places[0]), np.empty_like(places[0])
    step = max(1, PIECE // draws)
    for begin in range(0, teams, step):
        some = slice(begin, begin + step)
        by_team = np.ascontiguousarray(places[:, some].T)
        by_team.partition(ends, axis=1)
        low[some], high[some] = by_team[:, ends].T
    return low, high
