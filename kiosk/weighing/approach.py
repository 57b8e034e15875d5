"""How far a reading still has to go, told from how it came in.

The filter of a balance lets a reading creep in as ``rest - r * exp(-t / T)``, T different for each
balance. It was last L away from the mean of the newest window at

    t(L) = c - T * ln(r + L)

where r is what remains from that mean. The moments at which several levels L were crossed, and the
middle of the window (L = 0), tell r: for each r of a list T and c are fitted, and every r that
fits about as well as the best one is possible. A load that fell on the pan at once crossed all
levels together: nothing remains. A pour crossed them evenly and shows no sign of an end: only a
very large r fits.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from kiosk.weighing.trace import Sample

LOWEST_DIVISIONS = 1.5  # a digital display hides half a division
LOWEST_NOISES = 4.0
SURELY_REACHED = 0.7  # of the farthest reading: noise alone does not decide when it was reached
AS_WELL = 2.0  # of chi squared
_LEVELS = tuple(1.5**power for power in range(10))  # times the lowest
_REMAINDERS = (1e-3, *(0.05 * 1.4**power for power in range(16)))  # times the lowest
_ROUNDING = 0.35  # of a mean, in divisions
_LONG_LEVEL = 2.0  # seconds, from which on a window tells by its own climb as well
_ROUNDED_CLIMB = 0.7  # of the climb of a window, in divisions
_STEEP = 20.0  # half a window in time constants; more would be out of all bounds
_EDGE = 0.1  # of the level between two neighbouring values
_NOISE = 1.5  # the last crossing is no ordinary one: noise chose it
_SHAPE = 0.1  # no filter is quite of one time constant: a share of the level
_TIMING = 0.3  # standard deviation of a moment within one interval
_LONG_AGO = 8.0  # exp(-8) of the lowest level is nothing


class Crossing(NamedTuple):
    """A level in divisions, how long ago it was last crossed, and within what time: seconds."""

    level: float
    age: float
    within: float


class _Point(NamedTuple):
    level: float
    age: float
    blur: float  # of the level
    late: float  # of the age


class Level(NamedTuple):
    """The window at the end of the way: what it says of the rest, in divisions and seconds."""

    middle: float
    mean: float
    climb: float
    seconds: float
    size: int


def remainder(way: Sequence[Sample], window: Level, noise: float) -> tuple[float, float]:
    """The least and the most that remain from ``mean``, in divisions, with the sign of the way.

    ``way`` are the readings up to the window, its first one included, oldest first; ``noise`` is
    the standard deviation of one reading in divisions.
    """
    middle, mean = window.middle, window.mean
    lowest = max(LOWEST_DIVISIONS, LOWEST_NOISES * noise)
    crossings = _crossings(way, middle, mean, lowest)
    if len(crossings) < 2:
        return 0.0, 0.0
    near, far = crossings[0], crossings[-1]
    t = (far.age - near.age) / math.log(far.level / near.level)
    if near.age > _LONG_AGO * t:
        return 0.0, 0.0
    edge = _EDGE + _NOISE * noise
    points = [
        _Point(level, age, edge + _SHAPE * level, _TIMING * within)
        for level, age, within in crossings
    ]
    middle_point = _Point(0.0, 0.0, _ROUNDING + noise / window.size**0.5, 0.0)
    side = -1.0 if _came_from_above(way, mean, lowest) else 1.0
    fits = []
    for r in (lowest * share for share in _REMAINDERS):
        misfit, t = _fit([middle_point, *points], r)
        if window.seconds >= _LONG_LEVEL:
            misfit += _climb_misfit(window, side * r, t, noise)
        fits.append((r, misfit))
    good = min(misfit for _, misfit in fits) + AS_WELL
    possible = [r for r, misfit in fits if misfit <= good]
    return side * possible[0], side * possible[-1]


def _crossings(way: Sequence[Sample], middle: float, mean: float, lowest: float) -> list[Crossing]:
    """Where and when the levels were last crossed, the lowest first, each further off."""
    reached = SURELY_REACHED * max(abs(sample.y - mean) for sample in way)
    crossings: list[Crossing] = []
    place = len(way) - 1
    for number in _LEVELS:
        if number * lowest > reached:
            break
        while abs(way[place].y - mean) < number * lowest:
            place -= 1
        crossing = _crossing(way, place, mean, number * lowest, middle)
        if not crossings or crossing.level > crossings[-1].level:
            crossings.append(crossing)
    return crossings


def _crossing(
    way: Sequence[Sample], place: int, mean: float, level: float, middle: float
) -> Crossing:
    """The crossing between the reading at ``place``, beyond the level, and the next one.

    Where the display went by one division the level is the middle of the two; where it jumped, the
    distance is taken to have fallen exponentially.
    """
    last = way[place]
    if place + 1 == len(way):
        return Crossing(level, middle - last.at, 0.0)
    following = way[place + 1]
    before, after = abs(last.y - mean), abs(following.y - mean)
    interval = following.at - last.at
    if before - after < 1.5:
        return Crossing((before + after) / 2, middle - last.at - interval / 2, interval)
    share = math.log(before / level) / math.log(before / max(0.5, after))
    return Crossing(level, middle - last.at - share * interval, interval / 3)


def _fit(points: Sequence[_Point], r: float) -> tuple[float, float]:
    """Chi squared of a remainder, and T; T and c fitted by weighted least squares.

    The first point is the middle of the window. A blurred level is a blurred moment the more, the
    slower the reading went by: at (r + L) / T, with T as the nearest and farthest levels have it.
    """
    near, far = points[1], points[-1]
    rough = (far.age - near.age) / math.log((r + far.level) / (r + near.level))
    rows = [
        (
            1 / ((rough * p.blur / (r + p.level)) ** 2 + p.late**2 + 1e-9),
            math.log(r + p.level),
            p.age,
        )
        for p in points
    ]
    total = sum(w for w, _, _ in rows)
    x0 = sum(w * x for w, x, _ in rows) / total
    age0 = sum(w * age for w, _, age in rows) / total
    t = sum(w * (x - x0) * (age - age0) for w, x, age in rows) / sum(
        w * (x - x0) ** 2 for w, x, _ in rows
    )
    if t <= 0:
        return math.inf, math.inf
    return sum(w * (age - age0 - t * (x - x0)) ** 2 for w, x, age in rows), t


def _climb_misfit(window: Level, r: float, t: float, noise: float) -> float:
    """Chi squared of the climb that a window would show if ``r`` remained from its middle.

    A pour that has ended is told so from a creep that goes on.
    """
    climb = 2 * r * math.sinh(min(_STEEP, window.seconds / (2 * t)))
    blur = math.hypot(_ROUNDED_CLIMB, noise * math.sqrt(12 / window.size))
    return ((climb - window.climb) / blur) ** 2


def _came_from_above(way: Sequence[Sample], mean: float, lowest: float) -> bool:
    return next(s.y > mean for s in reversed(way) if abs(s.y - mean) >= lowest)
