"""The grounds that everything lies on: the bench, the sheet, a quiet panel, the drawer panel."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, ColorProperty, NumericProperty
from kivy.uix.floatlayout import FloatLayout

from kiosk.ui.theme import theme
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.geometry import Point, clipped
from kiosk.ui.widgets.pencil import Pencil

FIRST_SEAM, PLANK = 152, 112  # units from the top to a seam of the table top, and between two
SHADE = 5  # how far a flat shade reaches out to the left and down


class Bench(Drawing, FloatLayout):
    """The table top with the seams of its planks."""

    def paint(self, pencil: Pencil) -> None:
        """Draw the wood and its seams."""
        pencil.box(0, 0, self.wide, self.high, 0, theme.bench)
        seams = int((self.high - FIRST_SEAM) // PLANK) + 1
        lines = [FIRST_SEAM + PLANK * seam for seam in range(seams)]
        pencil.fills(
            [[(0, y - 1), (self.wide, y - 1), (self.wide, y + 1), (0, y + 1)] for y in lines],
            theme.seam,
        )


class Sheet(Drawing, FloatLayout):
    """The sheet with what to do next, on its flat shade."""

    follows: ClassVar[tuple[str, ...]] = ("corner",)
    corner = NumericProperty(22)

    def paint(self, pencil: Pencil) -> None:
        """Draw the shade and the sheet."""
        pencil.box(-SHADE, SHADE, self.wide, self.high, self.corner, theme.shade)
        pencil.box(0, 0, self.wide, self.high, self.corner, theme.sheet)


class Panel(Drawing, FloatLayout):
    """A quiet area on the sheet; with ``edge`` it has a thin outline."""

    follows: ClassVar[tuple[str, ...]] = ("corner", "ground", "edge", "edge_width")
    corner = NumericProperty(18)
    ground = ColorProperty(theme.kraft)
    edge = ColorProperty((0, 0, 0, 0))
    edge_width = NumericProperty(2)

    def paint(self, pencil: Pencil) -> None:
        """Draw the ground and its outline."""
        pencil.box(0, 0, self.wide, self.high, self.corner, tuple(self.ground))
        if self.edge[3]:
            pencil.frame(0, 0, self.wide, self.high, self.corner, self.edge_width, tuple(self.edge))


class BenchPanel(Drawing, FloatLayout):
    """The panel with the things for the simulated scale, striped along its left edge."""

    follows: ClassVar[tuple[str, ...]] = ("striped",)
    striped = BooleanProperty(True)
    stripe_wide = NumericProperty(14)

    def paint(self, pencil: Pencil) -> None:
        """Draw the panel, its shade and its stripes."""
        edge = self.stripe_wide if self.striped else 0
        pencil.box(edge + 4, SHADE, self.wide - edge - 4 - SHADE, self.high, 22, theme.shade)
        pencil.box(0, 0, self.wide, self.high, 22, theme.drawer)
        pencil.box(0, 0, edge + 22, self.high, 0, theme.drawer)
        if edge:
            pencil.box(0, 0, edge, self.high, 0, theme.hazard)
            pencil.fills(stripes(edge, self.high, 13, rising=True), theme.ink)


def stripes(wide: float, high: float, bar: float, rising: bool) -> list[list[Point]]:
    """Slanting bars for a box of ``wide`` x ``high`` units, cut at its edges, ``bar`` units apart.

    Bars lean over by the shorter side; ``rising`` measures them along the height.
    """
    lean, length = (wide, high) if rising else (high, wide)
    bars: list[list[Point]] = []
    start = -lean
    while start < length:
        end = start + bar
        if rising:
            outline = [(0, start + lean), (wide, start), (wide, end), (0, end + lean)]
        else:
            outline = [(start + lean, 0), (end + lean, 0), (end, high), (start, high)]
        cut = clipped(outline, wide, high)
        if len(cut) > 2:
            bars.append(cut)
        start += 2 * bar
    return bars
