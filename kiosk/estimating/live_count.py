"""How many pieces lie in a container while it is being filled, always with the interval."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from kiosk.estimating.count_key import interval
from kiosk.estimating.exact import half_up
from kiosk.estimating.samples import Samples
from kiosk.estimating.uncertainty import budget


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveCount:
    """A count for the moment; ``low`` and ``high`` bound 95 %, rounded outward."""

    count: int
    low: int
    high: int
    half_width_percent: Decimal


def live_count(samples: Samples, net: Decimal, lots: int = 1) -> LiveCount | None:
    """The count of ``net`` grams, weighed in so many lots, however wide its interval.

    None while there is less than half a piece or a single step of the balance inside, or when one
    sample alone cannot tell an interval.
    """
    sampling = samples.sampling()
    if sampling is None or net < samples.readability:
        return None
    exactly = Fraction(net) / samples.piece_mass
    count = int(half_up(exactly, 0))
    if count < 1:
        return None
    half_width = budget(sampling, float(net), lots).half_width
    low, high = interval(exactly, half_width)
    return LiveCount(
        count=count,
        low=low,
        high=high,
        half_width_percent=half_up(Fraction(100 * half_width), 3),
    )
