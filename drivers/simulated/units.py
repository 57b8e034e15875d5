"""The units that the simulated balance can show, and how finely it counts in each."""

from __future__ import annotations

import math
from decimal import Decimal

GRAMS_PER_UNIT = {
    "g": Decimal(1),
    "kg": Decimal(1000),
    "oz": Decimal("28.349523125"),
    "lb": Decimal("453.59237"),
}
"""Exact factors (NIST SP 811, B.8), in the order in which the unit key goes round."""


def count_by(unit: str, readability: Decimal) -> Decimal:
    """The display's step in ``unit``: the readability in grams, as the next 1, 2 or 5 above it."""
    wanted = readability / GRAMS_PER_UNIT[unit]
    decade = Decimal(1).scaleb(wanted.adjusted())
    return next(step * decade for step in (1, 2, 5, 10) if step * decade >= wanted)


def rounded(grams: float, unit: str, step: Decimal) -> Decimal:
    """``grams`` in ``unit``, rounded half up to a whole number of steps."""
    return step * math.floor(grams / float(step * GRAMS_PER_UNIT[unit]) + 0.5)
