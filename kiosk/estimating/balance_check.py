"""Is the balance right? A known mass, what the balance showed, and a verdict that may be open.

Limits are the in-service ones of a class III instrument: one, two or three divisions up to 500,
2 000 and 10 000 divisions of load (OIML R 76-1:2006, Table 6, doubled for use in service; the same
in Canada's Specifications Relating to Non-automatic Weighing Devices, SI/98-81). A display hides
up to half a division, and a known mass is known to its own tolerance: a deviation counts as fine
or as not fine only when neither can change the verdict.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

# (divisions of load, limit in divisions); heavier loads have the last limit
LIMITS = ((500, 1), (2_000, 2), (10_000, 3))
HALF = Decimal("0.5")


class Verdict(StrEnum):
    """What can be said of one load."""

    FINE = "fine"
    NOT_FINE = "not fine"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownMass:
    """A mass in grams, known to plus or minus ``tolerance`` grams.

    ``gross_check`` marks masses like coins, whose tolerance finds a wrong unit, not a wrong gram.
    """

    name: str
    grams: Decimal
    tolerance: Decimal
    gross_check: bool = False


# The classes of weights and their limits in grams (OIML R 111-1:2004).
_WEIGHT_TOLERANCES = {
    "M1": {10: "0.002", 20: "0.0025", 50: "0.003", 100: "0.005", 200: "0.01"},
    "M2": {10: "0.006", 20: "0.008", 50: "0.01", 100: "0.016", 200: "0.03"},
    "M3": {10: "0.02", 20: "0.025", 50: "0.03", 100: "0.05", 200: "0.1"},
}


def weight(nominal: int, weight_class: str) -> KnownMass:
    """A check weight of so many grams; KeyError for one that the table does not have."""
    tolerance = Decimal(_WEIGHT_TOLERANCES[weight_class][nominal])
    return KnownMass(
        name=f"{nominal} g {weight_class}", grams=Decimal(nominal), tolerance=tolerance
    )


def limit(load: Decimal, readability: Decimal) -> Decimal:
    """The largest error in grams that a load of so many grams may show in service."""
    divisions = abs(load) / readability
    steps = next((steps for most, steps in LIMITS if divisions <= most), LIMITS[-1][1])
    return steps * readability


def judge(known: KnownMass, shown: Decimal, readability: Decimal) -> Verdict:
    """The verdict on one load; all in grams."""
    return _verdict(abs(shown - known.grams), known, readability, HALF)


def _verdict(off: Decimal, known: KnownMass, readability: Decimal, hidden: Decimal) -> Verdict:
    allowed = limit(known.grams, readability)
    unknown = hidden * readability + known.tolerance
    if off + unknown <= allowed:
        return Verdict.FINE
    return Verdict.NOT_FINE if off - unknown > allowed else Verdict.CANNOT_TELL


def judge_spread(shown: Sequence[Decimal], load: Decimal, readability: Decimal) -> Verdict:
    """Repeated weighings, or places on the pan: they may differ by the limit of the load.

    Differences of displayed values hide up to a whole division. ValueError for fewer than two.
    """
    if len(shown) < 2:
        raise ValueError("one weighing shows no spread")
    same = KnownMass(name="", grams=load, tolerance=Decimal(0))
    return _verdict(max(shown) - min(shown), same, readability, Decimal(1))


def judge_zero(shown: Decimal, readability: Decimal) -> Verdict:
    """Whether an emptied pan comes back to zero: within half a division, as far as shown."""
    if abs(shown) < readability:
        return Verdict.FINE
    return Verdict.NOT_FINE if abs(shown) > readability else Verdict.CANNOT_TELL
