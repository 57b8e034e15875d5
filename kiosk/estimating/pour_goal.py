"""How full a container shall be, how far it is to there, and whether it is there."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from enum import Enum
from math import floor, log10

from kiosk.estimating.samples import Samples
from kiosk.estimating.uncertainty import budget

NEAR_ENOUGH = Decimal("0.02")  # to a number; nobody pours to the piece (our choice)


@dataclass(frozen=True, slots=True, kw_only=True)
class PourGoal:
    """From ``low`` to ``high`` pieces, both included; ``name`` is a band or the number wanted."""

    name: str
    low: int
    high: int

    @property
    def is_band(self) -> bool:
        """Whether it is a band of the event and not a single number."""
        return self.name in _BANDS


# What the event calls hundreds, thousands and high.
_BANDS = {
    "low": PourGoal(name="low", low=100, high=999),
    "middle": PourGoal(name="middle", low=1_000, high=9_999),
    "high": PourGoal(name="high", low=12_000, high=20_000),
}
BANDS = tuple(_BANDS.values())
AS_IT_COMES = "any"


def goal_named(name: str | None) -> PourGoal | None:
    """The goal of that name: a band, or digits; None for AS_IT_COMES and while nobody said.

    ValueError for anything else.
    """
    if name is None or name == AS_IT_COMES:
        return None
    if name in _BANDS:
        return _BANDS[name]
    wanted = int(name)
    reach = floor(NEAR_ENOUGH * wanted)
    return PourGoal(name=name, low=max(1, wanted - reach), high=wanted + reach)


class Stand(Enum):
    """Where a count stands to its goal."""

    BEFORE = "before"
    INSIDE = "inside"
    PAST = "past"


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """How far a pour is: ``grams`` to the near edge of the goal, 0 inside.

    The grams are rounded up to what the interval of the count allows.
    """

    stand: Stand
    grams: Decimal


def way_to(goal: PourGoal, samples: Samples, net: Decimal, lots: int = 1) -> Way | None:
    """The way from ``net`` grams to the goal; None while one sample alone tells no interval."""
    sampling = samples.sampling()
    if sampling is None:
        return None
    piece = Decimal(samples.piece_mass.numerator) / samples.piece_mass.denominator
    # A count is a whole number: from half a piece before the edge it reads like the edge.
    near, far = (goal.low - Decimal("0.5")) * piece, (goal.high + Decimal("0.5")) * piece
    if near <= net < far:
        return Way(stand=Stand.INSIDE, grams=Decimal(0))
    stand, edge = (Stand.BEFORE, near) if net < near else (Stand.PAST, far)
    doubt = edge * Decimal(budget(sampling, float(edge), lots).half_width)
    return Way(stand=stand, grams=_rounded_up(abs(edge - net), doubt, samples.readability))


def _rounded_up(mass: Decimal, doubt: Decimal, readability: Decimal) -> Decimal:
    """To whole steps of 1, 2 or 5, as coarse as the doubt; never finer than the balance."""
    decade = Decimal(1).scaleb(floor(log10(doubt)))
    step = max(readability, *(factor * decade for factor in (1, 2, 5) if factor * decade <= doubt))
    return max(step, (mass / step).to_integral_value(rounding=ROUND_CEILING) * step)


def fill_mass(goal: PourGoal, samples: Samples) -> Decimal:
    """What the fewest pieces of the goal weigh, in grams."""
    mass = samples.piece_mass
    return goal.low * Decimal(mass.numerator) / mass.denominator
