"""Tens: pieces put on the tray ten by ten, so that a nine or an eleven shows while it is on top.

A ten is compared with the middle one of those before it. It is off by a piece as far as the
scatter of ten pieces and the rounding of two readings let one tell, which is why only pieces that
are many steps of the balance and differ little are counted so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import hypot, pi, sqrt
from statistics import median

TEN = 10
LEAST_STEPS = 5  # that a piece weighs
SURE = 2.0  # standard deviations off: then it is said, since looking again costs little
MOST_OFF = 0.9  # pieces; where a ten may be as much off by chance, a nine would go unseen
LEAST_OFF = 0.6  # pieces; nearer to a ten than to a nine is a ten


@dataclass(frozen=True, slots=True, kw_only=True)
class Tens:
    """What is known of tens.

    ``masses`` in grams are those of other tens, or what ten pieces weigh in a sample; ``cv`` is
    the relative scatter of pieces, ``readability`` the balance's step in grams.

    ValueError without a mass.
    """

    masses: Sequence[Decimal]
    cv: float
    readability: Decimal

    def __post_init__(self) -> None:
        if not self.masses:
            raise ValueError("a ten is compared with others")

    @property
    def usual(self) -> Decimal:
        """The middle one in grams."""
        return median(self.masses)

    @property
    def _limit(self) -> float:
        """By how many pieces a true ten may be off."""
        piece = float(self.usual) / TEN
        # The middle one of m is known to pi/2m of the variance of one.
        of_pieces = sqrt(TEN * (1 + pi / 2 / len(self.masses))) * self.cv
        of_rounding = float(self.readability) / 2 / piece  # one reading between two tens: d^2/4
        return max(LEAST_OFF, SURE * hypot(of_pieces, of_rounding))

    @property
    def tell(self) -> bool:
        """Whether a ten that is a piece off can be told at all, once a few were seen."""
        seen = Tens(masses=[self.usual] * TEN, cv=self.cv, readability=self.readability)
        return self.usual >= TEN * LEAST_STEPS * self.readability and seen._limit <= MOST_OFF

    def off(self, mass: Decimal) -> int:
        """By how many pieces about a ten is too heavy or, below 0, too light; 0 if it is none."""
        pieces = float((mass - self.usual) / self.usual) * TEN
        if abs(pieces) < self._limit:
            return 0
        return round(pieces) or (1 if pieces > 0 else -1)
