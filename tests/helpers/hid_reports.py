"""Reports and report descriptors of HID scales: published ones, and made ones.

Numbers of usages are those of HID Usage Tables 1.7, section 33; 0x1209:0x0001 is the vendor and
product that pid.codes sets aside for tests.
"""

from __future__ import annotations

from typing import NamedTuple

FAULT, AT_ZERO, MOVING, STABLE, BELOW_ZERO, TOO_MUCH, UNCALIBRATED, ZERO_GONE = range(1, 9)
MG, GRAM, KG, CARAT, TAEL, GRAIN, DWT, METRIC_TON, AVOIR_TON, OZT, OZ, LB = range(1, 13)


class Published(NamedTuple):
    """A report, and what it says."""

    hexadecimal: str
    value: str
    unit: str
    grams: str
    stable: bool


PUBLISHED = {
    # A note on a USB scale interface, antradar.com, 2 August 2017; it does not print the status.
    "20 grams": Published("03 04 02 00 14 00", "20", "g", "20", True),
    "645.2 ounces": Published("03 04 0B FF 34 19", "645.2", "oz", "18291.1123202500", True),
    # "How do I zero a USB scale using WebHID", a question answered on the web: whole as printed.
    "4.8 pounds at zero": Published("03 02 0C FF 30 00", "4.8", "lb", "2177.243376", True),
    # An issue thread of a public reader of HID scales prints the values; the frame is built here.
    "28.3 ounces": Published("03 04 0B FF 1B 01", "28.3", "oz", "802.2915044375", True),
}


def report(
    status: int = STABLE, unit: int = GRAM, power: int = 0, weight: int = 0, report_id: int = 3
) -> bytes:
    """A data report in the standard layout."""
    scaling = power.to_bytes(1, "little", signed=True)
    return bytes([report_id, status, unit]) + scaling + weight.to_bytes(2, "little")


# Constructed: the smallest descriptor whose only report is the standard one.
SMALLEST = bytes.fromhex(
    "058D 0920 A101 0932 A102 8503 7508 9501 1501 2508 0970 A102 1971 2978 8100 C0"
    "250C 0950 A102 1951 295C 8100 C0 1581 257F 0941 8102 7510 1500 27FFFF0000 0940 8102 C0 C0"
)

PAGE, USAGE, FIRST, LAST = 0x04, 0x08, 0x18, 0x28
LOWEST, BITS, REPORT_ID, COUNT = 0x14, 0x74, 0x84, 0x94
INPUT, OUTPUT, FEATURE, COLLECTION, END = 0x80, 0x90, 0xB0, 0xA0, 0xC0
PUSH, POP = 0xA4, 0xB4
ARRAY, CONSTANT, VARIABLE = 0x00, 0x01, 0x02


def item(kind: int, number: int | None = None) -> bytes:
    """One item of a descriptor, its value in as few bytes as hold it."""
    if number is None:
        return bytes([kind])
    for code, size in ((1, 1), (2, 2), (3, 4)):
        try:
            value = number.to_bytes(size, "little", signed=number < 0)
        except OverflowError:
            continue
        return bytes([kind | code]) + value
    raise ValueError(number)


def items(*pairs: tuple[int, int | None]) -> bytes:
    """Several items in a row."""
    return b"".join(item(kind, number) for kind, number in pairs)


def scale(*reports: bytes) -> bytes:
    """A whole descriptor of a scale around the reports."""
    return items((PAGE, 0x8D), (USAGE, 0x20), (COLLECTION, 1)) + b"".join(reports) + item(END)


def identified(report_id: int) -> bytes:
    """What follows belongs to that report."""
    return item(REPORT_ID, report_id)


def array(first: int, last: int, lowest: int = 1, main: int = INPUT) -> bytes:
    """A byte that says which usage of a row holds."""
    return items(
        (LOWEST, lowest), (BITS, 8), (COUNT, 1), (FIRST, first), (LAST, last), (main, ARRAY)
    )


def variable(usage: int, bits: int, lowest: int = 0, main: int = INPUT, count: int = 1) -> bytes:
    """A number."""
    return items((LOWEST, lowest), (BITS, bits), (COUNT, count), (USAGE, usage), (main, VARIABLE))


def padding(bits: int) -> bytes:
    """Bits without a meaning."""
    return items((BITS, 1), (COUNT, bits), (INPUT, CONSTANT))


STATUS = array(0x71, 0x78)
UNIT = array(0x51, 0x5C)
SCALING = variable(0x41, 8, lowest=-127)
WEIGHT = variable(0x40, 16)
DATA = STATUS + UNIT + SCALING + WEIGHT


def _other_page(bits: int, count: int, main: int) -> bytes:
    return items((PAGE, 0xFF00), (USAGE, 1), (BITS, bits), (COUNT, count), (main, VARIABLE))


# Constructed with the ids, kinds and sizes of a published descriptor of 221 bytes (a public sketch
# for a microcontroller): 1 attribute, feature of 2 bytes; 2 control, output of 1; 3 data, input of
# 5; 5 weight limit and 6 statistics, features of 4; 7, the maker's own, feature of 15.
SIX_REPORTS = scale(
    identified(1),
    array(0x22, 0x2A, main=FEATURE),
    array(0x51, 0x5C, main=FEATURE),
    identified(2),
    variable(0x81, 1, main=OUTPUT),
    variable(0x80, 1, main=OUTPUT),
    variable(0x00, 6, main=OUTPUT),
    identified(3),
    DATA,
    identified(5),
    array(0x51, 0x5C, main=FEATURE),
    variable(0x41, 8, lowest=-127, main=FEATURE),
    variable(0x40, 16, main=FEATURE),
    identified(6),
    variable(0x60, 16, main=FEATURE),
    variable(0x61, 16, main=FEATURE),
    identified(7),
    _other_page(8, 15, FEATURE),
)
