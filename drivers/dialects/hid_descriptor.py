"""A scale's own description of its reports, read as far as the mass needs it.

A report descriptor (Device Class Definition for HID 1.11, section 6.2.2) is a row of items: a byte
that tells kind and length, then the value, low byte first. Page and sizes hold until they are
changed, usages only for the next main item. Of all that a scale may describe only the input report
with weight, scaling, unit and status is looked for; all four must be whole bytes.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from types import MappingProxyType

from drivers.dialects.hid_layout import (
    SCALES_PAGE,
    SCALING,
    STATUS,
    STATUSES,
    UNIT,
    UNITS,
    WEIGHT,
    Field,
    Layout,
)

_LONG_ITEM = 0xFE
_INPUT = 0x80
_MAIN = frozenset({_INPUT, 0x90, 0xB0, 0xA0, 0xC0})  # output, feature, collection and its end
_GLOBAL = MappingProxyType(
    {0x04: "page", 0x14: "lowest", 0x74: "bits", 0x84: "report_id", 0x94: "count"}
)
_LOWEST = 0x14
_PUSH, _POP = 0xA4, 0xB4
_USAGE, _FIRST_USAGE, _LAST_USAGE = 0x08, 0x18, 0x28
_VARIABLE = 0x02  # bit of an input item: the value itself stands there, not the number of a usage
_MOST_USAGES = 256  # of one row; a row without end would fill the memory
_MOST_BYTES = 4  # of one number
_MEANS = MappingProxyType({UNIT: tuple(UNITS), STATUS: tuple(STATUSES)})
_ENTRY_OF = MappingProxyType(dict.fromkeys(UNITS, UNIT) | dict.fromkeys(STATUSES, STATUS))


def layout_of(descriptor: bytes) -> Layout | None:
    """The report that carries the mass; None if none is described, or not in whole bytes.

    Never raises, whatever the bytes.
    """
    reports = _Reports()
    for tag, value in _items(descriptor):
        reports.take(tag, value)
    return reports.layout()


def _items(descriptor: bytes) -> Iterator[tuple[int, bytes]]:
    """Kind and value of each item; ends where the descriptor is torn."""
    at = 0
    while at < len(descriptor):
        prefix = descriptor[at]
        if prefix == _LONG_ITEM:  # none is defined; its second byte says how much to pass over
            at += 3 + sum(descriptor[at + 1 : at + 2])
            continue
        size = (0, 1, 2, 4)[prefix & 3]
        value = descriptor[at + 1 : at + 1 + size]
        if len(value) < size:
            return
        yield prefix & 0xFC, value
        at += 1 + size


@dataclass(frozen=True, slots=True)
class _Globals:
    """What holds until it is changed."""

    page: int = 0
    lowest: int = 0
    bits: int = 0
    report_id: int = 0
    count: int = 0


class _Reports:
    """Follows a descriptor item by item; keeps the length and our fields of each input report."""

    def __init__(self) -> None:
        self._now = _Globals()
        self._pushed: list[_Globals] = []
        self._usages: list[int] = []  # of our page, for the next main item; 0 for another page's
        self._first = 0
        self._bits: dict[int, int] = {}  # length by report id, without the id's own byte
        self._fields: dict[int, dict[int, Field]] = {}  # by report id, then by what stands there

    def take(self, kind: int, value: bytes) -> None:
        """The next item."""
        number = int.from_bytes(value, "little", signed=kind == _LOWEST)
        if kind in _MAIN:
            if kind == _INPUT:
                self._input(variable=bool(number & _VARIABLE))
            self._usages = []
        elif kind in _GLOBAL:
            self._now = replace(self._now, **{_GLOBAL[kind]: number})
        elif kind == _PUSH:
            self._pushed.append(self._now)
        elif kind == _POP and self._pushed:
            self._now = self._pushed.pop()
        elif kind in (_USAGE, _FIRST_USAGE, _LAST_USAGE):
            self._usage(kind, self._ours(number, whole=len(value) == 4))

    def layout(self) -> Layout | None:
        """The first report that has all of weight, scaling, unit and status."""
        for report_id, fields in self._fields.items():
            if fields.keys() >= {WEIGHT, SCALING, UNIT, STATUS}:
                return Layout(
                    report_id=report_id,
                    size=self._size(report_id),
                    longest=max(map(self._size, self._bits)),
                    others=frozenset(self._bits) - {report_id},
                    status=fields[STATUS],
                    unit=fields[UNIT],
                    scaling=replace(fields[SCALING], signed=True),
                    weight=fields[WEIGHT],
                )
        return None

    def _ours(self, number: int, *, whole: bool) -> int:
        """A usage without its page; 0 if it is of another one. A whole usage names its page."""
        page, usage = (number >> 16, number & 0xFFFF) if whole else (self._now.page, number)
        return usage if page == SCALES_PAGE else 0

    def _usage(self, kind: int, usage: int) -> None:
        if kind == _FIRST_USAGE:
            self._first = usage
        elif kind == _LAST_USAGE:
            self._usages += range(self._first, min(usage + 1, self._first + _MOST_USAGES))
        else:
            self._usages.append(usage)

    def _input(self, *, variable: bool) -> None:
        now = self._now
        begin = self._bits.get(now.report_id, 0)
        self._bits[now.report_id] = begin + now.bits * now.count
        for place, usage in enumerate(self._usages):
            if usage in (WEIGHT, SCALING) and variable and place < now.count:
                self._keep(usage, begin + place * now.bits, signed=now.lowest < 0)
            elif usage in _MEANS and place < (now.count if variable else 1):
                # The field is named as such: its numbers can only be those of the tables.
                self._keep(usage, begin + place * now.bits, usages=_MEANS[usage])
            elif usage in _ENTRY_OF and not variable and now.count == 1:
                entries = tuple(self._usages)
                self._keep(_ENTRY_OF[usage], begin, usages=entries, lowest=now.lowest)

    def _keep(
        self,
        what: int,
        begin: int,
        *,
        signed: bool = False,
        usages: tuple[int, ...] = (),
        lowest: int = 1,
    ) -> None:
        """Note the first field for ``what``, if it is whole bytes."""
        report_id = self._now.report_id
        size, odd_bits = divmod(self._now.bits, 8)
        if begin % 8 == 0 and not odd_bits and 0 < size <= _MOST_BYTES:
            offset = begin // 8 + bool(report_id)
            field = Field(offset, size, signed=signed, usages=usages, lowest=lowest)
            self._fields.setdefault(report_id, {}).setdefault(what, field)

    def _size(self, report_id: int) -> int:
        return -(-self._bits[report_id] // 8) + bool(report_id)
