"""The small drawn signs by name, and what the data marks look like."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from kivy.properties import ColorProperty, OptionProperty

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import signs
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil

Sign = Callable[[Pencil, float, float, float, Colour], None]

SIGNS: dict[str, Sign] = {
    "tick": signs.tick,
    "cross": signs.cross,
    "level": signs.level,
    "off": signs.level,
    "under": signs.under,
    "over": signs.over,
    "on target": signs.on_target,
    "arrow": signs.arrow,
    "back": signs.back,
    "up": signs.up,
    "down": signs.down,
    "plus": signs.plus,
    "minus": signs.minus,
    "chevron": signs.chevron,
    "square": signs.square,
    "wait": signs.wait,
    "ring": signs.closing_ring,
    "power": signs.power,
    "again": signs.again,
    "undo": signs.undo,
    "printer": signs.printer,
    "home": signs.table,
    "cover": signs.small_eye,
    "eye": signs.eye,
    "lock": signs.lock,
    "open lock": signs.open_lock,
    "keyhole": signs.keyhole,
    "clock": signs.clock,
    "plug": signs.plug,
    "parted plug": signs.parted_plug,
}

DATA_COLOURS = {"under": theme.under, "over": theme.over, "on target": theme.on}
DATA_WORD_COLOURS = {"under": theme.under_x, "over": theme.over_x, "on target": theme.on_x}


def badge(pencil: Pencil, sign: str, x: float, y: float, radius: float) -> None:
    """A verdict or a done step: the sign in sheet colour on a disc of ink."""
    pencil.disc(x, y, radius, theme.ink)
    SIGNS[sign](pencil, x, y, radius, theme.sheet)


class Mark(Drawing):
    """One sign as a widget: ``sign`` by name, in ``colour``, as large as the widget allows."""

    sheet_size = (40, 40)
    follows: ClassVar[tuple[str, ...]] = ("sign", "colour")

    sign = OptionProperty("tick", options=list(SIGNS))
    colour = ColorProperty(theme.ink)

    def paint(self, pencil: Pencil) -> None:
        """Draw the sign."""
        SIGNS[self.sign](pencil, 20, 20, 18, tuple(self.colour))
