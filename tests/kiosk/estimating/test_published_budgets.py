"""Our rule, each part by its own t factor and then as squares, against published budgets.

GUM H.1 and G.4.1 add the parts first and take one t factor by the effective degrees of freedom
(Welch-Satterthwaite). Ours is never narrower, and hardly wider unless a part with very few degrees
of freedom is the largest.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from math import floor, hypot

import GTC
import pytest

from kiosk.estimating.samples import Samples
from kiosk.estimating.uncertainty import budget, t_factor


@dataclass(frozen=True)
class Published:
    """Standard uncertainties with their degrees of freedom, and what they come to."""

    parts: tuple[tuple[float, int], ...]
    combined: float
    dof: float


# GUM (JCGM 100:2008) H.1, end gauge, in nm, as quoted by the GTC documentation and by public test
# suites: u 32 nm, degrees of freedom 16 (31.664 and 16.75 in the test suite of GTC). The
# comparator's 9.7 nm are 5.8 (24), 3.9 (5) and 6.7 (8).
END_GAUGE = Published(
    ((25, 18), (5.8, 24), (3.9, 5), (6.7, 8), (2.9, 50), (16.6, 2)), combined=31.664, dof=16.75
)
# GUM G.4.1, product of three factors, in per cent (inputs and result from memory, not verified:
# 1.03 %, 19.0 degrees of freedom, half width 2.2 %)
THREE_FACTORS = Published(((0.25, 9), (0.57, 4), (0.82, 14)), combined=1.03, dof=19.0)

BUDGETS = [END_GAUGE, THREE_FACTORS]


def ours(published: Published) -> float:
    return hypot(*(t_factor(dof) * part for part, dof in published.parts))


@pytest.mark.parametrize("published", BUDGETS)
def test_the_budget_is_the_published_one(published: Published) -> None:
    total = sum(GTC.ureal(0, part, dof) for part, dof in published.parts)
    assert GTC.uncertainty(total) == pytest.approx(published.combined, abs=0.01)
    assert GTC.dof(total) == pytest.approx(published.dof, abs=0.1)


@pytest.mark.parametrize(("published", "widest"), [(END_GAUGE, 1.4), (THREE_FACTORS, 1.15)])
def test_our_half_width_is_never_narrower(published: Published, widest: float) -> None:
    theirs = t_factor(floor(published.dof)) * published.combined
    assert theirs <= ours(published) <= widest * theirs


def test_three_factors_are_good_to_two_per_cent() -> None:
    half_width = t_factor(19) * THREE_FACTORS.combined
    assert round(half_width, 1) == 2.2


def test_the_seeds_of_the_aosa_tutorial() -> None:
    # AOSA Rules, Appendix 4, as explained in a public tutorial: the masses of eight hundreds of
    # seeds. Their mean is good to t(7) x 2.014 % / sqrt(8) = 1.68 %, and single seeds differ by
    # ten times as much as hundreds do.
    shown = "0.2224 0.2134 0.2130 0.2116 0.2145 0.2071 0.2116 0.2125"
    eight = Samples(
        pieces=100, masses=tuple(map(Decimal, shown.split())), readability=Decimal("0.0001")
    )
    sampling = eight.sampling()
    assert sampling is not None
    assert 100 * budget(sampling, None).pieces == pytest.approx(1.684, abs=1e-3)
    assert 10 * sampling.deviation / sampling.mean == pytest.approx(0.2014, abs=1e-4)
