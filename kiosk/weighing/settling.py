"""Decides from readings alone when a load rests, once for each load.

Fed with readings that carry a mass, each with its own time. The balance's "stable" is evidence:
where it has proved honest it shortens the wait a little; it never captures by itself and never
blocks. Averages serve the judgement only; what is reported is a reading that the balance showed.
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum, auto
from itertools import pairwise
from math import inf

from drivers.reading import Reading
from kiosk.weighing.flag_trust import FlagTrust
from kiosk.weighing.noise import Noise
from kiosk.weighing.resting_window import Demands, Window, resting_window
from kiosk.weighing.trace import Sample, Trace

MOST_PRESUMED = 1.5
DOUBT_SECONDS = 6.0  # restless that long, the known noise may have grown
GAP_SECONDS = 1.0
GAP_INTERVALS = 3.0
PROGRESS_SECONDS = 1.0
JUMP_DIVISIONS = 2.0
JUMP_NOISES = 4.5
JUMP_SECONDS = 0.075  # a ringing pan is back by then
DRIFT_DIVISIONS = 1.5
DRIFT_NOISES = 2.0
DRIFT_READINGS = 8
CREEP_SECONDS = 5.0
CREEP_PARTS = 4
CREEP_READINGS = 2  # in each part
CREEP_DIVISIONS = 0.75  # from one part to the next
ZERO_DIVISIONS = 3.0  # many balances hold their zero by force


class Move(Enum):
    """How a pan left its rest."""

    UP = auto()  # by a jump, and stayed up: something was added
    OTHERWISE = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """A pan at rest: the reading for the record, ``scatter`` in divisions, size of the window."""

    reading: Reading
    scatter: float
    size: int

    @property
    def grams(self) -> Decimal:
        """The mass for the record."""
        assert self.reading.grams is not None
        return self.reading.grams


class Settling:
    """The judgement of one pan. ``rest`` is the present rest, None while the load moves."""

    def __init__(self, step: Decimal) -> None:
        self.rest: Rest | None = None
        self._step = float(step)
        self._trace = Trace()
        self._noise = Noise()
        self._trust = FlagTrust()
        self._restless_since: float | None = None
        self._from = float("-inf")
        self._last_scatter = 0.0
        self._off: list[Sample] = []  # the newest readings beyond the limit of the rest
        self._recent: deque[float] = deque(maxlen=DRIFT_READINGS)

    def feed(self, reading: Reading) -> tuple[Rest | None, Move | None]:
        """Take one reading with a mass in.

        Returns the rest that begins with it, if one does, and how a rest ended, if one did.
        """
        assert reading.grams is not None
        if reading.at <= self._from:
            return None, None
        sample = Sample(reading.at, float(reading.grams) / self._step, reading.stable, reading)
        self._trace.append(sample)
        if self.rest is not None:
            return None, self._watch(self.rest, sample)
        if self._restless_since is None:
            self._restless_since = reading.at
        window = resting_window(list(self._trace.samples), self._demands(sample))
        return None if window is None else self._begin_rest(window), None

    def set_step(self, step: Decimal) -> None:
        """The readability is known better now, in grams."""
        factor = self._step / float(step)
        if factor == 1.0:
            return
        self._trace.rescale(factor)
        self._noise.rescale(factor)
        self._step = float(step)
        self._off.clear()
        self._recent.clear()

    def start_again(self, at: float) -> None:
        """Judge the present load anew, from readings after ``at`` only."""
        self._trace.clear()
        self._leave_rest(at)
        self._from = at

    def restless_for(self, now: float) -> float:
        """Seconds for which the pan has not rested."""
        return 0.0 if self._restless_since is None else max(0.0, now - self._restless_since)

    @property
    def noise(self) -> float:
        """Standard deviation of one reading in divisions, rather too large than too small."""
        return max(self._noise.level or 0.0, self._last_scatter)

    def progress(self, now: float) -> float:
        """Share of the last second in which the reading stayed within one step, 1 at rest."""
        if self.rest is not None:
            return 1.0
        wide = 1.0 + 4 * (self._noise.level or 0.0) + 1e-6
        low, high, since = inf, -inf, now
        for sample in reversed(self._trace.samples):
            low, high = min(low, sample.y), max(high, sample.y)
            if high - low > wide:
                break
            since = sample.at
        return max(0.0, min(1.0, (now - since) / PROGRESS_SECONDS))

    def creeping(self, now: float) -> bool:
        """Whether the reading has gone one way for seconds, with no sign of an end."""
        samples = [sample for sample in self._trace.samples if sample.at >= now - CREEP_SECONDS]
        size = len(samples) // CREEP_PARTS
        if self.rest is not None or size < CREEP_READINGS:
            return False
        if samples[-1].at - samples[0].at < 0.8 * CREEP_SECONDS:
            return False
        means = [
            sum(sample.y for sample in samples[part * size : (part + 1) * size]) / size
            for part in range(CREEP_PARTS)
        ]
        climbs = [after - before for before, after in pairwise(means)]
        return min(climbs) >= CREEP_DIVISIONS or max(climbs) <= -CREEP_DIVISIONS

    def _demands(self, sample: Sample) -> Demands:
        return Demands(
            noise=self._noise.level,
            presumed=min(MOST_PRESUMED, self._trace.presumed_noise),
            doubt=max(1.0, self.restless_for(sample.at) / DOUBT_SECONDS),
            restless_since=self._restless_since or 0.0,
            repeat_interval=self._trace.repeat_interval,
            longest_gap=max(GAP_SECONDS, GAP_INTERVALS * self._trace.interval),
            more_readings=self._trust.more_readings(sample.stable),
        )

    def _begin_rest(self, window: Window) -> Rest:
        self._trust.learn(self._trace.samples, window.mean, window.scatter)
        self._restless_since = None
        self._last_scatter = window.scatter * (1 + 2 / window.size**0.5)  # few readings tell little
        self.rest = Rest(reading=window.shown.reading, scatter=window.scatter, size=window.size)
        return self.rest

    def _leave_rest(self, at: float) -> None:
        self.rest = None
        self._restless_since = at
        self._noise.interrupt()
        self._off.clear()
        self._recent.clear()

    def _watch(self, rest: Rest, sample: Sample) -> Move | None:
        """Whether the rested pan has moved: at once, or little by little."""
        reference = float(rest.grams) / self._step
        away = sample.y - reference
        if abs(away) > JUMP_DIVISIONS + JUMP_NOISES * self.noise:
            return self._jumped(sample, reference)
        self._off.clear()
        self._recent.append(away)
        mean = sum(self._recent) / len(self._recent)
        full = len(self._recent) == DRIFT_READINGS
        if full and abs(mean) > DRIFT_DIVISIONS + DRIFT_NOISES * self.noise:
            self._leave_rest(sample.at)
            return Move.OTHERWISE
        if abs(reference) > ZERO_DIVISIONS:
            self._noise.rests_at(sample.y)
        return None

    def _jumped(self, sample: Sample, reference: float) -> Move | None:
        self._off.append(sample)
        first = self._off[0]
        if len(self._off) < 2 or sample.at - first.at < JUMP_SECONDS:
            return None
        up = all(sample.y > reference for sample in self._off)
        self._leave_rest(first.at)
        return Move.UP if up else Move.OTHERWISE
