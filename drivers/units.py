"""Units of mass: their short names and their exact factors to the gram.

The factors are exact by definition: NIST Handbook 44, Appendix C, and NIST SP 811, Appendix B.8.
``ton`` is the short ton of 2000 lb, as Handbook 44 has it.
"""

from __future__ import annotations

from decimal import Context, Decimal, Inexact, InvalidOperation
from types import MappingProxyType

GRAMS_PER = MappingProxyType(
    {
        "mg": Decimal("0.001"),
        "g": Decimal(1),
        "kg": Decimal(1000),
        "t": Decimal(1_000_000),
        "ct": Decimal("0.2"),
        "gn": Decimal("0.06479891"),
        "dwt": Decimal("1.55517384"),
        "ozt": Decimal("31.1034768"),
        "oz": Decimal("28.349523125"),
        "lb": Decimal("453.59237"),
        "ton": Decimal("907184.74"),
    }
)
OUNCES_PER_POUND = 16

# A product that would lose digits raises: a mass is never rounded on the way in.
_UNROUNDED = Context(prec=60, traps=[Inexact, InvalidOperation])


def to_grams(value: Decimal, unit: str) -> Decimal:
    """``value`` in grams, unrounded; KeyError for a unit without a factor."""
    return _UNROUNDED.multiply(value, GRAMS_PER[unit])


def pounds_and_ounces(pounds: Decimal, ounces: Decimal) -> Decimal:
    """A mass written as ``pounds:ounces``, in ounces; both parts without a sign."""
    return _UNROUNDED.add(_UNROUNDED.multiply(pounds, Decimal(OUNCES_PER_POUND)), ounces)
