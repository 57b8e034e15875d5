"""Where a number rests, and whether it goes with a load that is put on and taken off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise
from statistics import median

LEAST_SECONDS = 0.5
LEAST_LINES = 3
BAND_STEPS = 3.0  # a rest scatters by that many steps to either side ...
BAND_SHARE = 0.02  # ... or by that share of all that the number went through
LOAD_STEPS = 10.0  # a load is at least that many steps ...
LOAD_SHARE = 0.3  # ... and that share of all
RETURN_SHARE = 0.05  # how far from where it began a number may come back, as a share of the load
FLICKER_VALUES = 3
FLICKER_SHARE = 0.2  # of the lines differ from the one before
_EVENLY = 3.0
_ONE_WAY = 0.1
_FEWEST_CHANGES = 3


@dataclass(frozen=True, slots=True)
class Series:
    """A number line by line: seconds and values, and the smallest step that it could make."""

    times: Sequence[float]
    values: Sequence[float]
    step: float

    @property
    def span(self) -> float:
        """From the lowest to the highest value."""
        return max(self.values) - min(self.values)


@dataclass(frozen=True, slots=True)
class Rest:
    """Positions ``start`` up to ``end`` of a series, where it stays near ``level``."""

    start: int
    end: int
    level: float

    @property
    def deep(self) -> range:
        """The later half, in which a balance has made up its mind, less its very end.

        There a load may already be on its way off.
        """
        return range((self.start + self.end) // 2, self.end - 1 - (self.end - self.start) // 8)


def rests_of(series: Series) -> list[Rest]:
    """The rests in order; neighbours on the same level are one.

    The first and the last may be short: who listens may have begun late or ended early.
    """
    band = max(BAND_STEPS * series.step, BAND_SHARE * series.span)
    rests: list[Rest] = []
    for start, end in _level_stretches(series.values, 2 * band):
        at_an_edge = end - start >= 2 and (start == 0 or end == len(series.values))
        if not at_an_edge and not _lasts(series, start, end):
            continue
        level = median(series.values[(start + end) // 2 : end])
        if rests and abs(rests[-1].level - level) <= band:
            before = rests.pop()
            start, level = before.start, median(series.values[before.start : end])
        rests.append(Rest(start, end, level))
    return rests


def _lasts(series: Series, start: int, end: int) -> bool:
    long = series.times[end - 1] - series.times[start] >= LEAST_SECONDS
    return long and end - start >= LEAST_LINES


def _level_stretches(values: Sequence[float], width: float) -> list[tuple[int, int]]:
    stretches, start = [], 0
    low = high = values[0] if values else 0.0
    for at, value in enumerate(values):
        low, high = min(low, value), max(high, value)
        if high - low > width:
            stretches.append((start, at))
            start, low, high = at, value, value
    stretches.append((start, len(values)))
    return stretches


def moves_with_load(series: Series, rests: Sequence[Rest]) -> bool:
    """True if the number left a rest for another by a load's worth."""
    least = _least_load(series)
    return _may_weigh(series) and any(
        abs(after.level - before.level) >= least for before, after in pairwise(rests)
    )


def follows_load(series: Series, rests: Sequence[Rest]) -> bool:
    """True if the number left a rest by a load's worth and came back to it."""
    least = _least_load(series)
    return _may_weigh(series) and any(
        abs(away.level - first.level) >= least
        and abs(last.level - first.level) <= _near(series, abs(away.level - first.level))
        for first, away, last in combinations(rests, 3)
    )


def loads_in(series: Series, rests: Sequence[Rest]) -> tuple[int, bool]:
    """How many loads were put on and taken off again, and whether one lies there now.

    The pan may have begun with a hand on it, so that any of the rests can be the empty one.
    """
    counts = [_loads_from(series, rests[at:]) for at in range(len(rests))]
    return max(counts, key=lambda found: found[0], default=(0, False))


def _loads_from(series: Series, rests: Sequence[Rest]) -> tuple[int, bool]:
    empty, least = rests[0].level, _least_load(series)
    count, load = 0, 0.0
    for rest in rests[1:]:
        away = abs(rest.level - empty)
        if not load and away >= least:
            load = away
        elif load and away <= _near(series, load):
            count, load = count + 1, 0.0
    return count, bool(load)


def _near(series: Series, load: float) -> float:
    """How far from where it began a number may come back after a load."""
    return max(BAND_STEPS * series.step, RETURN_SHARE * load)


def _may_weigh(series: Series) -> bool:
    return not counts_on(series) and not flickers(series)


def flickers(series: Series) -> bool:
    """True for a display that only goes to and fro between neighbouring values.

    Its real step may be many units of the last digit, so that it looks like a load.
    """
    changes = sum(a != b for a, b in pairwise(series.values))
    return len(set(series.values)) <= FLICKER_VALUES and changes > FLICKER_SHARE * len(
        series.values
    )


def counts_on(series: Series) -> bool:
    """True for a clock or a counter: it goes one way, and goes evenly.

    A load may go up in many lines and down in one, but it stands still in between.
    """
    at = [i for i, (a, b) in enumerate(pairwise(series.values), start=1) if a != b]
    if len(at) < _FEWEST_CHANGES:
        return False
    up = sum(series.values[i] > series.values[i - 1] for i in at)
    if min(up, len(at) - up) > _ONE_WAY * len(at):
        return False
    edges = [series.times[i] for i in (0, *at, len(series.values) - 1)]
    gaps = [b - a for a, b in pairwise(edges)]
    return max(gaps) <= _EVENLY * median(gaps)


def _least_load(series: Series) -> float:
    return max(LOAD_STEPS * series.step, LOAD_SHARE * series.span)
