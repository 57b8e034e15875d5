"""The card with the volume so far, its interval, and the limit of the event under it."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, NumericProperty, StringProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets import signs
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil, text_width

INSET, TROUGH = 20, 18


class VolumeCard(Drawing):
    """``share`` of the limit, and that of both bounds; ``covered`` hides all of it."""

    follows: ClassVar[tuple[str, ...]] = (
        "number", "unit", "between", "zero_text", "limit_text", "share", "low_share", "high_share",
        "covered", "covered_text",
    )  # fmt: skip

    number = StringProperty("")
    unit = StringProperty("")
    between = StringProperty("")
    zero_text = StringProperty("")
    limit_text = StringProperty("")
    share = NumericProperty(0.0)
    low_share = NumericProperty(0.0)
    high_share = NumericProperty(0.0)
    covered = BooleanProperty(False)
    covered_text = StringProperty("")

    def paint(self, pencil: Pencil) -> None:
        """Draw the card."""
        pencil.box(0, 0, self.wide, self.high, 18, theme.lid if self.covered else theme.card)
        if self.covered:
            self._paint_cover(pencil)
            return
        unit = pencil.unit
        self._paint_number(pencil, 8 + 0.76 * theme.volume / unit)
        bottom = self.high - 10
        label = theme.label / unit
        top = bottom - label - 6 - TROUGH
        pencil.text(self.between, self.wide / 2, top - 9, theme.step_name, theme.ink,
                    anchor="middle", room=self.wide - 2 * INSET)  # fmt: skip
        self._paint_trough(pencil, top)
        baseline = bottom - 0.1 * label
        pencil.text(self.zero_text, INSET, baseline, theme.label, theme.ink)
        pencil.text(self.limit_text, self.wide - INSET, baseline, theme.label, theme.ink,
                    bold=True, anchor="right", room=self.wide - 3 * INSET)  # fmt: skip

    def _paint_number(self, pencil: Pencil, baseline: float) -> None:
        unit, size = pencil.unit, theme.volume
        wide = text_width(self.number, size, True) / unit
        words = text_width(self.unit, theme.body, False) / unit
        left = max(INSET / 2, (self.wide - wide - 10 - words) / 2)
        pencil.text(self.number, left, baseline, size, theme.ink, bold=True)
        pencil.text(self.unit, left + wide + 10, baseline, theme.body, theme.ink)

    def _paint_trough(self, pencil: Pencil, top: float) -> None:
        wide = self.wide - 2 * INSET
        pencil.box(INSET, top, wide, TROUGH, 6, theme.kraft)
        full = wide * min(1.0, self.share)
        if full > 4:
            pencil.box(INSET, top, full, TROUGH, 6, theme.lamp)
        pencil.frame(INSET, top, wide, TROUGH, 6, 3, theme.ink)
        for bound in (self.low_share, self.high_share):
            if 0 < bound <= 1:
                x = INSET + wide * bound
                pencil.stroke([(x, top - 5), (x, top + TROUGH + 5)], 2, theme.ink)

    def _paint_cover(self, pencil: Pencil) -> None:
        middle = self.wide / 2
        signs.eye(pencil, middle, self.high * 0.38, 26, theme.sheet)
        baseline = self.high * 0.72 + CAP / 2 * theme.body / pencil.unit
        pencil.text(self.covered_text, middle, baseline, theme.body, theme.sheet, anchor="middle")
