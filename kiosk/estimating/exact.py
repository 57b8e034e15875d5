"""Exact numbers rounded once, at the end, half up (away from zero), whatever their size."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

FARTHEST_EXPONENT = 60


def exact(value: Decimal) -> Fraction:
    """``value`` as a fraction; ValueError for what is no number or has an absurd exponent."""
    if not value.is_finite():
        raise ValueError(f"{value} is not a number")
    if value and abs(value.adjusted()) > FARTHEST_EXPONENT:
        raise ValueError(f"{value:.3E} is beyond anything that can be weighed or counted")
    return Fraction(value)


def half_up(value: Fraction, decimals: int) -> Decimal:
    """``value`` rounded to ``decimals`` places; exact halves go away from zero."""
    twice, below = 2 * abs(value.numerator) * 10**decimals, value.denominator
    units = (twice + below) // (2 * below)
    # Built from text: Decimal's arithmetic would round to its context.
    return Decimal(f"{'-' if value < 0 and units else ''}{units}E-{decimals}")


def significant(value: Fraction, digits: int) -> Decimal:
    """A positive ``value`` rounded to so many digits, without zeros at the end."""
    decimals = digits
    while decimals < FARTHEST_EXPONENT and value * 10**decimals < 10 ** (digits - 1):
        decimals += 1
    while decimals > 0 and value * 10**decimals >= 10**digits:
        decimals -= 1
    text = f"{half_up(value, decimals):f}"
    return Decimal(text.rstrip("0").rstrip(".") if "." in text else text)
