"""Masses that are known: check weights by class, and coins as a gross check only."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownMass:
    """A mass in grams, known to plus or minus ``tolerance`` grams.

    ``gross_check`` marks masses like coins, which find a wrong unit, not a wrong gram.
    """

    grams: Decimal
    tolerance: Decimal
    gross_check: bool = False


# Limits of error in grams, OIML R 111-1:2004, Table 1; 500 g from memory, not verified.
WEIGHT_TOLERANCES: dict[str, dict[int, str]] = {
    "M1": {20: "0.0025", 50: "0.003", 100: "0.005", 200: "0.01", 500: "0.025"},
    "M2": {20: "0.008", 50: "0.01", 100: "0.016", 200: "0.03", 500: "0.08"},
    "M3": {20: "0.025", 50: "0.03", 100: "0.05", 200: "0.1", 500: "0.25"},
}

# Most coins have no published tolerance for a single piece. 4 % is as wide as the widest that a
# law was found to give (31 USC 5113(a): 0.194 g on 5.000 g); that it fits all is common practice,
# no source. Too wide a tolerance can only turn "fine" into "cannot tell".
_PRESUMED_SHARE = Decimal("0.04")

# (grams, tolerance of one piece or None). Masses: 31 USC 5112(a) for the US coins; Regulation (EC)
# 975/98 for 1 and 2 euro; Royal Canadian Mint Act, schedule, and SOR/2011-324 for Canada, where
# 1 kg may be off by 30.4 g (1 dollar) and 30.45 g (2 dollars); dealers quoting the mint for 10 p
# and 1 pound, not verified in law.
COINS: dict[str, tuple[str, str | None]] = {
    "us_5_cents": ("5.000", "0.194"),
    "us_25_cents": ("5.670", None),
    "euro_1": ("7.5", None),
    "euro_2": ("8.5", None),
    "uk_10_pence": ("6.50", None),
    "uk_1_pound": ("8.75", None),
    "canada_1_dollar": ("6.27", None),
    "canada_2_dollars": ("6.92", None),
}


def check_weight(nominal: int, weight_class: str) -> KnownMass:
    """A check weight of so many grams; KeyError for one that the table does not have."""
    tolerance = Decimal(WEIGHT_TOLERANCES[weight_class][nominal])
    return KnownMass(grams=Decimal(nominal), tolerance=tolerance)


def coins(kind: str, count: int) -> KnownMass:
    """So many coins of one kind, each at the far end of its tolerance at worst."""
    mass, published = COINS[kind]
    each = Decimal(mass)
    tolerance = each * _PRESUMED_SHARE if published is None else Decimal(published)
    return KnownMass(grams=count * each, tolerance=count * tolerance, gross_check=True)
