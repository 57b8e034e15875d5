"""The volume of a container from its outside sizes, with a 95 % interval.

Every size is a rounded reading of a ruler, and it may differ from place to place: walls bulge,
flaps stand off. Both are limits within which the size lies anywhere (rectangular, u = a / sqrt(3):
GUM 4.3.7, from memory, not verified), so no degrees of freedom are lost, and a volume follows the
sizes in the first order (GUM 5.1.2, from memory, not verified).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil, floor, hypot, log10, pi, sqrt

from kiosk.estimating.exact import exact, half_up
from kiosk.estimating.uncertainty import NORMAL_FACTOR

RULER = Decimal("0.1")  # centimetres
INTERVAL_DIGITS = 3  # of half the interval, so that rounding outward adds at most a hundredth
MORE_DECIMALS = 3  # of the volume than of its interval


@dataclass(frozen=True, slots=True)
class Readings:
    """One quantity read once, or at several places or times; the readings are above zero.

    ValueError for none, or for one that is not above zero.
    """

    shown: tuple[Decimal, ...]

    def __post_init__(self) -> None:
        if not self.shown or min(map(exact, self.shown)) <= 0:
            raise ValueError("a reading is above zero, and there is at least one")

    @property
    def mean(self) -> float:
        """The mean of the readings."""
        return float(sum(map(Fraction, self.shown), Fraction(0)) / len(self.shown))

    @property
    def spread(self) -> float:
        """The standard uncertainty that comes from places that differ.

        The true mean lies between the smallest reading and the largest, or as much as half their
        distance beyond: not every place was looked at. Common practice, no source.
        """
        return float(Fraction(max(self.shown)) - Fraction(min(self.shown))) / sqrt(3)


@dataclass(frozen=True, slots=True, kw_only=True)
class Volume:
    """A volume and the bounds of its 95 % interval, rounded outward; cubic centimetres."""

    cm3: Decimal
    low: Decimal
    high: Decimal

    @property
    def rounded(self) -> Decimal:
        """The volume with the decimals of its bounds: more say nothing to a person."""
        return half_up(Fraction(self.cm3), -int(self.high.as_tuple().exponent))


def box(length: Readings, width: Readings, height: Readings, ruler: Decimal = RULER) -> Volume:
    """A box; sizes and the ruler's step in centimetres, as everywhere below."""
    a, b, c = length.mean, width.mean, height.mean
    return _measured(a * b * c, ((length, b * c), (width, a * c), (height, a * b)), ruler)


def cylinder(diameter: Readings, height: Readings, ruler: Decimal = RULER) -> Volume:
    """A cylinder."""
    d, h = diameter.mean, height.mean
    base = pi / 4 * d**2
    return _measured(base * h, ((diameter, pi / 2 * d * h), (height, base)), ruler)


def tapered(top: Readings, bottom: Readings, height: Readings, ruler: Decimal = RULER) -> Volume:
    """A frustum of a cone between two diameters, ``height`` straight up and not along the wall."""
    a, b, h = top.mean, bottom.mean, height.mean
    base = pi / 12 * (a**2 + a * b + b**2)
    slopes = (
        (top, pi / 12 * (2 * a + b) * h),
        (bottom, pi / 12 * (a + 2 * b) * h),
        (height, base),
    )
    return _measured(base * h, slopes, ruler)


def tapered_box(
    top: tuple[Readings, Readings],
    bottom: tuple[Readings, Readings],
    height: Readings,
    ruler: Decimal = RULER,
) -> Volume:
    """A rectangular container wider at one end: length and width at the top and at the bottom.

    Edges run straight from bottom to top, so that a cross-section is linear in either size
    (prismatoid); it need not be similar to the others.
    """
    (a, b), (c, d) = ([side.mean for side in end] for end in (top, bottom))
    h = height.mean
    base = (2 * (a * b + c * d) + a * d + b * c) / 6
    slopes = (
        (top[0], (2 * b + d) * h / 6),
        (top[1], (2 * a + c) * h / 6),
        (bottom[0], (2 * d + b) * h / 6),
        (bottom[1], (2 * c + a) * h / 6),
        (height, base),
    )
    return _measured(base * h, slopes, ruler)


def bounded(cm3: float, uncertainties: Iterable[float]) -> Volume:
    """A volume with its interval, from the independent standard uncertainties in cm³."""
    reach = NORMAL_FACTOR * hypot(*uncertainties)
    decimals = max(0, INTERVAL_DIGITS - 1 - floor(log10(reach)))
    value, half, unit = Fraction(cm3), Fraction(reach), 10**decimals
    low = max(0, floor((value - half) * unit))
    return Volume(
        cm3=half_up(value, decimals + MORE_DECIMALS),
        low=Decimal(f"{low}E-{decimals}"),
        high=Decimal(f"{ceil((value + half) * unit)}E-{decimals}"),
    )


def _measured(cm3: float, slopes: Iterable[tuple[Readings, float]], ruler: Decimal) -> Volume:
    """The volume of ``slopes``: each size, and the cm³ that a centimetre of it makes."""
    if exact(ruler) <= 0:
        raise ValueError("the step of a ruler is above zero")
    rounding = float(ruler) / sqrt(12)
    return bounded(
        cm3,
        (slope * part for size, slope in slopes for part in (rounding, size.spread)),
    )
