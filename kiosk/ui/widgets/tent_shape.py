"""Where things lie on the tent: the drawing of the scoring rule, without any widget.

The base runs from 0 to double the true value; the height is the score. Estimates and bands are
given as shares of the true value.
"""

from __future__ import annotations

from dataclasses import dataclass

from kiosk.ui.widgets.geometry import Point

DOUBLE = 2.0


@dataclass(frozen=True, slots=True)
class TentShape:
    """A tent whose left peg stands at ``left``, ``base``; units, downwards."""

    left: float
    base: float
    wide: float
    high: float

    def x(self, share: float) -> float:
        """Where ``share`` of the true value stands on the base; beyond double on the right peg."""
        return self.left + self.wide * min(max(share, 0.0), DOUBLE) / DOUBLE

    def points(self, share: float) -> float:
        """The height of the slope there, in points of 100."""
        return 100 * max(0.0, 1 - abs(share - 1))

    def y(self, share: float) -> float:
        """The height of the slope there, in units."""
        return self.base - self.high * self.points(share) / 100

    def at(self, share: float) -> Point:
        """The place on the slope."""
        return self.x(share), self.y(share)

    def seam(self, points: float, rising: bool) -> tuple[Point, Point]:
        """The level line at ``points`` from the slope to the ridge pole."""
        share = points / 100 if rising else DOUBLE - points / 100
        return self.at(share), (self.x(1), self.y(share))
