"""What comes of watching a balance: findings, or the reason why there are none."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drivers.line_shape import LineShape


class Refusal(StrEnum):
    """Why nothing was learned; what to do about it is said where a person reads it."""

    SILENT = "silent"  # not a byte came
    NO_LINES = "no lines"  # what came is no lines of text
    NEVER_CHANGED = "never changed"  # no number followed a load
    NOT_RETURNED = "not returned"  # the load was put on or taken off, but not both
    TWO_FIELDS = "two fields"  # several numbers follow the load
    NO_UNIT = "no unit"  # the mass is nowhere said to be grams or anything else
    UNCLEAR = "unclear"  # the lines differ too much from one another


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """A shape, and how sure it is: ``confidence`` from 0 to 1.

    The confidence is the share of lines that the shape reads with a mass, less for readings that
    tell little of the readability, for marks of rest that were not always right, and for none.
    """

    shape: LineShape
    confidence: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """What came of watching so far, and how far the person has come who puts loads on.

    ``loads`` were put on and taken off again; ``loaded`` if one lies on the pan now.
    """

    found: Learned | Refusal
    loads: int = 0
    loaded: bool = False
