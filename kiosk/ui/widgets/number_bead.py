"""A bead with a number: which of several things to do, one after the other."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, NumericProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil


class NumberBead(Drawing):
    """``number`` in a ring; the ``present`` one is filled."""

    follows: ClassVar[tuple[str, ...]] = ("number", "present")

    number = NumericProperty(1)
    present = BooleanProperty(False)

    def paint(self, pencil: Pencil) -> None:
        """Draw the bead and its number."""
        x, y = self.wide / 2, self.high / 2
        radius = min(self.wide, self.high) / 2 - 1
        pencil.disc(x, y, radius, theme.act if self.present else theme.sheet)
        if not self.present:
            pencil.ring(x, y, radius - 1, 3, theme.line)
        size = theme.must
        baseline = y + CAP / 2 * size / pencil.unit
        words = theme.card if self.present else theme.ink
        pencil.text(str(int(self.number)), x, baseline, size, words, bold=True, anchor="middle")
