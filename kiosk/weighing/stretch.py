"""Stretch: running sums over the newest readings, grown backwards one reading at a time."""

from __future__ import annotations

import math

from kiosk.weighing.trace import Sample


class Stretch:
    """The newest readings up to ``newest``; divisions and seconds."""

    def __init__(self, newest: Sample) -> None:
        self.newest = newest
        self.size = 0
        self.seconds = 0.0
        self._low = self._high = self._last = 0.0
        self._t = self._y = self._tt = self._ty = self._yy = self._jumps = 0.0

    def add(self, sample: Sample) -> None:
        """Grow by the reading before the oldest one so far; the newest comes first."""
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
        """Largest less smallest."""
        return self._high - self._low

    @property
    def mean(self) -> float:
        """Mean reading."""
        return self.newest.y + self._y / self.size

    @property
    def middle(self) -> float:
        """Mean moment."""
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
