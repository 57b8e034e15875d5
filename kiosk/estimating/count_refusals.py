"""When masses make no key, each time with what would help."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from math import ceil
from statistics import median

from kiosk.estimating.counting_more import advise
from kiosk.estimating.exact import half_up
from kiosk.estimating.samples import MOST_SAMPLES, Samples
from kiosk.texts import say
from kiosk.texts.numbers import grams, number, percent

LEAST_DIVISIONS = 20
ODD_SHARE = Decimal("0.4")  # off the middle one
FEWEST_TO_COMPARE = 3


class Why(StrEnum):
    """Why there is no key."""

    NO_SAMPLE = "no sample"
    TOO_MANY_SAMPLES = "too many samples"
    EMPTY_SAMPLE = "empty sample"
    LIGHT_SAMPLE = "light sample"
    ONE_SAMPLE = "one sample"
    EMPTY_FILL = "empty fill"
    LIGHT_FILL = "light fill"
    LESS_THAN_ONE = "less than one piece"
    LESS_THAN_COUNTED = "less than counted"
    TOO_WIDE = "too wide"


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """No key; ``sentence`` tells a person why, and what would help."""

    why: Why
    sentence: str


def unusable(samples: Samples, filled: Decimal, empty: Decimal) -> Refused | None:
    """The first thing that stands in the way before anything is computed, or None."""
    return _samples_unusable(samples) or _fill_unusable(samples, filled, empty)


def _samples_unusable(samples: Samples) -> Refused | None:
    masses, least = samples.masses, LEAST_DIVISIONS * samples.readability
    if not masses:
        return _refused(Why.NO_SAMPLE)
    if len(masses) > MOST_SAMPLES:
        return _refused(Why.TOO_MANY_SAMPLES, limit=MOST_SAMPLES)
    for place, mass in enumerate(masses, start=1):
        if mass <= 0:
            return _refused(Why.EMPTY_SAMPLE, place=place, mass=grams(mass))
        if mass < least:
            return _refused(Why.LIGHT_SAMPLE, place=place, **_in_steps(mass, samples))
    if len(masses) == 1 and samples.prior is None:
        return _refused(Why.ONE_SAMPLE)
    return None


def _fill_unusable(samples: Samples, filled: Decimal, empty: Decimal) -> Refused | None:
    net = filled - empty
    if refused := nothing_inside(filled, empty):
        return refused
    if net < LEAST_DIVISIONS * samples.readability:
        return _refused(Why.LIGHT_FILL, **_in_steps(net, samples))
    if 2 * Fraction(net) < samples.piece_mass:
        return _refused(Why.LESS_THAN_ONE)
    return None


def nothing_inside(filled: Decimal, empty: Decimal) -> Refused | None:
    """The refusal of a full container that is not heavier than the empty one."""
    if filled > empty:
        return None
    return _refused(Why.EMPTY_FILL, filled=grams(filled), empty=grams(empty))


def less_than_counted(samples: Samples, count: int) -> Refused:
    """The refusal of a fill that is said to hold the counted pieces but holds fewer."""
    return _refused(Why.LESS_THAN_COUNTED, count=number(count), pieces=number(samples.pieces))


def too_wide(samples: Samples, net: Decimal, limit: float) -> Refused:
    """The refusal of a count whose interval is wider than ``limit``, relative to the count."""
    limit_percent = Decimal(round(100 * limit))
    advice = advise(samples, net, needed_percent=limit_percent)
    return _refused(
        Why.TOO_WIDE,
        now=percent(_upwards(advice.now_percent or limit_percent)),
        limit=percent(limit_percent, 0),
        help=_odd_sample(samples) or advice.help,
    )


def _odd_sample(samples: Samples) -> str:
    """What to do about a sample that cannot be of the same number of pieces, "" without one.

    No material of the event scatters so far (our choice): it is a slip of the pen or of counting.
    """
    middle = median(samples.masses)
    place, mass = max(enumerate(samples.masses, start=1), key=lambda each: abs(each[1] - middle))
    if len(samples.masses) < FEWEST_TO_COMPARE or abs(mass - middle) <= ODD_SHARE * middle:
        return ""
    return say("count.odd_sample", place=place, mass=grams(mass))


def _upwards(width: Decimal) -> Decimal:
    """Rounded up to a tenth, so that what is over the limit never reads like the limit."""
    return Decimal(ceil(10 * width)) / 10


def _in_steps(mass: Decimal, samples: Samples) -> dict[str, str]:
    steps = Fraction(mass) / Fraction(samples.readability)
    return {
        "steps": number(half_up(steps, 1).normalize()),
        "step": grams(samples.readability),
        "least": str(LEAST_DIVISIONS),
    }


def _refused(why: Why, **values: object) -> Refused:
    return Refused(why=why, sentence=say(f"count.refused.{why.name.lower()}", **values))
