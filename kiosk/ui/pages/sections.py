"""Sections of many rows, so that nobody turns through a hundred pages to get to one of them."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Callable, Sequence
from itertools import count, groupby
from typing import TypeVar, overload

from kiosk.texts import say
from kiosk.ui.presenters.page_views import RowView

T = TypeVar("T")
Section = tuple[int, int]  # the numbers of the first and the last section that are in it

MOST_PAGES = 2  # that are turned; what needs more is divided


class Each(Sequence[RowView]):
    """One row for each thing, made when it is looked at: most are on pages that nobody sees."""

    def __init__(self, things: Sequence[T], row: Callable[[T], RowView]) -> None:
        self._row: Callable[[int], RowView] = lambda place: row(things[place])
        self._places = range(len(things))

    def __len__(self) -> int:
        return len(self._places)

    @overload
    def __getitem__(self, place: int) -> RowView: ...

    @overload
    def __getitem__(self, place: slice) -> Sequence[RowView]: ...

    def __getitem__(self, place: int | slice) -> RowView | Sequence[RowView]:
        if isinstance(place, slice):
            return [self._row(each) for each in self._places[place]]
        return self._row(self._places[place])


def sections(numbers: Sequence[int], a_page: int) -> list[Section]:
    """Between which to choose first, where ``a_page`` rows fit on a page; none for few rows.

    ``numbers`` tell for each row in which section it stands, rising from 1; 0 is one by itself.
    Sections that do not fit on a page come in bundles of 2, 5, 10, 20 and so on.
    """
    if len(numbers) <= MOST_PAGES * a_page or numbers[0] == numbers[-1]:
        return []
    found = list(dict.fromkeys(numbers))
    sizes = (digit * 10**power for power in count() for digit in (1, 2, 5))
    return next(fit for size in sizes if len(fit := _bundles(found, size)) <= a_page)


def _bundles(numbers: Sequence[int], size: int) -> list[Section]:
    together = [list(each) for _, each in groupby(numbers, lambda number: (number - 1) // size)]
    return [(each[0], each[-1]) for each in together]


class Path:
    """The sections that were gone into, each one inside the one before."""

    def __init__(self) -> None:
        self._inside: list[Section] = []

    @property
    def now(self) -> Section | None:
        """The one that is open, None outside of all."""
        return self._inside[-1] if self._inside else None

    def enter(self, section: Section) -> None:
        """Go into one."""
        self._inside.append(section)

    def leave(self) -> None:
        """Out of the one that is open."""
        self._inside.pop()

    def rows(self, numbers: Sequence[int]) -> slice:
        """The rows of the open one; where none is left there, of the one around it."""
        while self._inside:
            first, last = self._inside[-1]
            inside = slice(bisect_left(numbers, first), bisect_right(numbers, last))
            if inside.start < inside.stop:
                return inside
            self._inside.pop()
        return slice(0, None)


def sittings_row(section: Section) -> RowView:
    """The row of a section of sittings."""
    first, last = section
    words = "rows.sitting" if first == last else "rows.sittings"
    return RowView(text=say(words, first=first, last=last))


def in_order(text: str) -> tuple[tuple[int, str], ...]:
    """What sorts texts as people do: whatever the capitals, 2 before 10."""
    parts = re.findall(r"[0-9]+|[^0-9]+", text.casefold())
    return tuple((int(part), "") if part.isdecimal() else (-1, part) for part in parts)
