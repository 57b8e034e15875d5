"""Beads on a string: which step of how many."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, NumericProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.geometry import Point
from kiosk.ui.widgets.pencil import Pencil

kv_files.load(__file__)

DONE, PRESENT, TO_COME = 13, 19, 12  # radii of the beads


class StepTrail(Drawing):
    """The string comes in from the edge of the sheet, so the widget starts there.

    ``step`` counts from 1; ``text`` names it at the right.
    """

    follows: ClassVar[tuple[str, ...]] = ("step", "steps", "first", "spacing")

    step = NumericProperty(1)
    steps = NumericProperty(4)
    text = StringProperty("")
    first = NumericProperty(48.0)  # units from the edge to the first bead
    spacing = NumericProperty(52.0)

    def paint(self, pencil: Pencil) -> None:
        """Draw the string and its beads."""
        middle = self.high / 2
        last = self.first + self.spacing * (self.steps - 1)
        pencil.stroke([(0, middle), (last, middle)], 3, theme.line)
        for bead in range(1, int(self.steps) + 1):
            x = self.first + self.spacing * (bead - 1)
            if bead < self.step:
                mark.badge(pencil, "tick", x, middle, DONE)
            elif bead == self.step:
                self._present(pencil, x, middle)
            else:
                pencil.disc(x, middle, TO_COME, theme.sheet)
                pencil.ring(x, middle, TO_COME, 3, theme.line)

    def _present(self, pencil: Pencil, x: float, middle: float) -> None:
        pencil.disc(x, middle, PRESENT, theme.act)
        _paint_number(pencil, (x, middle), self.step, theme.body, theme.card)


class NumberBead(Drawing):
    """One bead by itself, for a list of things to do: ``present`` or still to come."""

    follows: ClassVar[tuple[str, ...]] = ("number", "present")

    number = NumericProperty(1)
    present = BooleanProperty(False)

    def paint(self, pencil: Pencil) -> None:
        """Draw the bead as large as the widget."""
        x, y = self.wide / 2, self.high / 2
        radius = min(x, y)
        pencil.disc(x, y, radius, theme.act if self.present else theme.sheet)
        if not self.present:
            pencil.ring(x, y, radius - 1.5, 3, theme.line)
        colour = theme.card if self.present else theme.ink
        _paint_number(pencil, (x, y), self.number, theme.pan_label, colour)


def _paint_number(
    pencil: Pencil, middle: Point, number: float, size: float, colour: Colour
) -> None:
    baseline = middle[1] + CAP / 2 * size / pencil.unit
    pencil.text(str(int(number)), middle[0], baseline, size, colour, bold=True, anchor="middle")
