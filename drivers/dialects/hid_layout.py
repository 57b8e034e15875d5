"""Where the mass stands in the reports of a HID scale: positions, sizes, and what numbers mean.

Numbers of the Scales page are those of HID Usage Tables 1.7, section 33 (before that HID Point of
Sale Usage Tables 1.02).
"""

from __future__ import annotations

from dataclasses import dataclass

SCALES_PAGE = 0x8D
WEIGHT, SCALING = 0x40, 0x41
UNIT, UNITS = 0x50, range(0x51, 0x5D)  # the field, and what it may name
STATUS, STATUSES = 0x70, range(0x71, 0x79)


@dataclass(frozen=True, slots=True)
class Field:
    """Whole bytes of a report, the lowest first; ``offset`` counts from the report's beginning.

    With ``usages`` the number says which of them holds, the first being number ``lowest``.
    """

    offset: int
    size: int
    signed: bool = False
    usages: tuple[int, ...] = ()
    lowest: int = 1

    def number(self, report: bytes) -> int:
        """The number that stands there."""
        part = report[self.offset : self.offset + self.size]
        return int.from_bytes(part, "little", signed=self.signed)

    def usage(self, report: bytes) -> int | None:
        """The usage that holds; None if the number stands for none."""
        place = self.number(report) - self.lowest
        return self.usages[place] if 0 <= place < len(self.usages) else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """The one report that carries the mass.

    ``report_id`` is its first byte, 0 if reports have none; ``size`` its bytes with the id;
    ``longest`` the bytes of the longest input report; ``others`` the ids of the other ones.
    """

    report_id: int
    size: int
    longest: int
    others: frozenset[int]
    status: Field
    unit: Field
    scaling: Field
    weight: Field


# What scales send that follow the usage tables to the letter: id 3 for data, id 4 for status.
STANDARD = Layout(
    report_id=3,
    size=6,
    longest=6,
    others=frozenset({4}),
    status=Field(1, 1, usages=tuple(STATUSES)),
    unit=Field(2, 1, usages=tuple(UNITS)),
    scaling=Field(3, 1, signed=True),
    weight=Field(4, 2),
)
