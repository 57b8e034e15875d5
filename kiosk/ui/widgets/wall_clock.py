"""The clock for the class: the time left in large digits, and one bead for each minute."""

from __future__ import annotations

from math import cos, radians, sin
from typing import ClassVar

from kivy.properties import BooleanProperty, NumericProperty, StringProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.geometry import Point
from kiosk.ui.widgets.pencil import Pencil

BEAD, SHARE = 13.0, 0.42  # units; its radius, and the most of it where beads crowd
BEADS_BELOW, LEGEND_BELOW = 78.0, 22.0  # units from the foot to their middles, to the baseline
EDGE = 30.0
WEDGE, LAP, STEP = 120, 10, 10  # degrees; parts of a wedge overlap, or their edges would show


class WallClock(Drawing):
    """``beads`` whole minutes and the ``part`` of one more, of ``of`` minutes."""

    follows: ClassVar[tuple[str, ...]] = (
        "time", "beads", "part", "of", "legend", "corner", "quiet",
    )  # fmt: skip

    time = StringProperty("")
    beads = NumericProperty(0)
    part = NumericProperty(0.0)
    of = NumericProperty(0)
    legend = StringProperty("")
    corner = StringProperty("")
    quiet = BooleanProperty(False)

    def paint(self, pencil: Pencil) -> None:
        """Draw digits, beads and the two lines below them."""
        self._paint_digits(pencil)
        self._paint_beads(pencil)
        size, below = theme.must, self.high - LEGEND_BELOW
        pencil.text(self.legend, EDGE, below, size, theme.ink)
        pencil.text(
            self.corner, self.wide - EDGE, below, size, theme.ink, bold=True, anchor="right",
            room=0.66 * self.wide,
        )  # fmt: skip

    def _paint_digits(self, pencil: Pencil) -> None:
        room = self.high - BEADS_BELOW - BEAD
        size = min(theme.wall, 0.9 * room / CAP * theme.u)
        baseline = room / 2 + CAP / 2 * size / theme.u
        pencil.text(
            self.time, self.wide / 2, baseline, size, theme.soft if self.quiet else theme.ink,
            bold=True, anchor="middle", room=self.wide - 2 * EDGE,
        )  # fmt: skip

    def _paint_beads(self, pencil: Pencil) -> None:
        many = int(self.of)
        if not many:
            return
        apart = (self.wide - 2 * EDGE) / many
        radius, y = min(BEAD, SHARE * apart), self.high - BEADS_BELOW
        for place in range(many):
            x = EDGE + (place + 0.5) * apart
            if place < self.beads:
                pencil.disc(x, y, radius, theme.ink)
                continue
            running = place == self.beads and self.part > 0
            pencil.ring(x, y, radius - 1.5, 3, theme.ink if running else theme.line)
            if running:
                _wedge(pencil, x, y, radius - 1, 360 * self.part)


def _wedge(pencil: Pencil, x: float, y: float, radius: float, end: float) -> None:
    """What is left of the running minute, clockwise from the top."""

    def at(degrees: float) -> Point:
        return x + radius * sin(radians(degrees)), y - radius * cos(radians(degrees))

    for part in range(0, int(end), WEDGE):
        first, last = max(0, part - LAP), min(end, part + WEDGE)
        steps = max(1, round((last - first) / STEP))
        rim = [at(first + (last - first) * step / steps) for step in range(steps + 1)]
        pencil.fill([(x, y), *rim], theme.ink)
