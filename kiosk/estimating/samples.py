"""Counted samples: their mean, their scatter, and whether one of them looks miscounted."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import sqrt

from kiosk.estimating.scatter import CLASS_CV_PERCENT, PriorScatter, ScatterClass
from kiosk.estimating.uncertainty import SMALLEST_SCATTER, Sampling, averages, pooled

MOST_SAMPLES = 10
A_MISCOUNT = 1  # pieces
FEWEST_PIECES, MOST_PIECES = 10, 500
# 95 % points of the range of k normal values in their standard deviations: the studentized range
# with infinitely many degrees of freedom.
RANGE_FACTOR = {
    2: 2.772, 3: 3.314, 4: 3.633, 5: 3.858, 6: 4.030, 7: 4.170, 8: 4.286, 9: 4.387, 10: 4.474,
}  # fmt: skip
ASSUMED_CV = float(CLASS_CV_PERCENT[ScatterClass.GRAINS] or 0) / 100  # of pieces of one kind


@dataclass(frozen=True, slots=True, kw_only=True)
class Samples:
    """One or more counted samples of ``pieces`` each, weighed in one tray.

    ``masses`` are net grams above zero, ``readability`` the balance's step in grams. ``in_fill``:
    the counted pieces are part of the fill that is weighed later. ``drift``: the relative 95 %
    half width of what the pieces may have changed by since (see old_samples). ``chains``: samples
    that were added to those on the tray share readings with them; so many chains are left, None:
    each sample by itself.
    """

    pieces: int
    masses: tuple[Decimal, ...]
    readability: Decimal
    prior: PriorScatter | None = None
    in_fill: bool = False
    drift: float = 0.0
    chains: int | None = None

    @property
    def chained(self) -> bool:
        """Whether a sample was added to another one."""
        return self.chains is not None and self.chains < len(self.masses)

    @property
    def mean(self) -> Fraction:
        """The mean mass of a sample in grams, exactly."""
        return sum(map(Fraction, self.masses), Fraction(0)) / len(self.masses)

    @property
    def piece_mass(self) -> Fraction:
        """The mean mass of a piece in grams, exactly."""
        return self.mean / self.pieces

    @property
    def deviation(self) -> float:
        """One standard deviation of the samples in grams; 0 for a single one."""
        mean, others = self.mean, len(self.masses) - 1
        squares = sum(((Fraction(mass) - mean) ** 2 for mass in self.masses), Fraction(0))
        return sqrt(squares / others) if others else 0.0

    def sampling(self) -> Sampling | None:
        """What the samples are worth; None for a single one with nothing known beforehand.

        Samples of pieces that are known to differ little scatter over a step by chance only, so
        with such knowledge one's own scatter is no proof that the rounding averages out. Of
        chained samples the readings between cancel anyway; nothing more is granted to them.

        A miscounted sample lies apart from the others. Without such knowledge their own scatter
        grows by it; with it the range test tells, and then a miscount is allowed for.
        """
        number, step = len(self.masses), float(self.readability)
        if number == 1 and self.prior is None:
            return None
        measured, dof, mean = self.deviation, number - 1, float(self.mean)
        smallest = SMALLEST_SCATTER * step if number == 2 or self.chained else 0.0
        deviation = max(measured, smallest)
        if self.prior:
            expected = self.prior.relative / sqrt(self.pieces) * mean
            deviation = pooled(deviation, dof, expected, self.prior.dof)
            dof += self.prior.dof
        return Sampling(
            pieces=self.pieces,
            number=number,
            mean=mean,
            deviation=deviation,
            dof=dof,
            readability=step,
            averaging=not self.chained and averages(number, min(measured, deviation), step),
            in_fill=self.in_fill,
            drift=self.drift,
            chains=self.chains,
            miscount=A_MISCOUNT if self.prior and self.differ_too_much else 0,
        )

    @property
    def differ_too_much(self) -> bool:
        """Whether the masses lie farther apart than in 19 of 20 cases: the range test.

        Against the scatter known beforehand, or else what pieces of one kind have at most. A
        reading between two chained samples is too large for one and as much too small for the
        other: their difference has the variance of six readings, not of four or fewer.
        """
        if len(self.masses) not in RANGE_FACTOR:
            return False
        cv = self.prior.relative if self.prior else ASSUMED_CV
        of_pieces = cv / sqrt(self.pieces) * float(self.mean)
        rounding = float(self.readability) ** 2 / (4 if self.chained else 6)
        expected = sqrt(of_pieces**2 + rounding)
        spread = float(max(self.masses) - min(self.masses))
        return spread > RANGE_FACTOR[len(self.masses)] * expected

    @property
    def farthest(self) -> int | None:
        """The place (from 0) of the sample farthest from the others; None if nobody can tell."""
        if len(self.masses) < 3:
            return None
        ordered = sorted(self.masses)
        middle = (ordered[(len(ordered) - 1) // 2] + ordered[len(ordered) // 2]) / 2
        away = [abs(mass - middle) for mass in self.masses]
        return None if away.count(max(away)) > 1 else away.index(max(away))
