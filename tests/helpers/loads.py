"""Loads put on simulated balances of many kinds, as readings, with the truth beside them.

The motion is that of the simulated pan, sampled finely and without noise; what a kind of balance
makes of it (averaging, noise, rounding, pace, flag, frames sent twice) is added here, so that one
motion serves many kinds.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from enum import StrEnum
from functools import lru_cache

import numpy as np

from drivers.reading import Basis, Range, Reading
from drivers.simulated.profile import Profile
from drivers.simulated.weighing_pan import WeighingPan

FINE = 100  # samples a second of the motion
EMPTY_SECONDS = 1.2


class Flag(StrEnum):
    """How the balance's own word on rest behaves."""

    NONE = "none"
    HONEST = "honest"
    EARLY = "early"  # stable within twenty divisions
    ALWAYS = "always"
    NEVER = "never"
    FLICKER = "flicker"


@dataclass(frozen=True, kw_only=True)
class Kind:
    """A kind of balance; ``noise`` in divisions, ``filter_seconds`` of a low-pass filter.

    ``averaging_seconds`` of a moving average behind it. ``asked`` is how often each new value is
    read: above 1 the same value comes again and again.
    """

    readability: Decimal = Decimal("0.1")
    noise: float = 0.0
    filter_seconds: float = 0.1
    averaging_seconds: float = 0.0
    rate: float = 10.0
    flag: Flag = Flag.NONE
    asked: int = 1

    @property
    def division(self) -> float:
        """The readability as a number."""
        return float(self.readability)


@dataclass(frozen=True)
class Motion:
    """Noiseless grams at ``times``; ``rest_at`` is when they stay within half a division."""

    times: np.ndarray
    grams: np.ndarray
    resting: float
    rest_at: float


@dataclass(frozen=True)
class PutOn:
    """One load: what the balance shows, and the truth."""

    readings: list[Reading]
    resting: float
    rest_at: float


@lru_cache(maxsize=2000)
def motion(kind: Kind, number: int) -> Motion:
    """The ``number``-th load on a pan with this filter: placed by hand, left to rest."""
    rng = np.random.default_rng([number, round(1000 * kind.filter_seconds)])
    divisions = float(np.exp(rng.uniform(np.log(80), np.log(8000))))
    resting = divisions * kind.division
    pan = WeighingPan(
        Profile(
            readability=kind.readability,
            capacity=20_000 * kind.readability,
            noise=0.0,
            ring_hz=float(rng.uniform(5, 10)),
            damping=float(rng.uniform(0.2, 0.6)),
            filter_seconds=kind.filter_seconds,
            readings_per_second=FINE,
            seed=number,
        )
    )
    pan.advance(EMPTY_SECONDS)
    pan.load(resting, EMPTY_SECONDS)
    seconds = 2.5 + kind.averaging_seconds + kind.filter_seconds * float(np.log(2 * divisions))
    samples = pan.advance(EMPTY_SECONDS + seconds)
    times = np.arange(len(samples) + round(EMPTY_SECONDS * FINE)) / FINE
    grams = np.concatenate([np.zeros(len(times) - len(samples)), [s.quiet for s in samples]])
    grams = averaged(grams, kind.averaging_seconds)
    away = np.flatnonzero(np.abs(grams - resting) > kind.division / 2)
    return Motion(times, grams, resting, float(times[away[-1] + 1]))


def averaged(grams: np.ndarray, seconds: float) -> np.ndarray:
    """A moving average over so many seconds of fine samples, zero before them."""
    width = round(seconds * FINE)
    if width == 0:
        return grams
    sums = np.cumsum(np.concatenate([np.zeros(width), grams]))
    return (sums[width:] - sums[:-width]) / width


def put_on(kind: Kind, number: int, rng: np.random.Generator, watched: float) -> PutOn:
    """The load as ``kind`` shows it, until ``watched`` seconds after its true rest."""
    plain = replace(kind, noise=0.0, rate=10.0, flag=Flag.NONE, asked=1)  # one motion for all
    truth = motion(plain, number)
    until = truth.rest_at + watched
    readings = shown(kind, truth.times, truth.grams, rng, until)
    return PutOn(readings, truth.resting, truth.rest_at)


def shown(
    kind: Kind, times: np.ndarray, grams: np.ndarray, rng: np.random.Generator, until: float
) -> list[Reading]:
    """Readings of a motion; what comes after its end stays as it ended."""
    moments = np.arange(rng.uniform(0, 1 / kind.rate), until, 1 / kind.rate)
    quiet = np.interp(moments, times, grams)
    noisy = quiet + kind.noise * kind.division * rng.standard_normal(len(moments))
    steps = np.floor(noisy / kind.division + 0.5).astype(int)
    off = np.abs(quiet - grams[-1]) / kind.division
    readings = []
    for moment, count, away in zip(moments, steps, off, strict=True):
        stable = _says_stable(kind.flag, away, rng)
        for again in range(kind.asked):
            at = float(moment + again / kind.rate / kind.asked)
            readings.append(reading(kind.readability * int(count), at, stable))
    return readings


def reading(grams: Decimal, at: float, stable: bool | None = None) -> Reading:
    """A gross reading in grams as a balance would show it."""
    return Reading(
        value=grams, unit="g", grams=grams, stable=stable, basis=Basis.GROSS,
        range=Range.IN_RANGE, reason=None, raw=b"%s g" % str(grams).encode(), at=at,
        balance="simulated",
    )  # fmt: skip


def _says_stable(flag: Flag, away: float, rng: np.random.Generator) -> bool | None:
    if flag is Flag.NONE:
        return None
    honest = away <= 0.5
    return {
        Flag.HONEST: honest,
        Flag.EARLY: away <= 20,
        Flag.ALWAYS: True,
        Flag.NEVER: False,
        Flag.FLICKER: honest != (rng.random() < 0.2),
    }[flag]


def plain_rule(readings: list[Reading], kind: Kind) -> Reading | None:
    """The newest of the first eight readings within one division, over an empty pan's."""
    masses = [r.grams for r in readings if r.grams is not None]
    for end in range(8, len(masses) + 1):
        eight = masses[end - 8 : end]
        if max(eight) - min(eight) <= kind.readability and min(eight) > 20 * kind.readability:
            return readings[end - 1]
    return None
