"""The physics of a weighing pan: a load lands, the pan rings, a filter calms it, noise stays.

The pan is a mass on a spring, pushed by a force that is straight between knots, with a one-pole
low-pass filter behind it:

    x'' = w^2 (F - x) - 2 z w x'        y' = (x - y) / T        F' = s        s' = 0

Five linear equations with constant coefficients: their matrix exponential carries the state over
any stretch without a knot exactly, so nothing depends on a step width.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from drivers.simulated.profile import Profile
from drivers.simulated.tracks import NO_FORCE, Force, Hand, Leaning, Track, landing

_Matrix = npt.NDArray[np.float64]
_SHORTEST_FILTER = 1e-3
_AIR_SECONDS = 0.8
_LONG_GAP = 60.0
_SEEN_OF_A_LONG_GAP = 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Sample:
    """One conversion of the balance, in grams, and what only the simulation knows.

    ``grams`` carries drift, air and noise; ``quiet`` is the same without noise, as a balance
    averages it to zero itself; ``resting`` is where the reading comes to rest if nothing more
    happens; ``off_rest`` how far ringing and filter can still take it from there. ``touched``
    while a hand or a pour is at work.
    """

    at: float
    grams: float
    quiet: float
    resting: float
    off_rest: float
    touched: bool


class WeighingPan:
    """A pan that lives in the time that it is given; ``now`` in seconds, never going back.

    ``hand`` is how things are put on it. Everything random comes from ``profile.seed``.
    """

    def __init__(self, profile: Profile, now: float = 0.0, hand: Hand | None = None) -> None:
        self.profile = profile
        self._hand = hand if hand is not None else Hand()
        noise, hands = np.random.SeedSequence(profile.seed).spawn(2)
        self._noise = np.random.default_rng(noise)
        self._hands = np.random.default_rng(hands)
        self._system = _system(profile)
        self._steps: dict[float, _Matrix] = {}
        self._motion = np.zeros(3)  # x, x', y
        self._mass: Force = NO_FORCE
        self._press: Force = NO_FORCE
        self._lean: Force = NO_FORCE
        self._air = 0.0
        self._air_divisions = profile.air
        self._start = self._at = now
        self._refreshes = 0
        self._unseen: list[Sample] = []
        self.sample = self._convert()

    def advance(self, now: float) -> list[Sample]:
        """Let time pass until ``now``; returns the conversions since the last call, oldest first.

        Of a gap of more than a minute (a machine that slept) only the last ten seconds are seen.
        """
        self._convert_until(now)
        seen, self._unseen = self._unseen, []
        if seen:
            self.sample = seen[-1]
        return seen

    def load(self, grams: float, now: float) -> None:
        """A hand brings the load on the pan to ``grams`` in all: puts on, takes off, adds."""
        self._touch(now)
        self._mass, self._press = landing(
            self._hands, self._hand, self._at, self._mass.at(self._at), grams
        )

    def pour_to(self, grams: float, grams_per_second: float, now: float) -> None:
        """The load grows (or shrinks) evenly to ``grams`` at a rate above zero, untouched."""
        self._touch(now)
        before = self._mass.at(self._at)
        seconds = abs(grams - before) / grams_per_second
        if seconds > 0:
            self._mass = Track((self._at, self._at + seconds), (before, grams))

    def lean(self, grams: float, tremor_divisions: float, now: float) -> None:
        """A hand leans on the pan, trembling, until ``let_go``."""
        self._touch(now)
        tremor = tremor_divisions * self.profile.division
        self._lean = Leaning(self._hands, self._at, grams, tremor)

    def let_go(self, now: float) -> None:
        """The leaning hand goes away."""
        self._touch(now)
        self._lean = Track((self._at, self._at + 0.15), (self._lean.at(self._at), 0.0))

    def draught(self, divisions: float) -> None:
        """Moving air over the pan from now on: standard deviation in divisions, 0 for still air."""
        self._air_divisions = divisions

    def _touch(self, now: float) -> None:
        self._convert_until(now)
        self._move_to(max(now, self._at))

    def _convert_until(self, now: float) -> None:
        rate = self.profile.readings_per_second
        if now - self._at > _LONG_GAP:
            self._refreshes = math.floor((now - _SEEN_OF_A_LONG_GAP - self._start) * rate)
        while (due := self._start + (self._refreshes + 1) / rate) <= now:
            self._refreshes += 1
            self._move_to(due)
            self._unseen.append(self._convert())

    def _force(self) -> float:
        return sum(part.at(self._at) for part in (self._mass, self._press, self._lean))

    def _next_knot(self) -> float:
        return min(part.next_knot(self._at) for part in (self._mass, self._press, self._lean))

    def _move_to(self, until: float) -> None:
        while self._at < until:
            start, before = self._at, self._force()
            self._at = min(until, self._next_knot())
            seconds = self._at - start
            slope = (self._force() - before) / seconds
            state = np.array([*self._motion, before, slope])
            self._motion = (self._step(seconds) @ state)[:3]

    def _step(self, seconds: float) -> _Matrix:
        key = round(seconds, 9)  # two refreshes are never exactly the same floats apart
        step = self._steps.get(key)
        if step is None:
            if len(self._steps) > 200:
                self._steps.clear()
            step = self._steps[key] = _exponential(self._system * key)
        return step

    def _convert(self) -> Sample:
        profile, force = self.profile, self._force()
        drift = profile.drift_g_per_minute * (self._at - self._start) / 60
        kept = math.exp(-1 / (profile.readings_per_second * _AIR_SECONDS))
        fresh = math.sqrt(1 - kept**2) * self._air_divisions * profile.division
        self._air = kept * self._air + fresh * self._noise.standard_normal()
        filtered = float(self._motion[2])
        quiet = filtered + drift + self._air
        return Sample(
            at=self._at,
            grams=quiet + profile.noise * profile.division * self._noise.standard_normal(),
            quiet=quiet,
            resting=force + drift,
            off_rest=self._off_rest(force),
            touched=self._next_knot() < math.inf,
        )

    def _off_rest(self, force: float) -> float:
        # Not the distance alone: a ringing pan passes through its place of rest at full speed.
        position, speed, filtered = map(float, self._motion)
        w = 2 * math.pi * self.profile.ring_hz
        ringing = math.hypot(position - force, speed / w)
        return abs(filtered - force) + ringing / math.hypot(1, w * self.profile.filter_seconds)


def _system(profile: Profile) -> _Matrix:
    w = 2 * math.pi * profile.ring_hz
    t = max(profile.filter_seconds, _SHORTEST_FILTER)
    return np.array(
        [
            [0, 1, 0, 0, 0],
            [-w * w, -2 * profile.damping * w, 0, w * w, 0],
            [1 / t, 0, -1 / t, 0, 0],
            [0, 0, 0, 0, 1],
            [0, 0, 0, 0, 0],
        ]
    )


def _exponential(matrix: _Matrix) -> _Matrix:
    """The matrix exponential by a Taylor series of the halved matrix, squared back."""
    norm = float(np.abs(matrix).sum(axis=1).max())
    halvings = max(0, math.ceil(math.log2(norm)) + 1) if norm > 0 else 0
    small = matrix / 2**halvings
    total = term = np.eye(len(matrix))
    for order in range(1, 15):
        term = term @ small / order
        total = total + term
    for _ in range(halvings):
        total = total @ total
    return total
