"""Decides from readings alone when a load rests, once for each load.

Fed with readings that carry a mass, each with its own time. The balance's "stable" is evidence:
where it has proved honest it shortens the wait a little; it never captures by itself and never
blocks. Averages serve the judgement only; what is reported is a reading that the balance showed.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from drivers.reading import Reading
from kiosk.weighing.flag_trust import FlagTrust
from kiosk.weighing.noise import Noise
from kiosk.weighing.resting_window import Demands, Window, resting_window
from kiosk.weighing.trace import Sample, Trace

DOUBT_SECONDS = 6.0  # restless that long, the known noise may have changed
FREE_SWINGS = 2  # of a hand that puts something down
MOST_SWINGS = 6
GAP_SECONDS = 1.0
GAP_INTERVALS = 3.0
PROGRESS_SECONDS = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """A load at rest: the reading for the record; mean, scatter and size of the window.

    ``mean`` in grams, ``scatter`` in divisions.
    """

    reading: Reading
    mean: float
    scatter: float
    size: int


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
        self._off: list[Sample] = []  # the newest readings beyond the limit of the rest
        self._recent: list[float] = []

    def feed(self, reading: Reading) -> Rest | None:
        """Take one reading in; returns the rest that begins with it, if one does."""
        assert reading.grams is not None
        if reading.at <= self._from:
            return None
        sample = Sample(reading.at, float(reading.grams) / self._step, reading.stable, reading)
        self._trace.append(sample, self._noise.level or 0.0)
        if self.rest is not None:
            self._watch(self.rest, sample)
            return None
        if self._restless_since is None:
            self._restless_since = reading.at
        window = resting_window(list(self._trace.samples), self._demands(sample))
        return None if window is None else self._begin_rest(window)

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
        """Standard deviation of one reading in divisions, as far as known."""
        return self._noise.level or 0.0

    def progress(self, now: float) -> float:
        """Share of the last second in which the reading stayed within one step, 1 at rest."""
        if self.rest is not None:
            return 1.0
        low = high = None
        since = now
        wide = 1.0 + 4 * self.noise + 1e-6
        for sample in reversed(self._trace.samples):
            low = sample.y if low is None else min(low, sample.y)
            high = sample.y if high is None else max(high, sample.y)
            if high - low > wide:
                break
            since = sample.at
        return max(0.0, min(1.0, (now - since) / PROGRESS_SECONDS))

    def _demands(self, sample: Sample) -> Demands:
        return Demands(
            noise=self._noise.level,
            doubt=max(1.0, self.restless_for(sample.at) / DOUBT_SECONDS),
            swings=self._trace.undamped_swings(sample.at),
            repeat_interval=self._trace.repeat_interval,
            longest_gap=max(GAP_SECONDS, GAP_INTERVALS * self._trace.interval),
            hurry=sample.stable is True and self._trust.trusted,
        )

    def _begin_rest(self, window: Window) -> Rest:
        self._trust.learn(self._trace.samples, window.mean, window.scatter)
        self._restless_since = None
        self._off.clear()
        self._recent.clear()
        self.rest = Rest(
            reading=window.shown.reading,
            mean=window.mean * self._step,
            scatter=window.scatter,
            size=window.size,
        )
        return self.rest

    def _leave_rest(self, at: float) -> None:
        self.rest = None
        self._restless_since = at
        self._noise.interrupt()
        self._off.clear()
        self._recent.clear()

    def _watch(self, rest: Rest, sample: Sample) -> None:
        """Has the rested load moved? At once by a jump, or little by little."""
        reference = float(rest.reading.grams or 0) / self._step
        noise = max(self.noise, rest.scatter * (1 + 2 / rest.size**0.5))
        limit = 2.0 + 4.5 * noise
        away = sample.y - reference
        if abs(away) > limit:
            self._off.append(sample)
            if len(self._off) > 1 or abs(away) > 3 * limit:
                self._leave_rest(self._off[0].at)
            return
        self._off.clear()
        self._recent = [*self._recent[-7:], away]
        if len(self._recent) == 8 and abs(sum(self._recent) / 8) > 1.5 + 2 * noise:
            self._leave_rest(sample.at)
            return
        if abs(reference) > 3:
            self._noise.rests_at(sample.y)
