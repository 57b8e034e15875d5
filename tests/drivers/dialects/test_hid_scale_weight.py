"""One report, one reading: published reports, every status with every unit, odd numbers."""

from dataclasses import replace
from decimal import Decimal
from itertools import product

import pytest

from drivers.dialects.hid_layout import STANDARD, Field
from drivers.dialects.hid_scale_weight import reading_of
from drivers.reading import Fault, Range, Reading
from tests.helpers import hid_reports as hid
from tests.helpers.hid_reports import report

# NIST Handbook 44, Appendix C; a tael has no single mass.
UNITS = {
    hid.MG: ("mg", "0.001"),
    hid.GRAM: ("g", "1"),
    hid.KG: ("kg", "1000"),
    hid.CARAT: ("ct", "0.2"),
    hid.TAEL: ("tael", None),
    hid.GRAIN: ("gn", "0.06479891"),
    hid.DWT: ("dwt", "1.55517384"),
    hid.METRIC_TON: ("t", "1000000"),
    hid.AVOIR_TON: ("ton", "907184.74"),
    hid.OZT: ("ozt", "31.1034768"),
    hid.OZ: ("oz", "28.349523125"),
    hid.LB: ("lb", "453.59237"),
}
STATUSES = {
    hid.FAULT: (None, Range.UNUSABLE, "reports a fault"),
    hid.AT_ZERO: (True, Range.IN_RANGE, None),
    hid.MOVING: (False, Range.IN_RANGE, None),
    hid.STABLE: (True, Range.IN_RANGE, None),
    hid.BELOW_ZERO: (None, Range.UNDER, "below zero"),
    hid.TOO_MUCH: (None, Range.OVER, "more on the pan than the balance can weigh"),
    hid.UNCALIBRATED: (None, Range.UNUSABLE, "calibrated"),
    hid.ZERO_GONE: (None, Range.UNUSABLE, "lost its zero: empty the pan and press its zero key"),
}


def read(raw: bytes) -> Reading:
    """The reading of a standard report that has one."""
    reading = reading_of(raw, STANDARD, at=4.5, balance="the balance")
    assert reading is not None
    return reading


@pytest.mark.parametrize("case", hid.PUBLISHED.values(), ids=hid.PUBLISHED)
def test_a_published_report_is_read_as_published(case: hid.Published) -> None:
    raw = bytes.fromhex(case.hexadecimal)
    assert read(raw) == Reading(
        value=Decimal(case.value),
        unit=case.unit,
        grams=Decimal(case.grams),
        stable=case.stable,
        basis=None,
        range=Range.IN_RANGE,
        reason=None,
        raw=raw,
        at=4.5,
        balance="the balance",
    )


@pytest.mark.parametrize(("status", "unit"), list(product(STATUSES, UNITS)))
def test_every_status_with_every_unit(status: int, unit: int) -> None:
    stable, range_, obstacle = STATUSES[status]
    name, factor = UNITS[unit]
    reading = read(report(status, unit, -1, 12345))
    assert (reading.value, reading.unit, reading.stable) == (Decimal("1234.5"), name, stable)
    if obstacle:
        assert reading.grams is None
        assert obstacle in str(reading.reason)
        assert reading.range is range_
    elif factor is None:
        assert reading.grams is None
        assert (
            reading.reason == "a tael is not the same mass everywhere: switch the balance to grams"
        )
        assert reading.range is Range.UNUSABLE
    else:
        assert (reading.grams, reading.reason) == (Decimal("1234.5") * Decimal(factor), None)
        assert reading.range is range_


def test_every_status_has_a_reason_of_its_own() -> None:
    reasons = [read(report(status)).reason for status in STATUSES]
    told = [reason for reason in reasons if reason]
    assert len(set(told)) == len(told) == 5


@pytest.mark.parametrize(
    ("power", "weight", "shown"),
    [
        (-1, 12345, "1234.5"),
        (-1, 0, "0.0"),
        (-3, 2350, "2.350"),
        (-9, 1, "0.000000001"),
        (0, 65535, "65535"),
        (1, 2, "20"),
        (9, 7, "7000000000"),
    ],
)
def test_value_has_the_digits_and_the_power_that_were_sent(
    power: int, weight: int, shown: str
) -> None:
    value = read(report(power=power, weight=weight)).value
    assert value is not None
    assert format(value, "f") == shown
    assert value.as_tuple().exponent == power


@pytest.mark.parametrize("power", [-128, -10, 10, 127])
def test_a_power_that_no_balance_needs_is_no_mass(power: int) -> None:
    reading = read(report(power=power, weight=5))
    assert (reading.value, reading.grams, reading.range) == (None, None, Range.UNUSABLE)
    assert str(power) in str(reading.reason)


@pytest.mark.parametrize("status", [9, 200, 255])
def test_an_unknown_status_is_no_mass(status: int) -> None:
    reading = read(report(status, weight=5))
    assert (reading.grams, reading.stable, reading.range) == (None, None, Range.UNUSABLE)
    assert reading.reason == f"unknown status {status}"


@pytest.mark.parametrize(
    ("unit", "reason"), [(0, "the number has no unit"), (13, "unknown unit 13")]
)
def test_without_a_known_unit_there_is_no_mass(unit: int, reason: str) -> None:
    reading = read(report(unit=unit, weight=5))
    assert (reading.unit, reading.grams, reading.reason) == (None, None, reason)


def test_a_status_that_says_nothing_is_no_reading() -> None:
    assert reading_of(report(0, weight=5), STANDARD, at=0.0, balance="b") is None


def test_a_number_with_a_sign_may_be_below_zero() -> None:
    layout = replace(STANDARD, weight=Field(4, 2, signed=True))
    raw = report(power=-1, weight=0x10000 - 12)
    reading = reading_of(raw, layout, at=0.0, balance="b")
    assert reading is not None
    assert (reading.grams, reading.range) == (Decimal("-1.2"), Range.UNDER)


@pytest.mark.parametrize(
    ("status", "unit", "fault"),
    [
        (1, 2, Fault.REPORTED),
        (7, 2, Fault.CALIBRATION),
        (8, 2, Fault.ZERO),
        (4, 13, Fault.UNIT),
        (3, 5, Fault.UNIT),
        (4, 2, None),
        (5, 2, None),
    ],
)
def test_a_fault_that_can_be_mended_is_named(status: int, unit: int, fault: Fault | None) -> None:
    assert read(report(status, unit, -1, 123)).fault is fault
