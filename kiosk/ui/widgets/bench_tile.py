"""A tile of the bench: a thing that a tap puts on the simulated scale or takes off."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import ClassVar

from kivy.properties import BooleanProperty, NumericProperty, OptionProperty, StringProperty

from kiosk.texts.numbers import number
from kiosk.ui import kv_files
from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark, signs
from kiosk.ui.widgets.cup_art import CAP, LEAN, draw_cup, draw_grain
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.scale_art import draw_jar, draw_tray, draw_vase, draw_weight
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

Art = Callable[[Pencil, float, float, float], None]


def _any_cup(ground: Colour, rim: float, *, lean: float = LEAN, filled: bool = False) -> Art:
    def draw(pencil: Pencil, x: float, y: float, half: float) -> None:
        box = (x - half, y - half * 0.7, 2 * half, half * 1.4)
        draw_cup(pencil, box, ground, rim=half * rim, lean=lean, filled=filled)

    return draw


def _any_tray(pieces: bool) -> Art:
    def draw(pencil: Pencil, x: float, y: float, half: float) -> None:
        draw_tray(pencil, (x - half * 1.25, y - half * 0.6, half * 2.5, half * 1.15), pieces)

    return draw


def _jar(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_jar(pencil, (x - half * 0.78, y - half, half * 1.56, half * 2))


def _any_vase(full: bool) -> Art:
    def draw(pencil: Pencil, x: float, y: float, half: float) -> None:
        draw_vase(pencil, (x - half * 0.75, y - half * 0.9, half * 1.5, half * 1.8), full)

    return draw


def _pour(pencil: Pencil, x: float, y: float, half: float) -> None:
    for dx, dy, turn in (
        (-0.3, -0.8, 0.5),
        (0.1, -0.9, -0.6),
        (0.35, -0.6, 0.7),
        (-0.1, -0.5, 0.2),
    ):
        draw_grain(pencil, x + dx * half, y + dy * half, half * 0.12, turn)
    draw_jar(pencil, (x - half * 0.6, y - half * 0.5, half * 1.2, half * 1.5), lid=False)


def _crumbs(pencil: Pencil, x: float, y: float, half: float) -> None:
    for dx, dy, turn in ((-0.5, 0.4, 0.4), (0.1, 0.1, -0.5), (0.5, 0.5, 0.8), (-0.2, -0.3, 0.1)):
        draw_grain(pencil, x + dx * half, y + dy * half, half * 0.16, turn)


def _weight(pencil: Pencil, x: float, y: float, half: float) -> None:
    draw_weight(pencil, (x - half * 0.62, y - half * 0.85, half * 1.24, half * 1.7))


def _coins(pencil: Pencil, x: float, y: float, half: float) -> None:
    for dx, dy in ((-0.45, 0.25), (0.45, 0.25), (0.0, -0.3)):
        pencil.disc(x + dx * half, y + dy * half, half * 0.5, theme.steel)
        pencil.ring(x + dx * half, y + dy * half, half * 0.46, half * 0.09, theme.ink)


def _scale_key(pencil: Pencil, x: float, y: float, half: float) -> None:
    pencil.box(x - half, y - half * 0.62, half * 2, half * 1.24, 8, theme.card)
    pencil.frame(x - half, y - half * 0.62, half * 2, half * 1.24, 8, 3, theme.ink)


def _zero(pencil: Pencil, x: float, y: float, half: float) -> None:
    _scale_key(pencil, x, y, half)
    size = half * 0.8
    pencil.text(number(Decimal("0.0")), x, y + CAP / 2 * size, size * pencil.unit, theme.ink,
                bold=True, anchor="middle")  # fmt: skip


def _tare(pencil: Pencil, x: float, y: float, half: float) -> None:
    _scale_key(pencil, x, y, half)
    draw_tray(pencil, (x - half * 0.6, y - half * 0.42, half * 1.2, half * 0.72), pieces=False)


def _circled(sign: str) -> Art:
    def draw(pencil: Pencil, x: float, y: float, half: float) -> None:
        pencil.ring(x, y, half * 0.78, 3.5, theme.ink)
        mark.SIGNS[sign](pencil, x, y, half * 0.48, theme.ink)

    return draw


def _bare(sign: str, share: float) -> Art:
    def draw(pencil: Pencil, x: float, y: float, half: float) -> None:
        mark.SIGNS[sign](pencil, x, y, half * share, theme.ink)

    return draw


THINGS: dict[str, Art] = {
    "cup": _any_cup(theme.card, 0.13),
    "solid cup": _any_cup(theme.steel, 0.24, lean=0.1),
    "filled cup": _any_cup(theme.card, 0.13, filled=True),
    "empty tray": _any_tray(pieces=False),
    "tray": _any_tray(pieces=True),
    "jar": _jar,
    "vase": _any_vase(full=False),
    "full vase": _any_vase(full=True),
    "weight": _weight,
    "coins": _coins,
    "crumbs": _crumbs,
}
DEEDS: dict[str, Art | None] = {
    "clear": _circled("up"),
    "pour": _pour,
    "water": _any_vase(full=True),
    "no water": _any_vase(full=False),
    "less": _circled("minus"),
    "more": _circled("plus"),
    "zero": _zero,
    "tare": _tare,
    "plug": _bare("plug", 1.15),
    "parted plug": _bare("parted plug", 1.15),
    "off": _bare("power", 0.75),
    "none": None,
}
ARTS: dict[str, Art | None] = {**THINGS, **DEEDS}


class BenchTile(Tappable, Drawing):
    """``art`` over ``text``; what is ``placed`` on the pan, or on, is ticked.

    A thing is a card; a deed (clear, pour, zero ...) is an outline on the panel.
    """

    follows: ClassVar[tuple[str, ...]] = (
        "art",
        "placed",
        "pressed",
        "disabled",
        "type_size",
        "text",
    )

    text = StringProperty("")
    art = OptionProperty("none", options=list(ARTS))
    placed = BooleanProperty(False)
    type_size = NumericProperty(theme.label)
    text_lines = 2.45  # type sizes that the foot of a tile has room for: two lines

    def paint(self, pencil: Pencil) -> None:
        """Draw the tile and its thing."""
        wide, high = self.wide, self.high
        if self.art in DEEDS:
            if self.pressed:
                pencil.box(0, 0, wide, high, 14, theme.bench)
            pencil.frame(0, 0, wide, high, 14, 3, theme.drawer_d if self.disabled else theme.ink)
        else:
            pencil.box(-4, 4, wide, high, 14, theme.drawer_d)
            ground = theme.act_t if self.placed else theme.hair if self.pressed else theme.card
            pencil.box(0, 0, wide, high, 14, ground)
        draw = ARTS[self.art]
        if draw:
            room = high - (self.text_lines * self.type_size / pencil.unit if self.text else 0)
            half = min(wide * 0.36, room * 0.42)
            draw(pencil, wide / 2, room / 2 + 4, half)
        if self.placed:
            pencil.frame(-2, -2, wide + 4, high + 4, 17, 5.5, theme.act)
            pencil.disc(wide - 20, 20, 14, theme.act)
            signs.tick(pencil, wide - 20, 20, 14, theme.sheet)
