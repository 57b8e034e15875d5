"""The lines of a balance as they come, with what was found in them tinted."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import BooleanProperty, ListProperty, StringProperty

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil, mono_width

MOST_ROWS = 5
PAD, LEFT, RIGHT = 10, 20, 18  # units around the rows
AGO_WIDE = 92
ROW_PX, LARGEST_ROW = 22, 33  # no row is lower in pixels, none higher in units
TYPE_SHARE = 0.8  # of a row's height
CUT = "\N{HORIZONTAL ELLIPSIS}"
TINTS: dict[str, Colour] = {
    "number": theme.lamp,
    "unit": theme.on_t,
    "still": theme.act_t,
    "moving": theme.over_t,
}


class RawLines(Drawing):
    """``rows`` are LineViews, oldest first; as many of the newest show as there is room for.

    Where lines are too long for the widget, the part around the number shows.
    """

    follows: ClassVar[tuple[str, ...]] = ("rows", "nothing")

    rows = ListProperty([])
    nothing = StringProperty("")  # said while there is no line

    def paint(self, pencil: Pencil) -> None:
        """Draw the ground and the rows."""
        pencil.box(0, 0, self.wide, self.high, 14, theme.lid)
        inside = self.high - 2 * PAD
        fit = max(1, min(MOST_ROWS, int(inside * pencil.unit // ROW_PX)))
        step = min(inside / fit, LARGEST_ROW)
        rows = self.rows[-fit:]
        if not rows:
            self._write(pencil, self.nothing, LEFT, self.high / 2, theme.label)
            return
        size = int(min(theme.body * 1.1, step * pencil.unit * TYPE_SHARE))
        room = int((self.wide - LEFT - RIGHT - AGO_WIDE) * pencil.unit)
        longest = max(len(row.text) for row in rows)
        size = max(
            int(theme.text_floor), min(size, int(size * room / (longest * mono_width(size))))
        )
        start, end = shown_part(rows, int(room // mono_width(size)))
        top = (self.high - step * len(rows)) / 2
        for place, row in enumerate(rows):
            self._row(pencil, row, top + step * (place + 0.5), step, size, (start, end))

    def _row(
        self, pencil: Pencil, row: Any, middle: float, step: float, size: int, part: tuple[int, int]
    ) -> None:
        each, (start, end) = mono_width(size) / pencil.unit, part
        baseline = middle + CAP / 2 * size / pencil.unit
        tints: list[Colour | None] = [None] * len(row.text)
        for span in row.spans:
            tint = TINTS.get(span.kind)
            tints[span.start : span.end] = [tint] * (span.end - span.start)
            left, right = max(span.start, start), min(span.end, end)
            if left >= right:
                continue
            box = (LEFT + (left - start) * each - 1, middle - step / 2 + 1.5,
                   (right - left) * each + 2, step - 3)  # fmt: skip
            if tint is not None:
                pencil.box(*box, 4, tint)
            else:
                pencil.frame(*box, 3, 1.2, theme.hair)
        for left, right, tint in _runs(tints, start, min(end, len(row.text))):
            words = _cut(row.text, left, right, part)
            colour = theme.sheet if tint is None else theme.ink
            pencil.mono(words, LEFT + (left - start) * each, baseline, size, colour)
        weight = {"bold": True} if row.newest else {}
        self._write(pencil, row.ago, self.wide - RIGHT, middle, theme.axis, anchor="right",
                    room=AGO_WIDE - 8, **weight)  # fmt: skip

    def _write(
        self, pencil: Pencil, words: str, x: float, middle: float, size: float, **look: Any
    ) -> None:
        baseline = middle + CAP / 2 * size / pencil.unit
        look.setdefault("room", self.wide - LEFT - RIGHT)
        pencil.text(words, x, baseline, size, theme.sheet, **look)


class FindingChip(Drawing):
    """One finding below the lines: its tint, its name, its own characters, a tick once found.

    ``raw`` if the characters came so in the lines: then they stand in the type of the lines.
    """

    follows: ClassVar[tuple[str, ...]] = ("kind", "name", "text", "raw", "found")

    kind = StringProperty("number")
    name = StringProperty("")
    text = StringProperty("")
    raw = BooleanProperty(True)
    found = BooleanProperty(False)

    def paint(self, pencil: Pencil) -> None:
        """Draw the ground, the tint, the words and the tick."""
        pencil.box(0, 0, self.wide, self.high, 12, theme.kraft)
        half, middle = min(14.0, self.high * 0.3), self.high / 2
        pencil.box(14, middle - half, 2 * half, 2 * half, 6, TINTS[self.kind])
        pencil.frame(14, middle - half, 2 * half, 2 * half, 6, 2, theme.ink)
        baseline = middle + CAP / 2 * theme.label / pencil.unit
        left = 56 + pencil.text(self.name, 56, baseline, theme.label, theme.ink) + 8
        right = self.wide - 14
        if self.found:
            mark.badge(pencil, "tick", right - 12, middle, 12)
            right -= 34
        if self.raw:
            self._characters(pencil, left, right, middle)
        else:
            pencil.text(self.text, right, baseline, theme.label, theme.ink, anchor="right",
                        room=right - left)  # fmt: skip

    def _characters(self, pencil: Pencil, left: float, right: float, middle: float) -> None:
        size = mono_size(self.text, int(theme.body * 0.95), (right - left) * pencil.unit)
        x = right - len(self.text) * mono_width(size) / pencil.unit
        baseline = middle + CAP / 2 * size / pencil.unit
        pencil.mono(self.text, x, baseline, size, theme.ink)


def mono_size(text: str, largest: int, room: float) -> int:
    """The size, not above ``largest``, in which ``text`` fits ``room`` pixels."""
    size = largest
    while size > 1 and len(text) * mono_width(size) > room:
        size -= 1
    return size


def shown_part(rows: list[Any], room: int) -> tuple[int, int]:
    """Which characters show where only ``room`` of them fit: those around the newest number."""
    longest = max(len(row.text) for row in rows)
    if longest <= room:
        return 0, longest
    numbers = [s.end for row in rows for s in row.spans if s.kind in TINTS]
    needed = max(numbers, default=0) + 1
    start = min(max(0, needed - room), longest - room)
    return start, start + room


def _cut(text: str, left: int, right: int, part: tuple[int, int]) -> str:
    """Characters ``left`` to ``right``, with a sign where the line goes on beyond what shows."""
    words, (start, end) = text[left:right], part
    if left == start > 0:
        words = CUT + words[1:]
    if right == end < len(text):
        words = words[:-1] + CUT
    return words


def _runs(tints: list[Colour | None], start: int, end: int) -> list[tuple[int, int, Colour | None]]:
    """Neighbours of one tint together."""
    runs: list[tuple[int, int, Colour | None]] = []
    for at in range(start, end):
        if runs and runs[-1][2] == tints[at]:
            runs[-1] = (runs[-1][0], at + 1, tints[at])
        else:
            runs.append((at, at + 1, tints[at]))
    return runs
