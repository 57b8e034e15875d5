"""The table of results: places, teams, seven scores as numbers or tents, totals, sure places."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, ObjectProperty

from kiosk.ui.presenters.result_views import ROWS, ResultLine, ResultsView
from kiosk.ui.presenters.result_words import ScoreMark
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.cut_words import cut_words
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil, text_width
from kiosk.ui.widgets.small_tent import draw_small_tent
from kiosk.ui.widgets.tappable import Tappable
from kiosk.ui.widgets.tent_shape import TentShape

PLACE, NAME_AT, TOTAL, GAP = 30.0, 60.0, 84.0, 6.0  # units
PLACE_BIG, NAME_AT_BIG, TOTAL_BIG = 42.0, 78.0, 104.0
NAME_SHARE, NAME_SHARE_BESIDE_RANGES = 0.18, 0.112  # of the width
RANGES = 0.24
MOST_HIGH, MOST_HIGH_BIG, SUM_HIGH, HEAD = 34.0, 56.0, 25.0, 1.35
TENT = 72.0
SMALL_MARK = 5.5
SMALLEST_SHARE = 0.84  # of the size of a name, before it is cut
STAR = 0.75  # size of the sign of a correction, as share of the number's
PILL = 9.0  # half the height of the range of places


class ResultsTable(Tappable, Drawing):
    """Follows a ResultsView; ``big`` for the wall."""

    follows: ClassVar[tuple[str, ...]] = ("view", "big")

    view = ObjectProperty(ResultsView())
    big = BooleanProperty(False)

    # Measures ---------------------------------------------------------------------------------

    def _sizes(self) -> tuple[float, float]:
        """The type of a row and of a head, in pixels."""
        if not self.big:
            return theme.step_name, theme.label
        return min(theme.second_line, 0.66 * self._row_high() * theme.u), theme.body

    def _head_high(self) -> float:
        return HEAD * (theme.body if self.big else theme.label) / theme.u

    def _row_high(self) -> float:
        room = self.high - self._head_high() - SUM_HIGH * len(self.view.sums)
        return min(MOST_HIGH_BIG if self.big else MOST_HIGH, room / ROWS)

    def _places(self) -> tuple[float, float, float]:
        """Right edge of places, left edge of names, width of totals."""
        big = (PLACE_BIG, NAME_AT_BIG, TOTAL_BIG)
        return big if self.big else (PLACE, NAME_AT, TOTAL)

    def _name_room(self) -> float:
        share = NAME_SHARE_BESIDE_RANGES if self.view.ranges else NAME_SHARE
        return share * self.wide

    def _ranges_at(self) -> float:
        return self.wide * (1 - RANGES) if self.view.ranges else self.wide

    def _total_end(self) -> float:
        return self._ranges_at() - (18 if self.view.ranges else 14)

    def _column(self, place: int) -> tuple[float, float]:
        """Left edge and width of a column of scores."""
        _, name_at, total = self._places()
        first = name_at + self._name_room() + GAP
        wide = (self._total_end() - total - first) / 7
        return first + place * wide, wide

    # Painting ---------------------------------------------------------------------------------

    def paint(self, pencil: Pencil) -> None:
        """Draw heads, teams, and the last rows."""
        if not self.view.heads:
            return
        self._paint_heads(pencil)
        top, high = self._head_high(), self._row_high()
        for number, line in enumerate(self.view.lines):
            if number % 2 == 0:
                pencil.box(0, top, self.wide, high, 8, theme.kraft)
            self._paint_line(pencil, line, top + high / 2)
            top += high
        for name, scores in self.view.sums:
            self._paint_sum(pencil, name, scores, top + SUM_HIGH / 2)
            top += SUM_HIGH

    def _paint_heads(self, pencil: Pencil) -> None:
        size = self._sizes()[1]
        baseline = self._head_high() - 0.3 * size / theme.u
        team, *tasks, total = self.view.heads[:9]
        pencil.text(team, self._places()[1], baseline, size, theme.soft, room=self._name_room())
        for place, words in enumerate(tasks):
            left, wide = self._column(place)
            x, anchor = (left + wide / 2, "middle") if self.view.tents else (left + wide, "right")
            pencil.text(words, x, baseline, size, theme.soft, anchor=anchor, room=wide - 3)
        pencil.text(total, self._total_end(), baseline, size, theme.soft, anchor="right")
        for words in self.view.heads[9:]:
            pencil.text(words, self._ranges_at(), baseline, size, theme.soft,
                        room=self.wide - self._ranges_at())  # fmt: skip

    def _paint_line(self, pencil: Pencil, line: ResultLine, middle: float) -> None:
        size = self._sizes()[0]
        down = _drop(size)
        self._paint_place(pencil, line, middle)
        room = self._name_room()
        name = cut_words(line.team, SMALLEST_SHARE * size, round(room * theme.u))
        _, name_at, total = self._places()
        pencil.text(name, name_at, middle + down, size, theme.ink, bold=True, room=room)
        for place, shown in enumerate(line.marks):
            (self._paint_tent if self.view.tents else self._paint_number)(
                pencil, shown, place, middle
            )
        pencil.text(line.total, self._total_end(), middle + down, size, theme.ink, bold=True,
                    anchor="right", room=total - 4)  # fmt: skip
        if self.view.ranges:
            self._paint_range(pencil, line, middle)

    def _paint_place(self, pencil: Pencil, line: ResultLine, middle: float) -> None:
        size = self._sizes()[0]
        down = _drop(size)
        end, name_at, _ = self._places()
        if line.medal:
            radius = min(0.46 * self._row_high(), 0.72 * size / theme.u, end / 2 + 2)
            at = end - radius + 4
            pencil.disc(at, middle, radius, theme.ink)
            pencil.text(line.place, at, middle + down, size, theme.sheet,
                        bold=True, anchor="middle", room=1.7 * radius)  # fmt: skip
        else:
            pencil.text(line.place, end, middle + down, size, theme.ink, bold=True,
                        anchor="right", room=end)  # fmt: skip
        if line.shared:
            pencil.text("=", end + 6, middle + down, size, theme.ink, bold=True,
                        room=name_at - end - 8)  # fmt: skip

    def _paint_number(self, pencil: Pencil, shown: ScoreMark, place: int, middle: float) -> None:
        left, wide = self._column(place)
        size = min(self._sizes()[0], theme.label)
        end = left + wide - 3
        if shown.corrected:
            pencil.text("*", end, middle + _drop(size) - 6, STAR * size, theme.ink, bold=True)
        room = wide - 2 * SMALL_MARK - 7
        points = shown.points
        if text_width(points, size) > room * theme.u:
            points = points.removesuffix(".0")  # a hundred stays easy to read
        pencil.text(points, end, middle + _drop(size), size, theme.ink,
                    anchor="right", room=room)  # fmt: skip
        if shown.side:
            # Marks stand below each other, whatever the number beside them.
            widest = max(text_width(line.marks[place].points, size) for line in self.view.lines)
            at = end - min(widest / theme.u, room) - SMALL_MARK - 3
            mark.SIGNS[shown.side](pencil, at, middle, SMALL_MARK, mark.DATA_COLOURS[shown.side])

    def _paint_tent(self, pencil: Pencil, shown: ScoreMark, place: int, middle: float) -> None:
        left, wide = self._column(place)
        high = min(0.66 * self._row_high(), 34)
        across = min(TENT * (1.25 if self.big else 1), wide - 16)  # signs reach beyond
        tent = TentShape(left + (wide - across) / 2, middle + 0.5 * high + 2, across, high)
        draw_small_tent(pencil, tent, shown, marker=8.5 if self.big else 6.4)
        if shown.corrected:
            size = self._sizes()[0]
            pencil.text("*", left + wide - 12, middle + _drop(size), size, theme.ink, bold=True)

    def _paint_sum(self, pencil: Pencil, name: str, scores: tuple[str, ...], middle: float) -> None:
        size = theme.label
        pencil.text(name, self._places()[1], middle + _drop(size), size, theme.soft,
                    room=self._name_room())  # fmt: skip
        for place, points in enumerate(scores):
            left, wide = self._column(place)
            x, anchor = (left + wide / 2, "middle") if self.view.tents else (left + wide, "right")
            pencil.text(points, x, middle + _drop(size), size, theme.soft, anchor=anchor,
                        room=wide - 4)  # fmt: skip

    def _paint_range(self, pencil: Pencil, line: ResultLine, middle: float) -> None:
        size = theme.label
        words = max((text_width(each.safe, size, True) for each in self.view.lines), default=0)
        start = self._ranges_at() + PILL
        end = max(start + 40, self.wide - words / theme.u - 24)
        along = end - start
        for dot in range(self.view.dots):
            x = start + along * dot / max(1, self.view.dots - 1)
            pencil.disc(x, middle, 1.6, theme.line)
        if line.moves:
            low, high = (start + along * share for share in (line.low, line.high))
            pencil.box(low - PILL, middle - PILL, high - low + 2 * PILL, 2 * PILL, PILL, theme.ink)
            pencil.box(low - PILL + 2, middle - PILL + 2, high - low + 2 * PILL - 4,
                       2 * PILL - 4, PILL - 2, theme.lamp)  # fmt: skip
        if line.safe:
            pencil.disc(start + along * line.now, middle, 6, theme.ink)
        pencil.text(line.safe, end + PILL + 6, middle + _drop(size), size, theme.ink,
                    bold=line.moves, room=self.wide - end - PILL - 8)  # fmt: skip


def _drop(size: float) -> float:
    """From the middle of a line down to its baseline, in units."""
    return CAP / 2 * size / theme.u
