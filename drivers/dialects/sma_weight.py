"""From a standard reply of SMA SCP-0499 to a Reading: never a mass that was not shown.

A status letter outranks the digits beside it. ``Z`` (centre of zero) is no number: a balance may
say it beside one that is a little off zero, and the digits count.
"""

from __future__ import annotations

import re
from decimal import Decimal

from drivers.dialects.sma_replies import Weight, trimmed
from drivers.reading import Basis, Fault, Range, Reading
from drivers.units import GRAMS_PER, OUNCES_PER_POUND, pounds_and_ounces, to_grams

OVER, UNDER = "O", "U"
CENTRE_OF_ZERO = "Z"
FAULTS = {
    "E": "the balance could not set itself to zero",
    "I": "the balance found no zero when it was switched on",
    "T": "the balance could not tare",
}
_FAULT_KINDS = {"E": Fault.ZERO, "I": Fault.ZERO, "T": Fault.REPORTED}
_NO_FAULT = (" ", CENTRE_OF_ZERO, UNDER)
_BASIS = {"G": Basis.GROSS, "g": Basis.GROSS, "N": Basis.NET, "n": Basis.NET}
_STORED_TARE = "T"
_AT_REST = {"M": False, " ": True}
_POUNDS_AND_OUNCES = "l/o"
# Checked before Decimal sees it: Decimal would also take 1_0, 1e3 and the digits of other scripts.
_NUMBER = re.compile(rb" *([+-]?[0-9]+(?:\.[0-9]+)?)")
_POUNDS_COLON_OUNCES = re.compile(rb" *([+-]?)([0-9]+):([0-9]{1,2}(?:\.[0-9]+)?)")


def reading_of(weight: Weight, *, raw: bytes, at: float, balance: str) -> Reading:
    """The reading that ``weight`` stands for; without a mass it says why."""
    value, unit = _shown(weight)
    reason = _obstacle(weight, value, unit)
    grams = None
    if reason is None and value is not None and unit is not None:
        grams = to_grams(value, unit)
    return Reading(
        value=value,
        unit=unit,
        grams=grams,
        stable=_AT_REST.get(weight.motion),
        basis=_BASIS.get(weight.kind),
        range=_range(weight.status, reason),
        reason=reason,
        raw=raw,
        at=at,
        balance=balance,
        fault=_fault(weight, value, unit),
    )


def _fault(weight: Weight, value: Decimal | None, unit: str | None) -> Fault | None:
    kind = _FAULT_KINDS.get(weight.status)
    if kind is None and value is not None and unit is None:
        return Fault.UNIT
    return kind


def _shown(weight: Weight) -> tuple[Decimal | None, str | None]:
    """Number and unit as far as they can be read; pounds and ounces become ounces."""
    unit = trimmed(weight.unit)
    if unit == _POUNDS_AND_OUNCES:
        return _ounces(weight.digits), "oz"
    number = _NUMBER.fullmatch(weight.digits)
    value = None if number is None else Decimal(number[1].decode("ascii"))
    return value, unit if unit in GRAMS_PER else None


def _ounces(digits: bytes) -> Decimal | None:
    parts = _POUNDS_COLON_OUNCES.fullmatch(digits)
    if parts is None:
        return None
    sign, pounds, ounces = (part.decode("ascii") for part in parts.groups())
    if Decimal(ounces) >= OUNCES_PER_POUND:
        return None
    total = pounds_and_ounces(Decimal(pounds), Decimal(ounces))
    return total.copy_negate() if sign == "-" else total


def _obstacle(weight: Weight, value: Decimal | None, unit: str | None) -> str | None:
    """Why this reply carries no usable mass, the weightiest reason first; None if it does."""
    return (
        _bad_status(weight.status)
        or _bad_kind(weight)
        or _bad_number(weight.digits, value)
        or _bad_unit(weight.unit, unit)
        or _bad_sign(weight.status, value)
    )


def _bad_status(status: str) -> str | None:
    if status == OVER:
        return "there is more on the pan than the balance can weigh"
    if status in FAULTS:
        return FAULTS[status]
    return None if status in _NO_FAULT else f"unknown status {status!r}"


def _bad_kind(weight: Weight) -> str | None:
    if weight.kind == _STORED_TARE:
        return "this is a stored tare, not what lies on the pan"
    if weight.kind not in _BASIS:
        return f"unknown kind of weight {weight.kind!r}"
    in_place = weight.scale_range.isascii() and weight.scale_range.isdigit()
    return None if in_place else f"unknown range {weight.scale_range!r}"


def _bad_number(digits: bytes, value: Decimal | None) -> str | None:
    if value is not None:
        return None
    return "the number cannot be read" if digits.strip(b" -") else "the balance shows no number"


def _bad_unit(sent: str, unit: str | None) -> str | None:
    if unit is not None:
        return None
    shown = trimmed(sent)
    return f"unknown unit {shown!r}" if shown else "the number has no unit"


def _bad_sign(status: str, value: Decimal | None) -> str | None:
    # "Below zero" beside a number that is not: one of the two is wrong, and nobody knows which.
    if status == UNDER and value is not None and not value.is_signed():
        return "the balance says below zero, but its number has no minus sign"
    return None


def _range(status: str, reason: str | None) -> Range:
    if status == OVER:
        return Range.OVER
    if status == UNDER:
        return Range.UNDER
    return Range.IN_RANGE if reason is None else Range.UNUSABLE
