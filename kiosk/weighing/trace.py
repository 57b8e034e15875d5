"""The recent past of a pan: readings in divisions, and the pace at which they come."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from statistics import median

from drivers.reading import Reading

MEMORY_SECONDS = 14.0
MEMORY_READINGS = 300
ZIGZAG_READINGS = 17
LEAST_BENDS = 5
MOVING_DIVISIONS = 4.0
REPEATS = 1.5  # changes that many reading intervals apart: the balance is asked too often


@dataclass(slots=True)
class Sample:
    """A reading with a mass: ``y`` in divisions (reading over readability)."""

    at: float
    y: float
    stable: bool | None
    reading: Reading


class Trace:
    """The readings of the last seconds, oldest first in ``samples``."""

    def __init__(self) -> None:
        self.samples: deque[Sample] = deque(maxlen=MEMORY_READINGS)
        self._intervals: deque[float] = deque(maxlen=9)
        self._changes: deque[float] = deque(maxlen=9)
        self._changed_at: float | None = None

    def append(self, sample: Sample) -> None:
        """Take in the newest reading."""
        if self.samples:
            self._learn_pace(self.samples[-1], sample)
        self.samples.append(sample)
        while sample.at - self.samples[0].at > MEMORY_SECONDS:
            self.samples.popleft()

    def clear(self) -> None:
        """Forget the readings; the pace of this balance stays known."""
        self.samples.clear()
        self._changed_at = None

    def rescale(self, factor: float) -> None:
        """The division has become ``factor`` times smaller."""
        for sample in self.samples:
            sample.y *= factor

    @property
    def interval(self) -> float:
        """Seconds between readings, as a rule; 0 while unknown."""
        return median(self._intervals) if self._intervals else 0.0

    @property
    def presumed_noise(self) -> float:
        """Standard deviation of one reading, presumed from how the newest ones zigzag.

        The second difference of neighbours is blind for an even climb and nearly so for a creep;
        its median is blind for a jump. White noise makes it 0.6745 * sqrt(6) standard deviations.
        """
        ys = [sample.y for sample in self.samples][-ZIGZAG_READINGS:]
        bends = [abs(a - 2 * b + c) for a, b, c in zip(ys, ys[1:], ys[2:], strict=False)]
        return median(bends) / 1.65 if len(bends) >= LEAST_BENDS else 0.0

    @property
    def repeat_interval(self) -> float:
        """Seconds between *new* readings where a balance is asked more often than it weighs.

        0 where every reading is a new one. Seen while the load moves: there a reading that equals
        the one before it is the same one.
        """
        if len(self._changes) < 4:
            return 0.0
        between = median(self._changes)
        return between if between > REPEATS * self.interval else 0.0

    def _learn_pace(self, last: Sample, new: Sample) -> None:
        self._intervals.append(new.at - last.at)
        change = abs(new.y - last.y)
        if change >= MOVING_DIVISIONS:
            if self._changed_at is not None:
                self._changes.append(new.at - self._changed_at)
            self._changed_at = new.at
        elif change > 0 or self._stood_still(new.at):
            self._changed_at = None

    def _stood_still(self, now: float) -> bool:
        return self._changed_at is not None and now - self._changed_at > 4 * self.interval
