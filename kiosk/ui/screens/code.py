"""The coach's code: a pad, and dots that tell how many digits are typed, never which."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import NumericProperty, ObjectProperty

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.views import CodeView
from kiosk.ui.screens.parts import StepSheet
from kiosk.ui.theme import theme
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.number_pad import RUB_OUT
from kiosk.ui.widgets.pencil import Pencil

kv_files.load(__file__)

DOTS_IN_A_ROW = 3


class CodeDots(Drawing):
    """A dot for each digit: full when it is typed."""

    follows: ClassVar[tuple[str, ...]] = ("typed", "digits")

    typed = NumericProperty(0)
    digits = NumericProperty(6)

    def paint(self, pencil: Pencil) -> None:
        """Draw the card and its dots."""
        pencil.box(0, 0, self.wide, self.high, 14, theme.card)
        pencil.frame(0, 0, self.wide, self.high, 14, 4, theme.act)
        step = self.wide / (DOTS_IN_A_ROW + 1)
        for place in range(int(self.digits)):
            row, column = divmod(place, DOTS_IN_A_ROW)
            x, y = step * (column + 1), self.high * 0.26 + row * step * 1.2
            if place < self.typed:
                pencil.disc(x, y, 14, theme.ink)
            else:
                pencil.ring(x, y, 13, 2.5, theme.line)


class CodeSheet(StepSheet):
    """Shows a CodeView."""

    view = ObjectProperty(CodeView(), rebind=True)

    def key(self, says: str) -> None:
        """A key of the pad was tapped."""
        if says == RUB_OUT:
            self.desk.press(PersonEvent(Person.RUB_OUT))
        else:
            self.desk.press(PersonEvent(Person.TYPE, says))
