"""Readings from frames: SMA SCP-0499 as quoted by public sources (see tests/helpers)."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.dialects.sma_replies import Weight, decode
from drivers.dialects.sma_weight import reading_of
from drivers.reading import Basis, Fault, Range, Reading
from tests.helpers.sma_frames import frame, weight

GROSS, NET = Basis.GROSS, Basis.NET


def read(raw: bytes) -> Reading:
    reply = decode(raw[1:-1])
    assert isinstance(reply, Weight)
    return reading_of(reply, raw=raw, at=12.5, balance="the balance")


@pytest.mark.parametrize(
    ("name", "value", "unit", "grams", "stable", "basis", "in_range"),
    [
        ("gross pounds", "5.025", "lb", "2279.30165925", True, GROSS, Range.IN_RANGE),
        ("net without a point", "100000", "lb", "45359237", True, NET, Range.IN_RANGE),
        ("pounds and ounces", "136.5", "oz", "3869.7099065625", False, GROSS, Range.IN_RANGE),
        ("high resolution", "5.0025", "lb", "2269.095830925", True, GROSS, Range.IN_RANGE),
        ("centre of zero", "0.000", "lb", "0", True, GROSS, Range.IN_RANGE),
        ("moving", "7.650", "kg", "7650", False, GROSS, Range.IN_RANGE),
        ("below zero", "-0.100", "kg", "-100", True, GROSS, Range.UNDER),
        ("unit at the right", "100.05706", "g", "100.05706", True, GROSS, Range.IN_RANGE),
        ("underscore", "1.250", "kg", "1250", True, GROSS, Range.IN_RANGE),
        ("plain", "123.45", "g", "123.45", True, GROSS, Range.IN_RANGE),
    ],
)
def test_an_example_with_a_mass(
    name: str, value: str, unit: str, grams: str, stable: bool, basis: Basis, in_range: Range
) -> None:
    reading = read(frame(name))
    assert str(reading.value) == value
    assert (reading.unit, reading.grams) == (unit, Decimal(grams))
    assert (reading.stable, reading.basis, reading.range) == (stable, basis, in_range)
    assert reading.reason is None


def test_the_example_of_a_refused_tare_has_no_mass() -> None:
    reading = read(frame("tare refused"))
    assert (reading.value, reading.grams, reading.unit) == (None, None, "kg")
    assert (reading.stable, reading.range) == (False, Range.UNUSABLE)
    assert reading.reason == "the balance could not tare"


def test_a_reading_keeps_its_frame_its_time_and_its_balance() -> None:
    reading = read(frame("plain"))
    assert (reading.raw, reading.at, reading.balance) == (frame("plain"), 12.5, "the balance")


def test_grams_keep_the_digits_of_the_value() -> None:
    assert str(read(frame("below zero")).grams) == "-100.000"


@pytest.mark.parametrize(
    ("unit", "grams"),
    [
        ("mg", "0.12345"), ("g", "123.45"), ("kg", "123450"), ("t", "123450000"),
        ("ct", "24.69"), ("gn", "7.9994254395"), ("dwt", "191.986210548"),
        ("ozt", "3839.72421096"), ("oz", "3499.74862978125"), ("lb", "55995.9780765"),
        ("ton", "111991956.153"),
    ],
)  # fmt: skip
def test_every_unit_of_the_standard_is_known(unit: str, grams: str) -> None:
    assert read(weight("123.45", unit)).grams == Decimal(grams)


@pytest.mark.parametrize(
    ("status", "reason"),
    [
        ("E", "the balance could not set itself to zero"),
        ("I", "the balance found no zero when it was switched on"),
        ("T", "the balance could not tare"),
        ("e", "unknown status 'e'"),
        ("C", "unknown status 'C'"),
        ("_", "unknown status '_'"),
    ],
)
def test_a_fault_or_an_unknown_status_takes_the_mass_away(status: str, reason: str) -> None:
    reading = read(weight(status=status))
    assert (reading.grams, reading.range, reading.reason) == (None, Range.UNUSABLE, reason)


def test_over_capacity_has_no_usable_mass() -> None:
    reading = read(weight("620.0", status="O"))
    assert (reading.grams, reading.range) == (None, Range.OVER)
    assert reading.reason == "there is more on the pan than the balance can weigh"


def test_centre_of_zero_does_not_mean_zero() -> None:
    # -0.00259 beside Z stands in the log of an open-source laboratory balance
    assert read(weight("-0.00259", status="Z")).grams == Decimal("-0.00259")


def test_below_zero_with_dashes_has_no_mass() -> None:
    reading = read(weight("----------", status="U"))
    assert (reading.grams, reading.range) == (None, Range.UNDER)
    assert reading.reason == "the balance shows no number"


def test_below_zero_with_a_number_above_it_has_no_mass() -> None:
    reading = read(weight("0.100", status="U"))
    assert (reading.grams, reading.range) == (None, Range.UNDER)
    assert reading.reason is not None


def test_a_stored_tare_is_no_mass() -> None:
    reading = read(weight(kind="T"))
    assert (reading.grams, reading.basis, reading.range) == (None, None, Range.UNUSABLE)


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ({"kind": "C"}, "unknown kind of weight 'C'"),
        ({"scale_range": "x"}, "unknown range 'x'"),
        ({"scale_range": "²"}, "unknown range '²'"),
        ({"unit": "st"}, "unknown unit 'st'"),
        ({"unit": "G"}, "unknown unit 'G'"),
        ({"unit": ""}, "the number has no unit"),
        ({"unit": "___"}, "the number has no unit"),
        ({"digits": "----------"}, "the balance shows no number"),
        ({"digits": ""}, "the balance shows no number"),
    ],
)
def test_a_field_that_makes_no_sense_takes_the_mass_away(fields: dict, reason: str) -> None:
    reading = read(weight(**fields))
    assert (reading.grams, reading.range, reading.reason) == (None, Range.UNUSABLE, reason)


@pytest.mark.parametrize(
    "digits",
    ["1_0", "1e3", "NaN", "Infinity", "12.", ".5", "1.2.3", "- 1.0", "12 3", "1,5", "1.5  ",
     "--1", "8:08.5", "0x1F", "١٢٣"],
)  # fmt: skip
def test_what_only_resembles_a_number_is_none(digits: str) -> None:
    raw = b"\n 1G  " + digits.encode("utf-8").rjust(10) + b"g  \r"
    reading = read(raw)
    assert (reading.value, reading.grams) == (None, None)
    assert reading.reason == "the number cannot be read"


@pytest.mark.parametrize(
    ("digits", "grams"),
    [("-0:08.5", "-240.9709465625"), ("0:15.9", "450.7574176875"), ("8:08.5", "3869.7099065625")],
)
def test_pounds_and_ounces_are_added(digits: str, grams: str) -> None:
    assert read(weight(digits, "l/o")).grams == Decimal(grams)


@pytest.mark.parametrize("digits", ["8:16.0", "8.5", "8:", "8:08:5", ":08.5"])
def test_pounds_and_ounces_that_make_no_sense_are_no_mass(digits: str) -> None:
    assert read(weight(digits, "l/o")).grams is None


def test_a_motion_letter_that_is_neither_says_nothing() -> None:
    assert read(weight(motion="x")).stable is None


@settings(deadline=None)
@given(st.binary(min_size=18, max_size=18).filter(lambda body: not set(b"\n\r") & set(body)))
def test_a_reading_has_either_a_mass_or_a_reason(body: bytes) -> None:
    reply = decode(body)
    if isinstance(reply, Weight):
        reading = reading_of(reply, raw=body, at=0.0, balance="")
        assert (reading.grams is None) == (reading.reason is not None)


@pytest.mark.parametrize(
    ("status", "fault"),
    [("E", Fault.ZERO), ("I", Fault.ZERO), ("T", Fault.REPORTED), ("O", None), (" ", None)],
)
def test_a_fault_that_can_be_mended_is_named(status: str, fault: Fault | None) -> None:
    digits = b"----------" if fault else b"     123.4"
    raw = b"\n" + status.encode() + b"1G  " + digits + b"g  \r"
    assert read(raw).fault is fault


def test_a_unit_that_is_none_is_a_fault() -> None:
    assert read(b"\n 1G       123.4pcs\r").fault is Fault.UNIT
