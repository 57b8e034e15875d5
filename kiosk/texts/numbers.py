"""Numbers as people read them: thin spaces between thousands, a real minus, a unit always."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

THIN_SPACE = "\u2009"
MINUS = "\u2212"


def number(value: Decimal | int, decimals: int | None = None) -> str:
    """``value`` with thousands set apart and U+2212 as minus; rounded half up if asked."""
    exact = Decimal(value)
    if decimals is not None:
        exact = exact.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP)
    text = f"{abs(exact):,f}".replace(",", THIN_SPACE)
    return f"{MINUS}{text}" if exact < 0 else text


def grams(mass: Decimal) -> str:
    """A mass with the digits that the balance showed: ``93.4 g``."""
    return f"{number(mass)} g"


def percent(value: Decimal, decimals: int = 1) -> str:
    """A percentage: ``2.1 %``; ``value`` is already in per cent."""
    return f"{number(value, decimals)} %"
