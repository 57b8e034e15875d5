"""What the pan showed in the last ten seconds, and since when it is stable."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import ObjectProperty

from kiosk.ui.presenters.views import TraceView
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.geometry import Point
from kiosk.ui.widgets.pencil import Pencil, text_width

COLUMNS, ROWS = 10, 4  # of the grid: one column a second
MARGIN = 4  # units over and under the outermost values
WORDS_LEFT = 82  # units for the names of the axis
BADGE = 10


class PanTrace(Drawing):
    """`view` is a TraceView."""

    follows: ClassVar[tuple[str, ...]] = ("view",)

    view = ObjectProperty(TraceView())

    def bounds(self) -> tuple[float, float, float]:
        """Left and right edge of the plot and its height, in units."""
        return WORDS_LEFT, self.wide, max(self.high - theme.axis * 1.35 / theme.u, 1)

    def place(self, across: float, up: float) -> Point:
        """Where a point of the trace lies, in units."""
        left, right, high = self.bounds()
        return left + across * (right - left), high - MARGIN - up * (high - 2 * MARGIN)

    def paint(self, pencil: Pencil) -> None:
        """Draw ground, grid, trace and words."""
        left, right, high = self.bounds()
        pencil.box(left, 0, right - left, high, 0, theme.card)
        if self.view.stable is not None:
            start = self.place(self.view.stable, 0)[0]
            pencil.box(start, 0, right - start, high, 0, theme.kraft)
        self._paint_grid(pencil, left, right, high)
        points = [self.place(*point) for point in self.view.points]
        if len(points) > 1:
            pencil.stroke(points, 4, theme.ink)
        if self.view.stable is not None:
            self._paint_rest(pencil, right, high)
        self._paint_words(pencil, left, right, high)

    def _paint_grid(self, pencil: Pencil, left: float, right: float, high: float) -> None:
        for column in range(COLUMNS + 1):
            x = left + (right - left) * column / COLUMNS
            pencil.box(x - 0.75, 0, 1.5, high, 0, theme.grid)
        for row in range(ROWS):
            y = self.place(0, row / (ROWS - 1))[1]
            pencil.box(left, y - 0.75, right - left, 1.5, 0, theme.grid)

    def _paint_rest(self, pencil: Pencil, right: float, high: float) -> None:
        assert self.view.stable is not None
        start = self.place(self.view.stable, 0)[0]
        pencil.box(start - 1, 0, 2, high, 0, theme.ink)
        middle, size = self._free_height(high), theme.axis
        mark.badge(pencil, "tick", min(start, right - BADGE), middle, BADGE)
        words = self.view.stable_text
        if text_width(words, size) / pencil.unit <= right - start - 2 * BADGE - 8:
            pencil.text(words, start + 2 * BADGE, middle + CAP / 2 * size / pencil.unit, size,
                        theme.ink)  # fmt: skip

    def _free_height(self, high: float) -> float:
        """Where words do not lie on the trace: low under a high one, high over a low one."""
        level = self.view.points[-1][1] if self.view.points else 0.0
        return high * (0.75 if level > 0.5 else 0.25)

    def _paint_words(self, pencil: Pencil, left: float, right: float, high: float) -> None:
        size, unit = theme.axis, pencil.unit
        drop, cap = CAP / 2 * size / unit, CAP * size / unit
        pencil.text(self.view.top, left - 8, cap, size, theme.ink, anchor="right",
                    room=left - 8)  # fmt: skip
        pencil.text(self.view.bottom, left - 8, high - MARGIN + drop, size, theme.ink,
                    anchor="right", room=left - 8)  # fmt: skip
        below = high + size / unit
        pencil.text(self.view.ago_text, left, below, size, theme.soft)
        pencil.text(self.view.now_text, right, below, size, theme.ink, bold=True, anchor="right")
