"""What this balance is known to scatter by, learned while loads rest."""

from __future__ import annotations

from statistics import stdev

BLOCK = 8
_NEW = 0.25  # weight of the newest block


class Noise:
    """Standard deviation of one reading in divisions: ``level``, None until a load has rested.

    Learned in blocks of eight readings, so that slow drift counts little. An empty pan teaches
    nothing: many balances hold their zero by force.
    """

    def __init__(self) -> None:
        self.level: float | None = None
        self._block: list[float] = []

    def rests_at(self, y: float) -> None:
        """One more reading of a resting load, in divisions."""
        self._block.append(y)
        if len(self._block) < BLOCK:
            return
        new = stdev(self._block)
        old = new if self.level is None else self.level
        self.level = ((1 - _NEW) * old**2 + _NEW * new**2) ** 0.5
        self._block.clear()

    def interrupt(self) -> None:
        """The load rests no more."""
        self._block.clear()

    def rescale(self, factor: float) -> None:
        """The division has become ``factor`` times smaller."""
        self._block.clear()
        if self.level is not None:
            self.level *= factor
