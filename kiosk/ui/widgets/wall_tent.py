"""One big tent for all: every guess hangs on its slope, names stand at both sides."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from kivy.animation import Animation
from kivy.properties import ListProperty, NumericProperty, StringProperty

from kiosk.texts import say
from kiosk.ui.presenters.views import AnswerMark
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tent_shape import TentShape

CLIMB_S = 6.0
NAMES, POINTS = 150, 46  # units: the column of names, and of points beside it
TOP, BELOW = 16, 44
ROW = 1.3  # height of a row of names as a multiple of their type
MARKER = 11


class WallTent(Drawing):
    """`under` and `over` are AnswerMarks, highest first; who finds no row is counted below."""

    follows: ClassVar[tuple[str, ...]] = (
        "under", "over", "band", "left_text", "peak_text", "right_text", "climbed", "name_size",
    )  # fmt: skip

    under = ListProperty([])
    over = ListProperty([])
    band = NumericProperty(0.0)
    left_text = StringProperty("")
    peak_text = StringProperty("")
    right_text = StringProperty("")
    name_size = NumericProperty(theme.second_line)
    climbed = NumericProperty(1.0)

    def climb(self) -> None:
        """Let all markers climb together from the left peg; each stops at its own height."""
        Animation.cancel_all(self, "climbed")
        duration = theme.time(CLIMB_S)
        self.climbed = 0.0 if duration else 1.0
        if duration:
            Animation(climbed=1.0, duration=duration, transition="out_quad").start(self)

    def shape(self) -> TentShape:
        """Where the tent stands."""
        beside = NAMES + POINTS + 24
        base = self.high - BELOW
        return TentShape(beside, base, self.wide - 2 * beside, base - TOP)

    def rows(self) -> int:
        """How many names fit at one side."""
        return max(1, int(self.high / (ROW * self.name_size / theme.u)))

    def paint(self, pencil: Pencil) -> None:
        """Draw tent, markers and names."""
        tent = self.shape()
        self._paint_tent(pencil, tent)
        for marks in (self.under, self.over):
            for each in reversed(marks):  # the highest lie on top
                self._paint_mark(pencil, tent, each)
        if self.climbed >= 1:
            self._paint_names(pencil, tent, self.under, left=True)
            self._paint_names(pencil, tent, self.over, left=False)

    def _paint_tent(self, pencil: Pencil, tent: TentShape) -> None:
        peak, foot = tent.at(1), (tent.x(1), tent.base)
        pencil.fill([tent.at(0), peak, foot], theme.under_t)
        pencil.fill([tent.at(2), peak, foot], theme.over_t)
        for points in (20, 40, 60, 80):
            pencil.stroke(tent.seam(points, rising=True), 1.5, theme.under_seam)
            pencil.stroke(tent.seam(points, rising=False), 1.5, theme.over_seam)
        if self.band:
            low, high = tent.at(1 - self.band), tent.at(1 + self.band)
            pencil.fill([low, peak, high, (high[0], tent.base), (low[0], tent.base)], theme.on_t)
        pencil.stroke([tent.at(0), peak, tent.at(2)], 5, theme.ink)
        pencil.stroke([(tent.x(0) - 10, tent.base), (tent.x(2) + 10, tent.base)], 3, theme.ink)
        size, below = theme.axis, tent.base + 32
        pencil.text(self.left_text, tent.x(0), below, size, theme.ink, anchor="middle")
        pencil.text(self.peak_text, tent.x(1), below, size, theme.ink, bold=True, anchor="middle")
        pencil.text(self.right_text, tent.x(2), below, size, theme.ink, anchor="middle")

    def _paint_mark(self, pencil: Pencil, tent: TentShape, each: AnswerMark) -> None:
        share = min(each.share, 2.0) * min(1.0, self.climbed)
        x, y = tent.at(share)
        there = self.climbed >= 1
        colour = mark.DATA_COLOURS[each.side if there else "under" if share < 1 else "over"]
        if y + MARKER < tent.base:
            pencil.stroke([(x, y), (x, tent.base - 2)], 3, colour)
        pencil.disc(x, y, MARKER + 1.5, theme.ink)
        pencil.disc(x, y, MARKER - 1.5, theme.card)
        mark.SIGNS[each.side if there else "under"](pencil, x, y, MARKER * 0.58, colour)

    def _paint_names(
        self, pencil: Pencil, tent: TentShape, marks: Sequence[AnswerMark], *, left: bool
    ) -> None:
        high, size = ROW * self.name_size / theme.u, self.name_size
        room = self.rows()
        shown = list(marks) if len(marks) <= room else list(marks[: room - 1])
        edge = NAMES if left else self.wide - NAMES
        way = 1 if left else -1
        for row, each in enumerate(shown):
            middle = (row + 0.5) * high
            baseline = middle + 0.36 * size / theme.u
            name_end, points_at = ("right", "left") if left else ("left", "right")
            pencil.text(each.name, edge, baseline, size, theme.ink, bold=True, anchor=name_end,
                        room=NAMES - 8)  # fmt: skip
            pencil.text(each.points, edge + way * 10, baseline, size, theme.ink, bold=True,
                        anchor=points_at, room=POINTS)  # fmt: skip
            start = (edge + way * (POINTS + 14), middle)
            x, y = tent.at(min(each.share, 2.0))
            pencil.stroke([start, (x - way * (MARKER + 3), y)], 2, theme.line)
        if len(shown) < len(marks):
            words = say("answer.more_pairs", count=len(marks) - len(shown))
            baseline = (len(shown) + 0.5) * high + 0.36 * size / theme.u
            pencil.text(words, edge, baseline, theme.label, theme.soft,
                        anchor="right" if left else "left", room=NAMES - 8)  # fmt: skip
