"""Forces over time as straight lines between knots: what a hand does to a pan."""

from __future__ import annotations

import math
from bisect import bisect_right
from dataclasses import dataclass
from typing import Protocol

import numpy as np


class Force(Protocol):
    """A force in grams, straight between its knots."""

    def at(self, t: float) -> float:
        """The force at ``t`` seconds, in grams."""

    def next_knot(self, t: float) -> float:
        """The first knot after ``t``; infinity when the force stays as it is."""


@dataclass(frozen=True, slots=True)
class Track:
    """Straight lines through (seconds, grams) in order of time, level before and after them."""

    times: tuple[float, ...]
    grams: tuple[float, ...]

    def at(self, t: float) -> float:
        """The force at ``t`` seconds, in grams."""
        after = bisect_right(self.times, t)
        if after == 0:
            return self.grams[0]
        if after == len(self.times):
            return self.grams[-1]
        start, end = self.times[after - 1], self.times[after]
        share = (t - start) / (end - start)
        return self.grams[after - 1] + share * (self.grams[after] - self.grams[after - 1])

    def next_knot(self, t: float) -> float:
        """The first knot after ``t``; infinity when the force stays as it is."""
        after = bisect_right(self.times, t)
        return self.times[after] if after < len(self.times) else math.inf


NO_FORCE = Track((0.0,), (0.0,))


@dataclass(frozen=True, slots=True, kw_only=True)
class Hand:
    """How a hand puts things down: each trait is drawn between two bounds.

    The load lands within ``landing_seconds``; the hand presses on by a share of what changes and
    lets go within ``release_seconds``.
    """

    landing_seconds: tuple[float, float] = (0.08, 0.25)
    press_share: tuple[float, float] = (0.05, 0.35)
    release_seconds: tuple[float, float] = (0.1, 0.4)


def landing(
    rng: np.random.Generator, hand: Hand, now: float, before: float, after: float
) -> tuple[Track, Track]:
    """The mass and the press of a hand that changes a load from ``before`` to ``after`` grams."""
    landed = now + rng.uniform(*hand.landing_seconds)
    released = landed + rng.uniform(*hand.release_seconds)
    press = abs(after - before) * rng.uniform(*hand.press_share)
    return (
        Track((now, landed), (before, after)),
        Track((now, landed, released), (0.0, press, 0.0)),
    )


class Leaning:
    """A hand that leans on the pan and trembles, for as long as nobody lets go.

    The tremor is normal with standard deviation ``tremor`` grams about ``grams``, with a knot
    every 0.1 to 0.3 s: most of it lies between 1 and 4 Hz, where a balance's filter passes it.
    """

    def __init__(self, rng: np.random.Generator, now: float, grams: float, tremor: float) -> None:
        self._rng = rng
        self._grams = grams
        self._tremor = tremor
        self._track = Track((now, now + 0.15), (0.0, grams))

    def at(self, t: float) -> float:
        """The force at ``t`` seconds, in grams."""
        self._reach(t)
        return self._track.at(t)

    def next_knot(self, t: float) -> float:
        """The first knot after ``t``: a leaning hand is never done."""
        self._reach(t)
        return self._track.next_knot(t)

    def _reach(self, t: float) -> None:
        while self._track.times[-1] <= t:
            times = self._track.times[-1] + np.cumsum(self._rng.uniform(0.1, 0.3, 20))
            grams = self._rng.normal(self._grams, self._tremor, 20)
            self._track = Track(
                (self._track.times[-1], *map(float, times)),
                (self._track.grams[-1], *map(float, grams)),
            )
