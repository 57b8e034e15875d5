"""Numbers as people read them: thin spaces between thousands, a real minus, a unit always."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

THIN_SPACE = "\u2009"
MINUS = "\u2212"
NO_BREAK = "\u00a0"


def number(value: Decimal | int, decimals: int | None = None) -> str:
    """``value`` with thousands set apart and U+2212 as minus; rounded half up if asked."""
    exact = Decimal(value)
    if decimals is not None:
        exact = exact.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP)
    text = f"{abs(exact):,f}".replace(",", THIN_SPACE)
    return f"{MINUS}{text}" if exact < 0 else text


def at_most(value: Decimal, decimals: int) -> str:
    """``value`` as a limit that it does not exceed: rounded up, so that "up to" stays true."""
    return number(value.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_CEILING))


def decimals_of(step: Decimal | None) -> int | None:
    """Decimals that tell one ``step`` from the next: 1 for 0.1 and 0.5, 0 for 2; None if unknown.

    A balance that shows kilograms or ounces would otherwise lend its grams more digits than it
    has.
    """
    if step is None or step <= 0:
        return None
    return max(0, -step.adjusted())


def mass_number(mass: Decimal, step: Decimal | None = None) -> str:
    """A mass without its unit, with the decimals of a balance that steps by ``step`` grams."""
    return number(mass, decimals_of(step))


def grams(mass: Decimal, step: Decimal | None = None) -> str:
    """A mass with its unit: ``93.4 g``."""
    return f"{mass_number(mass, step)} g"


def percent(value: Decimal, decimals: int = 1) -> str:
    """A percentage: ``2.1 %``; ``value`` is already in per cent."""
    return f"{number(value, decimals)} %"


def together(text: str) -> str:
    """``text`` on one line: for a mass in an instruction, whose unit must not stand alone."""
    return text.replace(" ", NO_BREAK)
