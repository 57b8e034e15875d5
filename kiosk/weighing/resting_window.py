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

from kiosk.weighing.approach import Level, remainder
from kiosk.weighing.hover import hovering_since, tremor
from kiosk.weighing.stretch import Stretch
from kiosk.weighing.trace import Sample

LEAST_READINGS = 5
LEAST_SECONDS = 0.36
LEAST_NEW_INTERVALS = 3  # where the same value comes more than once
SECONDS_FOR_NOISE = 0.45  # more, for each division of scatter ...
QUIET_SCATTER = 0.9  # ... beyond this
MOST_MORE_READINGS = 4
NOISY = 0.6  # known to scatter so much: two readings more, and one more for each time as much
NOISY_SECONDS = 0.04
ROUGHER = 1.5  # times the known noise: twice as long
LONGEST_SECONDS = 10.0
WIDEST = 9.0  # six standard deviations of the noisiest balance that still is one
NOISIEST = 2.3  # scatter of a few readings of that balance
QUIET_RANGE = 1.0  # two neighbouring values
SCATTER_FACTOR = 2.2  # a few readings' scatter against the known one
UNKNOWN_NOISE = 0.2  # taken for granted before anything is known
ROUNDING_NOISE = 0.3  # of a display that flickers between two values
HOVER_SECONDS = 0.5  # of a hand that lets go slowly
HOVER_MOST_SECONDS = 2.0
HOVER_MOST_INTERVALS = 8
TREMBLING = 2.0  # times the noise: a tremor may cancel itself out, or keep step with the readings
TREMBLED_LONGER = 2.0
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
    ``doubt`` says by which factor the known one may have grown since. ``repeat_interval`` is the
    time between new values where each comes more than once, else 0. ``more_readings`` is what the
    balance's own word adds, or takes off.
    """

    noise: float | None = None
    presumed: float = 0.0
    doubt: float = 1.0
    restless_since: float = -math.inf
    repeat_interval: float = 0.0
    longest_gap: float = 1.0
    more_readings: int = 0

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
    stretch = Stretch(samples[-1])
    since: float | None = None  # the load has hovered
    for size in range(1, len(samples) + 1):
        sample = samples[-size]
        if size > 1 and samples[1 - size].at - sample.at > demands.longest_gap:
            return None
        stretch.add(sample)
        if stretch.range > WIDEST or stretch.seconds > LONGEST_SECONDS:
            return None
        if not (_long_enough(stretch, demands) and _level(stretch, demands)):
            continue
        if since is None:
            since = _hovering_since(samples, stretch, demands)
        if _outlasts(samples, stretch, since, demands):
            window = _window(samples, stretch)
            return window if _arrived(samples, window, stretch, demands) else None
    return None


def _hovering_since(samples: Sequence[Sample], stretch: Stretch, demands: Demands) -> float:
    return hovering_since(samples, stretch.mean, demands.likely_noise, demands.restless_since)


def _outlasts(samples: Sequence[Sample], stretch: Stretch, since: float, demands: Demands) -> bool:
    """A load that hovered must be still for as long as that took, one that trembled for longer."""
    hovered = stretch.newest.at - stretch.seconds - since
    if hovered <= HOVER_SECONDS:
        return True
    interval = stretch.seconds / (stretch.size - 1)
    least = min(hovered, max(HOVER_MOST_SECONDS, HOVER_MOST_INTERVALS * interval))
    noise = max(ROUNDING_NOISE, demands.likely_noise, stretch.scatter)
    if tremor(samples[: -stretch.size], since, stretch.mean) > TREMBLING * noise:
        least *= TREMBLED_LONGER
    return stretch.seconds >= least - _HAIR


def _long_enough(stretch: Stretch, demands: Demands) -> bool:
    seen = max(0, min(MOST_MORE_READINGS, math.ceil(stretch.range - _HAIR) - 1))
    likely = demands.likely_noise
    noisy = 0 if likely < NOISY else 1 + int(likely / NOISY)
    more = max(seen, noisy) + demands.more_readings
    if stretch.size < LEAST_READINGS + more:
        return False
    least = LEAST_SECONDS * (1 + NOISY_SECONDS * noisy + demands.more_readings / LEAST_READINGS)
    new_values = (LEAST_NEW_INTERVALS + more) * demands.repeat_interval
    seconds = max(least, new_values)
    if demands.noise is not None and stretch.scatter > ROUGHER * max(NOISY, demands.noise):
        seconds *= 2
    noise = max(0.0, max(stretch.scatter, likely) - QUIET_SCATTER)  # quiet by luck is not quiet
    return stretch.seconds >= seconds + SECONDS_FOR_NOISE * noise - _HAIR


def _level(stretch: Stretch, demands: Demands) -> bool:
    if stretch.range <= QUIET_RANGE + _HAIR:
        return True
    scatter, most = stretch.scatter, NOISIEST
    if demands.noise is not None:
        known = SCATTER_FACTOR * max(ROUNDING_NOISE, demands.noise)
        most = min(most, known * demands.doubt)
    error = scatter * math.sqrt(12 / stretch.size)  # of the climb
    least_jump = (1.2 if stretch.size >= 8 else 0.84) * scatter / demands.doubt
    return (
        scatter <= most and abs(stretch.climb) <= 1.3 + 0.8 * error and stretch.jump >= least_jump
    )


def _window(samples: Sequence[Sample], stretch: Stretch) -> Window:
    mean = stretch.mean
    inside = [samples[-place] for place in range(1, stretch.size + 1)]
    shown = min(inside, key=lambda sample: abs(sample.y - mean))
    return Window(shown=shown, mean=mean, scatter=stretch.scatter, size=stretch.size)


def _arrived(samples: Sequence[Sample], window: Window, stretch: Stretch, demands: Demands) -> bool:
    """Whether the reading for the record is where the reading goes."""
    noise = max(demands.likely_noise, min(stretch.scatter, stretch.jump / math.sqrt(2)))
    half = window.size // 2
    later = sum(samples[-place].y for place in range(1, half + 1)) / half
    if abs(later - window.shown.y) > LATER_DIVISIONS + LATER_NOISES * noise / math.sqrt(half):
        return False
    way = samples[: len(samples) - window.size + 1]
    level = Level(stretch.middle, window.mean, stretch.climb, stretch.seconds, window.size)
    ends = remainder(way, level, noise)
    off = max(abs(window.mean + end - window.shown.y) for end in ends)
    return off <= OFF_DIVISIONS + OFF_FEW / window.size + OFF_NOISES * noise
