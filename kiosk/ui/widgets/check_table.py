"""The rows of a check: known mass, shown, off by, limit, verdict."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import ListProperty

from kiosk.ui.presenters.views import CheckRowView
from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.verdict_mark import draw_verdict

GAP = 5  # units between two rows
INSET = 12
MOST_HIGH = 60  # units of a row; few rows stay at the top
# right edges of the columns "shown", "off by" and "limit", as shares of the width
SHOWN, OFF, LIMIT = 0.445, 0.59, 0.71
BADGE = 12


class CheckTable(Drawing):
    """`rows` are CheckRowViews, `head` the words over the first four columns."""

    follows: ClassVar[tuple[str, ...]] = ("rows", "head")

    rows = ListProperty([])
    head = ListProperty([])

    def row_high(self) -> float:
        """Height of one row in units."""
        count = max(1, len(self.rows))
        return min(MOST_HIGH, (self.high - self._head_high() - GAP * (count - 1)) / count)

    def _head_high(self) -> float:
        return theme.label * 1.35 / theme.u if self.head and self.rows else 0.0

    def paint(self, pencil: Pencil) -> None:
        """Draw head and rows."""
        if not self.rows:
            return
        self._paint_head(pencil)
        for index, row in enumerate(self.rows):
            top = self._head_high() + index * (self.row_high() + GAP)
            self._paint_row(pencil, row, top, self.row_high())

    def _paint_head(self, pencil: Pencil) -> None:
        baseline = theme.label / pencil.unit
        ends = (None, SHOWN, OFF, LIMIT)
        before = 0.0
        for words, end in zip(self.head, ends, strict=False):
            if end is None:
                pencil.text(words, INSET, baseline, theme.label, theme.soft,
                            room=(SHOWN - 0.17) * self.wide - INSET)  # fmt: skip
                before = SHOWN - 0.17
                continue
            room = (end - before) * self.wide - 6
            pencil.text(words, end * self.wide, baseline, theme.label, theme.soft, anchor="right",
                        room=room)  # fmt: skip
            before = end

    def _paint_row(self, pencil: Pencil, row: CheckRowView, top: float, high: float) -> None:
        ground = theme.card if row.now else theme.kraft
        pencil.box(0, top, self.wide, high, 10, ground)
        if row.now:
            pencil.frame(0, top, self.wide, high, 10, 3, theme.ink)
        middle = top + high / 2
        self._paint_name(pencil, row, top, high)
        columns = ((row.shown, SHOWN, True), (row.off, OFF, False), (row.limit, LIMIT, False))
        for words, end, bold in columns:
            pencil.text(words, end * self.wide, middle + _drop(theme.body, pencil.unit), theme.body,
                        theme.ink, bold=bold, anchor="right", room=0.14 * self.wide)  # fmt: skip
        self._paint_verdict(pencil, row, middle)

    def _paint_name(self, pencil: Pencil, row: CheckRowView, top: float, high: float) -> None:
        room = (SHOWN - 0.13) * self.wide - INSET
        unit, middle = pencil.unit, top + high / 2
        # A row too low for two lines keeps the name alone: smaller words could not be read.
        note = row.note if (theme.body + theme.axis) * 1.2 / unit <= high else ""
        shift = -0.55 * theme.axis / unit if note else 0
        pencil.text(row.name, INSET, middle + shift + _drop(theme.body, unit), theme.body,
                    theme.ink, room=room)  # fmt: skip
        base = middle + 0.55 * theme.body / unit + _drop(theme.axis, unit)
        pencil.text(note, INSET, base, theme.axis, theme.ink, room=room)

    def _paint_verdict(self, pencil: Pencil, row: CheckRowView, middle: float) -> None:
        if not row.verdict:
            return
        end = self.wide - INSET
        size = theme.label
        wide = pencil.text(
            row.verdict_text, end, middle + _drop(size, pencil.unit), size, theme.ink, bold=True,
            anchor="right", room=end - LIMIT * self.wide - 2 * BADGE - 16,
        )  # fmt: skip
        draw_verdict(pencil, row.verdict, end - wide - BADGE - 6, middle, BADGE)


def _drop(size: float, unit: float) -> float:
    """From the middle of a line down to its baseline, in units."""
    return CAP / 2 * size / unit
