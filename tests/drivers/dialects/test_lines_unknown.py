"""Lines of balances of which nothing is known.

The ten kinds of line are those that public manuals of instruments show; all numbers are invented.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from drivers.dialects import make_dialect
from drivers.events import LineUnreadable, ReadingReceived
from drivers.packet import Packet
from drivers.reading import Basis, Fault, Range, Reading

NO_UNIT = "the number has no unit"
OVER = "there is more on the pan than the balance can weigh"
# line: value, grams, stable, reason
TEN_KINDS: dict[bytes, tuple[str | None, str | None, bool | None, str | None]] = {
    b"ST,+00123.45  g\r\n": ("123.45", "123.45", True, None),
    b"US,-00000.12  g\r\n": ("-0.12", "-0.12", False, None),
    b"OL,+9999999E+19\r\n": (None, None, None, OVER),
    b"+     87.30 g  \r\n": ("87.30", "87.30", None, None),
    b"+     87.3[1]  \r\n": ("87.31", None, False, NO_UNIT),
    b"    12.041 g \r\n": ("12.041", "12.041", None, None),
    b"-    0,35 g\r": ("-0.35", "-0.35", None, None),
    b"S D      45.12 g\r\n": ("45.12", "45.12", False, None),
    b"001500\r": ("1500", None, None, NO_UNIT),
    b"ST,GS,+  0.254kg\r\n": ("0.254", "254.000", True, None),
}


def heard(data: bytes) -> list[Any]:
    dialect = make_dialect("lines", "here")
    dialect.feed(Packet(0.0, b"\r"))  # what comes next begins a line
    return dialect.feed(Packet(1.0, data))


def reading(data: bytes) -> Reading:
    [event] = heard(data)
    assert isinstance(event, ReadingReceived)
    return event.reading


def text(value: Decimal | None) -> str | None:
    return None if value is None else str(value)


@pytest.mark.parametrize("line", TEN_KINDS)
def test_the_ten_kinds_of_line_are_read(line: bytes) -> None:
    told = reading(line)
    assert (text(told.value), text(told.grams), told.stable, told.reason) == TEN_KINDS[line]


def test_a_reading_keeps_its_line_its_time_and_its_balance() -> None:
    told = reading(b"ST,+00123.45  g\r\n")
    assert (told.raw, told.at, told.balance) == (b"ST,+00123.45  g", 1.0, "here")


@pytest.mark.parametrize(
    ("line", "where"),
    [
        (b"12.3 g\r", Range.IN_RANGE),
        (b"-12.3 g\r", Range.UNDER),
        (b"-0.0 g\r", Range.IN_RANGE),
        (b"OL\r", Range.OVER),
        (b"ST,   H   g\r", Range.OVER),
        (b"UL\r", Range.UNDER),
        (b"   L\r", Range.UNDER),
        (b"12.3 pcs\r", Range.UNUSABLE),
    ],
)
def test_where_the_number_lies(line: bytes, where: Range) -> None:
    assert reading(line).range is where


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        (b"12.3\r", NO_UNIT),
        (b"12.3 pcs\r", "unknown unit 'pcs'"),
        (b"12.3 T\r", "unknown unit 'T'"),
        (b"ST,-------- g\r", "the balance shows no number"),
        (b"Err 5\r", "the balance reports an error (Err)"),
        (b"E01\r", "the balance reports an error (E01)"),
        (b"ST,99999.99 g OL\r", OVER),
        (b"1,234.5 g\r", "there are several numbers in the line"),
        (b"1 234.5 g\r", "there are several numbers in the line"),
        (b"12.3 g 0.43 oz\r", "there are several numbers in the line"),
        (b"12.3- g\r", "it cannot be told whether the number has a minus sign"),
        (b"-;12.3 g\r", "it cannot be told whether the number has a minus sign"),
        (b"--12.3 g\r", "it cannot be told whether the number has a minus sign"),
        (b"1234567890123456 g\r", "the number cannot be read"),
    ],
)
def test_what_gives_no_mass_says_why(line: bytes, reason: str) -> None:
    told = reading(line)
    assert (told.grams, told.reason) == (None, reason)


@pytest.mark.parametrize("line", [b"READY\r", b"12.3\xff g\r", b"   \r", b"ST, g\r"])
def test_what_is_no_line_of_a_balance_is_no_reading(line: bytes) -> None:
    assert [type(event) for event in heard(line)] == [LineUnreadable]


@pytest.mark.parametrize(
    ("line", "basis"),
    [
        (b"ST,GS, 12.3 g\r", Basis.GROSS),
        (b"ST,NT, 12.3 g\r", Basis.NET),
        (b"12.3 g net\r", Basis.NET),
        (b"N 12.3 g\r", None),
        (b"GS NT 12.3 g\r", None),
    ],
)
def test_gross_and_net_are_told_by_their_words(line: bytes, basis: Basis | None) -> None:
    assert reading(line).basis is basis


@pytest.mark.parametrize(
    ("line", "stable"),
    [
        (b"S S 12.3 g\r", True),
        (b"S 12.3 g\r", True),
        (b"ST,GS,12.3 g\r", True),
        (b"12.3 g S\r", True),
        (b"12.3 g M\r", False),
        (b"12.3gD\r", False),
        (b"ST 12.3 g M\r", None),
        (b"12.3[4] g\r", None),
        (b"ID 12.3 g\r", None),
    ],
)
def test_rest_is_told_by_words_before_or_behind(line: bytes, stable: bool | None) -> None:
    assert reading(line).stable is stable


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        (b"001500\r", Fault.UNIT),
        (b"12.3 pcs\r", Fault.UNIT),
        (b"CAL\r", Fault.CALIBRATION),
        (b"Calibrate\r", Fault.CALIBRATION),
        (b"Err 4\r", Fault.REPORTED),
        (b"OL\r", None),
        (b"ST,+00123.45  g\r\n", None),
    ],
)
def test_a_fault_that_can_be_mended_is_named(line: bytes, fault: Fault | None) -> None:
    assert reading(line).fault is fault
