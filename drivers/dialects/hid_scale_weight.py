"""From one report of a HID scale to a Reading: never a mass that was not sent.

A report holds a status, a unit, a power of ten and a number without a sign: HID Usage Tables 1.7,
section 33. Below zero there is no number to send, only the status that says so; what stands beside
it is not the mass. "Stable at the centre of zero" (2) is no number either: a scale may send it
beside one that is not zero, and the number counts.
"""

from __future__ import annotations

from decimal import Decimal
from types import MappingProxyType

from drivers.dialects.hid_layout import STATUS, STATUSES, UNIT, UNITS, Layout
from drivers.reading import Fault, Range, Reading
from drivers.units import GRAMS_PER, to_grams

FAULT, AT_ZERO, MOVING, STABLE, BELOW_ZERO, TOO_MUCH, UNCALIBRATED, ZERO_GONE = STATUSES
_AT_REST = MappingProxyType({AT_ZERO: True, STABLE: True, MOVING: False})
_NO_MASS = MappingProxyType(
    {
        FAULT: "the balance reports a fault",
        BELOW_ZERO: "the balance is below zero and sends no number for that",
        TOO_MUCH: "there is more on the pan than the balance can weigh",
        UNCALIBRATED: "the balance needs to be calibrated",
        ZERO_GONE: "the balance has lost its zero: empty the pan and press its zero key",
    }
)
_FAULT = MappingProxyType(
    {FAULT: Fault.REPORTED, UNCALIBRATED: Fault.CALIBRATION, ZERO_GONE: Fault.ZERO}
)
_RANGE = MappingProxyType({BELOW_ZERO: Range.UNDER, TOO_MUCH: Range.OVER})

# The tables name units without defining them. "Avoir ton" is read as the short ton of 2000 lb: the
# scale classes on the same page (III L) are those of NIST Handbook 44, whose ton that is.
TAEL = "tael"
UNIT_NAMES = MappingProxyType(
    dict(
        zip(
            UNITS,
            ("mg", "g", "kg", "ct", TAEL, "gn", "dwt", "t", "ton", "ozt", "oz", "lb"),
            strict=True,
        )
    )
)
# 50 g in China, 37.5 g in Taiwan, 37.799 g in Hong Kong, 37.429 g for its gold (from memory, not
# verified); nothing in a report tells which.
_MANY_TAELS = "a tael is not the same mass everywhere: switch the balance to grams"
_LARGEST_POWER = 9  # of ten; no balance counts by more than tonnes or less than nanograms


def reading_of(report: bytes, layout: Layout, *, at: float, balance: str) -> Reading | None:
    """The reading in a whole report of ``layout``; None when its status says nothing at all."""
    if not layout.status.number(report):
        return None
    status = layout.status.usage(report)
    unit = UNIT_NAMES.get(layout.unit.usage(report) or UNIT)
    value = _value(report, layout)
    reason = _obstacle(report, layout, value)
    grams = None
    if reason is None and value is not None and unit is not None:
        grams = to_grams(value, unit)
    return Reading(
        value=value,
        unit=unit,
        grams=grams,
        stable=_AT_REST.get(status or STATUS),
        basis=None,
        range=_range(status, value, reason),
        reason=reason,
        raw=report,
        at=at,
        balance=balance,
        fault=_fault(report, layout, status),
    )


def _fault(report: bytes, layout: Layout, status: int | None) -> Fault | None:
    if status in _AT_REST:
        return Fault.UNIT if _bad_unit(report, layout) else None
    return _FAULT.get(status or STATUS)


def _value(report: bytes, layout: Layout) -> Decimal | None:
    power = layout.scaling.number(report)
    if abs(power) > _LARGEST_POWER:
        return None
    return Decimal(layout.weight.number(report)).scaleb(power)


def _obstacle(report: bytes, layout: Layout, value: Decimal | None) -> str | None:
    """Why this report carries no usable mass, the weightiest reason first; None if it does."""
    return (
        _bad_status(report, layout)
        or _bad_unit(report, layout)
        or (None if value is not None else _bad_power(report, layout))
    )


def _bad_status(report: bytes, layout: Layout) -> str | None:
    status = layout.status.usage(report)
    if status in _AT_REST:
        return None
    return _NO_MASS.get(status or STATUS, f"unknown status {layout.status.number(report)}")


def _bad_unit(report: bytes, layout: Layout) -> str | None:
    unit = UNIT_NAMES.get(layout.unit.usage(report) or UNIT)
    if unit in GRAMS_PER:
        return None
    if unit == TAEL:
        return _MANY_TAELS
    number = layout.unit.number(report)
    return f"unknown unit {number}" if number else "the number has no unit"


def _bad_power(report: bytes, layout: Layout) -> str:
    power = layout.scaling.number(report)
    return f"the number cannot be right: it is said to be times ten to the power of {power}"


def _range(status: int | None, value: Decimal | None, reason: str | None) -> Range:
    if status is not None and status in _RANGE:
        return _RANGE[status]
    if reason is not None:
        return Range.UNUSABLE
    return Range.UNDER if value is not None and value.is_signed() else Range.IN_RANGE
