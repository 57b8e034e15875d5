"""The trough: how far the pour has come, and the tall box that it shall end in."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import NumericProperty, ObjectProperty, OptionProperty, StringProperty

from kiosk.texts.numbers import number
from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.gauge_scale import SEGMENTS, place, start
from kiosk.ui.widgets.pencil import Pencil, text_width

ARROW = 34  # height of the arrow's head in units
NARROWEST = 18  # of a goal that is one number
TALLER = 18  # how far a goal box reaches over and under the trough


class PourGauge(Drawing):
    """``count`` pieces on a trough from 100 to 20 000.

    ``goal`` is None, low, middle or high, or else ``target`` says from where to where it reaches.
    """

    follows: ClassVar[tuple[str, ...]] = (
        "count", "goal", "target", "low_text", "middle_text", "high_text", "now_text",
    )  # fmt: skip

    count = NumericProperty(0)
    goal = OptionProperty(None, options=[None, "low", "middle", "high"], allownone=True)
    target = ObjectProperty(None, allownone=True)
    low_text = StringProperty("")
    middle_text = StringProperty("")
    high_text = StringProperty("")
    now_text = StringProperty("")

    def trough(self) -> tuple[float, float]:
        """Top and height of the trough in units."""
        axis = theme.label * 1.6 / theme.u
        top = ARROW + 6 + max(0, TALLER - 12)
        return top, max(20.0, self.high - top - TALLER - axis)

    def at(self, count: float) -> float:
        """Where ``count`` stands, in units."""
        return 2 + (self.wide - 4) * place(count)

    def paint(self, pencil: Pencil) -> None:
        """Draw the trough, the goal, the words and the arrow."""
        top, high = self.trough()
        now = self.at(self.count)
        pencil.box(0, top, self.wide, high, 8, theme.kraft)
        self._paint_passed(pencil, now, top, high)
        for index in range(len(SEGMENTS)):
            self._paint_ticks(pencil, index, top + high - 4)
        pencil.frame(0, top, self.wide, high, 8, 4, theme.ink)
        for index in range(1, len(SEGMENTS)):
            x = self.wide * start(index)
            pencil.stroke([(x, top + 2), (x, top + high - 2)], 2.5, theme.ink)
        self._paint_goal(pencil, now, top, high)
        self._paint_words(pencil, top, high)
        self._paint_arrow(pencil, now, top, high)

    def _paint_passed(self, pencil: Pencil, now: float, top: float, high: float) -> None:
        if self.count > 0 and now > 4:
            pencil.box(2, top + 2, now - 2, high - 4, 4, theme.passed)

    def _paint_ticks(self, pencil: Pencil, index: int, foot: float) -> None:
        _, low, high, _, step = SEGMENTS[index]
        for count in range(low + step, high, step):
            x = self.at(count)
            pencil.stroke([(x, foot - 9), (x, foot)], 2, theme.ink)

    def goal_box(self) -> tuple[float, float] | None:
        """Left and right edge of the taller box in units, None without a goal."""
        if self.target is not None:
            left, right = (self.at(count) for count in self.target)
            middle, half = (left + right) / 2, max((right - left) / 2, NARROWEST / 2)
            middle = min(max(middle, half), self.wide - half)
            return middle - half, middle + half
        for index, (name, _, _, share, _) in enumerate(SEGMENTS):
            if name and name == self.goal:
                left, right = self.wide * start(index), self.wide * (start(index) + share)
                return max(0.0, left - 2), min(self.wide, right + 2)
        return None

    def _paint_goal(self, pencil: Pencil, now: float, top: float, high: float) -> None:
        edges = self.goal_box()
        if edges is None:
            return
        left, wide = edges[0], edges[1] - edges[0]
        box_top, box_high = top - TALLER, high + 2 * TALLER
        pencil.box(left, box_top, wide, box_high, 6, theme.lamp_t)
        if now > left + 4:
            pencil.box(left, box_top, min(now - left, wide), box_high, 6, theme.passed)
        for index, (name, *_) in enumerate(SEGMENTS):
            if name and name == self.goal:
                self._paint_ticks(pencil, index, top + high + TALLER - 4)
        pencil.frame(left, box_top, wide, box_high, 6, 4, theme.ink)

    def _paint_words(self, pencil: Pencil, top: float, high: float) -> None:
        names = {"low": self.low_text, "middle": self.middle_text, "high": self.high_text}
        size = theme.second_line
        middle = top + high / 2 - 2 + CAP / 2 * size / pencil.unit
        axis = self.high - 0.25 * theme.label / pencil.unit
        for index, (name, _, _, share, _) in enumerate(SEGMENTS):
            if name:
                x = self.wide * (start(index) + share / 2)
                pencil.text(names[name], x, middle, size, theme.ink, bold=name == self.goal,
                            anchor="middle", room=self.wide * share - 12)  # fmt: skip
        self._paint_axis(pencil, axis)

    def _paint_axis(self, pencil: Pencil, baseline: float) -> None:
        size = theme.label
        ends = {end for name, *bounds, _, _ in SEGMENTS if name == self.goal for end in bounds}
        for count, (x, anchor) in {
            100: (0.0, "left"), 1_000: (self.at(1_000), "middle"),
            10_000: (self.at(10_000), "right"), 12_000: (self.at(12_000) + 6, "left"),
            20_000: (self.wide, "right"),
        }.items():  # fmt: skip
            pencil.text(number(count), x, baseline, size, theme.ink, bold=count in ends,
                        anchor=anchor)  # fmt: skip

    def _paint_arrow(self, pencil: Pencil, now: float, top: float, high: float) -> None:
        tip, half = top - 6, 16.5
        brow = tip - ARROW
        pencil.fill([(now - half, brow), (now + half, brow), (now, tip)], theme.act)
        pencil.stroke([(now, tip - 8), (now, top + high - 4)], 5, theme.act)
        size = theme.must
        left = now - half - 10 - text_width(self.now_text, size, True) / pencil.unit
        x = left if left >= 0 else now + half + 10
        pencil.text(self.now_text, x, tip - 17, size, theme.act, bold=True)
