"""Reading: one frame of a balance as a frozen value."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum


class Basis(StrEnum):
    """What the balance says that its number is."""

    GROSS = "gross"
    NET = "net"


class Range(StrEnum):
    """Whether the number lies where the balance can weigh."""

    IN_RANGE = "in range"
    OVER = "over"
    UNDER = "under"
    UNUSABLE = "unusable"


class Fault(StrEnum):
    """What keeps a number from being a mass, where a person can do something about it."""

    UNIT = "unit"  # none, or one that is not known
    CALIBRATION = "calibration"  # the balance asks to be calibrated
    ZERO = "zero"  # it has no zero: switched on under too much, or the zero is gone
    REPORTED = "reported"  # its own word for an error


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """What a balance showed in one frame.

    ``value`` holds the digits as sent, ``unit`` the unit's normal short name (``g``, ``kg``,
    ``oz`` ...), ``grams`` the value times the exact factor of the unit, unrounded. ``grams`` is
    None when the frame carries no usable mass; ``reason`` then says why, in a few plain words,
    and ``fault`` of which kind it is, if it is of a kind that can be mended.
    ``stable`` is True, False, or None when the balance does not say. ``range`` UNDER with a mass
    means a number below zero. ``raw`` is the frame as it came, ``at`` the monotonic second at
    which it came, ``balance`` the name of the balance that sent it.
    """

    value: Decimal | None
    unit: str | None
    grams: Decimal | None
    stable: bool | None
    basis: Basis | None
    range: Range
    reason: str | None
    raw: bytes
    at: float
    balance: str
    fault: Fault | None = None
