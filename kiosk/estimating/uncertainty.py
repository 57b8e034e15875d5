"""How far a count by weight may be off: the parts of its 95 % interval, and their sum.

A count is N = n x M / m: n pieces in each of k samples, m the mean of the samples' masses, M the
net mass of the fill. Two kinds of error make it uncertain. Pieces differ: their scatter is
estimated from the samples with few degrees of freedom, so its part is t(dof) x u. Readings are
rounded to the balance's step d: that part needs no estimate. Each part is expanded to 95 % by
itself and then they add as squares; adding first and taking one t factor by the effective degrees
of freedom (GUM G.4.1) covers less than 95 % when a part with two degrees of freedom is not the
largest.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from math import atan, cos, hypot, pi, sin, sqrt

COVERAGE = 0.95
NORMAL_FACTOR = 1.959964  # the t factor of infinitely many degrees of freedom
AVERAGING_SCATTER = 0.4  # in steps d; below, samples repeat one and the same rounding error
AVERAGING_SAMPLES = 3
SMALLEST_SCATTER = 0.2  # in steps d; two readings that happen to agree prove less than that


class Part(StrEnum):
    """Where the uncertainty of a count comes from."""

    PIECES = "pieces differ"
    SAMPLE_ROUNDING = "rounding of the samples"
    FILL_ROUNDING = "rounding of the fill"
    OLD_SAMPLES = "samples of another day"
    MISCOUNT = "a sample may be miscounted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sampling:
    """What counted samples are worth, whether they were weighed or are only planned.

    ``number`` samples of ``pieces`` each weigh ``mean`` grams and scatter by ``deviation`` grams
    (one standard deviation of one sample), which is known with ``dof`` degrees of freedom; the
    balance steps by ``readability`` grams. ``averaging``: the rounding differs from sample to
    sample. ``in_fill``: the counted pieces are part of the weighed fill. ``drift``: the relative
    95 % half width of what the pieces may have changed by since they were weighed. ``chains``: in
    how many unbroken chains of readings the samples were weighed; None: each by itself.
    ``miscount``: each sample may have so many pieces more or fewer than were counted.
    """

    pieces: int
    number: int
    mean: float
    deviation: float
    dof: int
    readability: float
    averaging: bool
    in_fill: bool
    drift: float = 0.0
    chains: int | None = None
    miscount: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Budget:
    """The parts of the relative uncertainty of a count, each as a 95 % half width."""

    pieces: float
    sample_rounding: float
    fill_rounding: float
    drift: float = 0.0
    miscount: float = 0.0

    @property
    def half_width(self) -> float:
        """Half of the 95 % interval, relative to the count."""
        return hypot(
            self.pieces, self.sample_rounding, self.fill_rounding, self.drift, self.miscount
        )

    @property
    def dominant(self) -> Part:
        """The largest part."""
        sizes = {
            Part.PIECES: self.pieces,
            Part.SAMPLE_ROUNDING: self.sample_rounding,
            Part.FILL_ROUNDING: self.fill_rounding,
            Part.OLD_SAMPLES: self.drift,
            Part.MISCOUNT: self.miscount,
        }
        return max(sizes, key=sizes.__getitem__)


def budget(sampling: Sampling, net: float | None, lots: int = 1) -> Budget:
    """The parts for a fill of ``net`` grams in so many lots; with None what the samples bring.

    All samples are weighed in one tray, whose own rounding is in each of them and never averages
    out. Where the samples' rounding repeats, a mass that is the difference of two readings can be
    off by a whole step, and for a given load it does so again and again: the part is then that
    limit and not 1.96 standard deviations (0.8 steps). For the fill see ``steps_off``.

    Of k samples that were added to one another in J chains only the first and the last reading of
    each chain count, since the readings between cancel: the mean has the rounding of J + J^2
    readings over k, and at most J/k of a step.

    A miscount of up to a pieces in each of k samples is a rectangular error of a/(sqrt(3 k) n).
    """
    step, number = sampling.readability, sampling.number
    chains = number if sampling.chains is None else sampling.chains
    averaged = NORMAL_FACTOR * sqrt((chains + chains**2) / 12) / number
    steps = averaged if sampling.averaging else chains / number
    relative = sampling.deviation / sampling.mean * sqrt(_share(sampling, net))
    return Budget(
        pieces=t_factor(sampling.dof) * relative,
        sample_rounding=steps * step / sampling.mean,
        fill_rounding=0.0 if net is None else steps_off(lots) * step / net,
        drift=sampling.drift,
        miscount=NORMAL_FACTOR * sampling.miscount / (sqrt(3 * number) * sampling.pieces),
    )


def steps_off(lots: int) -> float:
    """By how many steps of the balance a fill that was weighed in so many lots may be off.

    Each lot is the difference of two readings. The full ones are rounded independently, but the
    same container is emptied for each lot, so the rounding of the empty one repeats: the variance
    is that of L + L^2 rounded readings. One lot, L = 1, can be off by a whole step.
    """
    return sqrt((lots + lots**2) / 2)


def _share(sampling: Sampling, net: float | None) -> float:
    """The variance that pieces add to the count, in variances of one sample.

    1/k for the mean of the samples. The N pieces of the fill scatter too: n/N more, or n/N less
    if the counted pieces are among them, put aside until all samples were counted. Not more than
    half is taken off: a piece that was counted twice would spoil it. More counted than are in the
    fill: pieces were certainly counted twice, and nothing is taken off.
    """
    own = 1 / sampling.number
    if net is None:
        return own
    ratio = sampling.mean / net  # n/N
    if not sampling.in_fill:
        return own + ratio
    return own if ratio > own else max(own - ratio, own / 2)


def averages(number: int, deviation: float, readability: float) -> bool:
    """Whether the rounding of ``number`` readings averages out: they must scatter over steps."""
    return number >= AVERAGING_SAMPLES and deviation >= AVERAGING_SCATTER * readability


def pooled(deviation: float, dof: int, prior: float, prior_dof: int) -> float:
    """One standard deviation out of one measured and one known beforehand."""
    return sqrt((dof * deviation**2 + prior_dof * prior**2) / (dof + prior_dof))


@cache
def t_factor(dof: int) -> float:
    """The two-sided 95 % factor of Student's t for a whole number of degrees of freedom.

    Found by halving on the closed form of the distribution (Abramowitz and Stegun 26.7.3 and
    26.7.4). ValueError below one degree of freedom.
    """
    if dof < 1:
        raise ValueError("a scatter needs at least one degree of freedom")
    low, high = 0.0, 1000.0
    while (middle := (low + high) / 2) not in (low, high):
        low, high = (middle, high) if _within(middle, dof) < COVERAGE else (low, middle)
    return middle


def _within(t: float, dof: int) -> float:
    """The probability that Student's t lies between -t and t."""
    angle = atan(t / sqrt(dof))
    odd = dof % 2
    term = cos(angle) if odd else 1.0
    total = 0.0
    for i in range(dof // 2):
        total += term
        numerator, denominator = (2 * i + 2, 2 * i + 3) if odd else (2 * i + 1, 2 * i + 2)
        term *= cos(angle) ** 2 * numerator / denominator
    return 2 / pi * (angle + sin(angle) * total) if odd else sin(angle) * total
