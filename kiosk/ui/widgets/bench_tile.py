"""A tile of the bench: a thing that a tap puts on the simulated scale or takes off."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from kivy.properties import BooleanProperty, NumericProperty, OptionProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.cup_art import draw_cup
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.scale_art import draw_jar, draw_tray, draw_weight
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

Art = Callable[[Pencil, float, float, float], None]


def _cup(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_cup(pencil, (x - half, y - half * 0.7, 2 * half, half * 1.4), theme.card, rim=6)


def _solid_cup(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_cup(pencil, (x - half, y - half * 0.7, 2 * half, half * 1.4), theme.steel, rim=11,
             lean=0.1)  # fmt: skip


def _filled_cup(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_cup(pencil, (x - half, y - half * 0.7, 2 * half, half * 1.4), theme.card, rim=6,
             filled=True)  # fmt: skip


def _tray(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_tray(pencil, (x - half * 1.25, y - half * 0.6, half * 2.5, half * 1.15), pieces=False)


def _full_tray(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_tray(pencil, (x - half * 1.25, y - half * 0.6, half * 2.5, half * 1.15), pieces=True)


def _jar(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_jar(pencil, (x - half * 0.78, y - half, half * 1.56, half * 2))


def _weight(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_weight(pencil, (x - half * 0.62, y - half * 0.85, half * 1.24, half * 1.7))


def _circled(sign: str) -> Art:
    def draw(pencil: Pencil, x: float, y: float, half: float) -> None:
        pencil.ring(x, y, half * 0.78, 3.5, theme.ink)
        mark.SIGNS[sign](pencil, x, y, half * 0.48, theme.ink)

    return draw


def _bare(sign: str) -> Art:
    def draw(pencil: Pencil, x: float, y: float, half: float) -> None:
        mark.SIGNS[sign](pencil, x, y, half, theme.ink)

    return draw


ARTS: dict[str, Art | None] = {
    "cup": _cup, "solid cup": _solid_cup, "filled cup": _filled_cup, "tray": _tray,
    "full tray": _full_tray, "jar": _jar, "weight": _weight, "clear": _circled("up"),
    "zero": _circled("level"), "tare": _circled("undo"), "plug": _bare("plug"),
    "parted plug": _bare("parted plug"), "less": _circled("minus"), "more": _circled("plus"),
    "next": _circled("chevron"), "none": None,
}  # fmt: skip
QUIET = ("clear", "zero", "tare", "plug", "parted plug", "less", "more", "next", "none")


class BenchTile(Tappable, Drawing):
    """``art`` over ``text``; a thing that is ``placed`` on the pan is tinted and ticked.

    What is no thing (clear, zero, plug ...) is an outline on the panel instead of a card.
    """

    follows: ClassVar[tuple[str, ...]] = ("art", "placed", "pressed", "disabled")

    text = StringProperty("")
    art = OptionProperty("none", options=list(ARTS))
    placed = BooleanProperty(False)
    text_high = NumericProperty(44.0)  # units at the foot that belong to the text

    def paint(self, pencil: Pencil) -> None:
        """Draw the tile and its thing."""
        wide, high = self.wide, self.high
        if self.art in QUIET:
            if self.pressed:
                pencil.box(0, 0, wide, high, 14, theme.bench)
            pencil.frame(0, 0, wide, high, 14, 3, theme.drawer_d if self.disabled else theme.ink)
        else:
            pencil.box(-4, 4, wide, high, 14, theme.drawer_d)
            ground = theme.act_t if self.placed else theme.hair if self.pressed else theme.card
            pencil.box(0, 0, wide, high, 14, ground)
        draw = ARTS[self.art]
        if draw:
            room = high - (self.text_high if self.text else 0)
            half = min(wide * 0.36, room * 0.42)
            draw(pencil, wide / 2, room / 2 + 4, half)
        if self.placed:
            pencil.frame(-1, -1, wide + 2, high + 2, 15, 5, theme.act)
            pencil.disc(wide - 20, 20, 14, theme.act)
            mark.tick(pencil, wide - 20, 20, 14, theme.sheet)
