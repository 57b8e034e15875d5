"""Finds the newest stretch of readings in which the pan rests, or says that there is none.

Stable equilibrium by OIML R 76 means: within one division of the final value, two neighbouring
values allowed (from memory, not verified). What has to hold of the stretch, all in divisions:

- it is long enough, in readings and in seconds; longer the more the readings scatter, and as long
  as the load was swung about before
- the scatter is what this balance is known to have, or may have
- neighbouring readings scatter as much as distant ones: noise does, a moving load does not
- it leads nowhere: neither its later half, nor its slope, nor the way in which the reading came in
  say that the reading for the record will be off
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kiosk.weighing.approach import remainder
from kiosk.weighing.trace import Sample

LEAST_READINGS = 5
LEAST_SECONDS = 0.36
LEAST_NEW_INTERVALS = 3  # where the same value comes more than once
SECONDS_FOR_NOISE = 0.45  # more, for each division of scatter ...
QUIET_SCATTER = 0.9  # ... beyond this
MOST_MORE_READINGS = 4
NOISY = 0.6  # known to scatter so much: two readings more, and one more for each time as much
NOISY_SECONDS = 0.06
LONGEST_SECONDS = 10.0
WIDEST = 9.0  # six standard deviations of the noisiest balance that still is one
NOISIEST = 2.3  # scatter of a few readings of that balance
QUIET_RANGE = 1.0  # two neighbouring values
SCATTER_FACTOR = 2.2  # a few readings' scatter against the known one
UNKNOWN_NOISE = 0.2  # taken for granted before anything is known
ROUNDING_NOISE = 0.3  # of a display that flickers between two values
SWING_DIVISIONS = 3.5
SWING_RANGES = 1.2
LONGEST_AFTER_SWINGS = 1.5
LATER_DIVISIONS = 0.45  # the later half may be that far from the reading for the record ...
LATER_NOISES = 0.7  # ... and that many standard deviations of its mean
OFF_DIVISIONS = 0.5  # where the reading goes may be that far off ...
OFF_FEW = 2.0  # ... and more in a window of few readings ...
OFF_NOISES = 0.3  # ... and on a noisy balance
_HAIR = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Demands:
    """What this moment asks of a window.

    ``noise`` is the known one in divisions, None while unknown: then ``presumed`` must do;
    ``doubt`` says by which factor the known one may have grown since. ``swings`` are moments
    and heights of what the load did before.
    ``hurry`` is True when a trusted flag says stable.
    """

    noise: float | None = None
    presumed: float = 0.0
    doubt: float = 1.0
    swings: Sequence[tuple[float, float]] = ()
    repeat_interval: float = 0.0
    longest_gap: float = 1.0
    hurry: bool = False

    @property
    def likely_noise(self) -> float:
        """The noise to reckon with."""
        return max(UNKNOWN_NOISE, self.presumed) if self.noise is None else self.noise


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """A resting window; ``shown`` is its reading nearest to the mean. Divisions."""

    shown: Sample
    mean: float
    scatter: float
    size: int


def resting_window(samples: Sequence[Sample], demands: Demands) -> Window | None:
    """The shortest stretch up to the newest reading that satisfies ``demands``, if it rests."""
    stretch = _Stretch(samples[-1])
    for size in range(1, len(samples) + 1):
        sample = samples[-size]
        if size > 1 and samples[1 - size].at - sample.at > demands.longest_gap:
            return None
        stretch.add(sample)
        if stretch.range > WIDEST or stretch.seconds > LONGEST_SECONDS:
            return None
        if _long_enough(stretch, demands) and _level(stretch, demands):
            window = _window(samples, stretch)
            return window if _arrived(samples, window, stretch, demands) else None
    return None


class _Stretch:
    """Running sums over the newest readings, relative to the very newest."""

    def __init__(self, newest: Sample) -> None:
        self.newest = newest
        self.size = 0
        self.seconds = 0.0
        self._low = self._high = self._last = 0.0
        self._t = self._y = self._tt = self._ty = self._yy = self._jumps = 0.0

    def add(self, sample: Sample) -> None:
        t, y = sample.at - self.newest.at, sample.y - self.newest.y
        self.size += 1
        self.seconds = -t
        self._low, self._high = min(self._low, y), max(self._high, y)
        self._t += t
        self._y += y
        self._tt += t * t
        self._ty += t * y
        self._yy += y * y
        self._jumps += (y - self._last) ** 2
        self._last = y

    @property
    def range(self) -> float:
        return self._high - self._low

    @property
    def mean(self) -> float:
        return self.newest.y + self._y / self.size

    @property
    def middle(self) -> float:
        return self.newest.at + self._t / self.size

    @property
    def scatter(self) -> float:
        """Standard deviation."""
        squares = self._yy - self._y * self._y / self.size
        return math.sqrt(max(0.0, squares) / (self.size - 1))

    @property
    def jump(self) -> float:
        """Root mean square of the difference of neighbours: sqrt(2) times white noise."""
        return math.sqrt(self._jumps / (self.size - 1))

    @property
    def climb(self) -> float:
        """Slope by least squares times the length in seconds."""
        spread = self._tt - self._t * self._t / self.size
        slope = (self._ty - self._t * self._y / self.size) / spread if spread else 0.0
        return slope * self.seconds


def _long_enough(stretch: _Stretch, demands: Demands) -> bool:
    seen = max(0, min(MOST_MORE_READINGS, math.ceil(stretch.range - _HAIR) - 1))
    likely = demands.likely_noise
    noisy = 0 if likely < NOISY else 1 + int(likely / NOISY)
    hurry = 1 if demands.hurry else 0
    more = max(seen, noisy) - hurry
    if stretch.size < LEAST_READINGS + more:
        return False
    seconds = LEAST_SECONDS * (1 + NOISY_SECONDS * noisy - hurry / LEAST_READINGS)
    seconds = max(
        seconds,
        (LEAST_NEW_INTERVALS + more) * demands.repeat_interval,
        _after_swings(stretch, demands.swings),
    )
    noise = max(0.0, stretch.scatter - QUIET_SCATTER)
    return stretch.seconds >= seconds + SECONDS_FOR_NOISE * noise - _HAIR


def _after_swings(stretch: _Stretch, swings: Sequence[tuple[float, float]]) -> float:
    """A load that was swung about must be still for as long as that took."""
    noticeable = SWING_DIVISIONS + SWING_RANGES * stretch.range
    first = next((at for at, height in swings if height > noticeable), stretch.newest.at)
    return min(LONGEST_AFTER_SWINGS, (stretch.newest.at - first) / 2)


def _level(stretch: _Stretch, demands: Demands) -> bool:
    if stretch.range <= QUIET_RANGE + _HAIR:
        return True
    scatter, most = stretch.scatter, NOISIEST
    if demands.noise is not None:
        known = SCATTER_FACTOR * max(ROUNDING_NOISE, demands.noise)
        most = min(most, known * demands.doubt)
    error = scatter * math.sqrt(12 / stretch.size)  # of the climb
    least_jump = (1.0 if stretch.size >= 8 else 0.84) * scatter / demands.doubt
    return (
        scatter <= most and abs(stretch.climb) <= 1.3 + 0.8 * error and stretch.jump >= least_jump
    )


def _window(samples: Sequence[Sample], stretch: _Stretch) -> Window:
    mean = stretch.mean
    inside = [samples[-place] for place in range(1, stretch.size + 1)]
    shown = min(inside, key=lambda sample: abs(sample.y - mean))
    return Window(shown=shown, mean=mean, scatter=stretch.scatter, size=stretch.size)


def _arrived(
    samples: Sequence[Sample], window: Window, stretch: _Stretch, demands: Demands
) -> bool:
    """Whether the reading for the record is where the reading goes."""
    noise = max(demands.likely_noise, min(stretch.scatter, stretch.jump / math.sqrt(2)))
    half = window.size // 2
    later = sum(samples[-place].y for place in range(1, half + 1)) / half
    if abs(later - window.shown.y) > LATER_DIVISIONS + LATER_NOISES * noise / math.sqrt(half):
        return False
    way = samples[: len(samples) - window.size + 1]
    ends = remainder(way, stretch.middle, window.mean, noise, window.size)
    off = max(abs(window.mean + end - window.shown.y) for end in ends)
    return off <= OFF_DIVISIONS + OFF_FEW / window.size + OFF_NOISES * noise
