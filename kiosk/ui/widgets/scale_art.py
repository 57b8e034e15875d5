"""Pictures of things: the scale and what may stand on it. Fixed art; no weight moves it."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, OptionProperty, StringProperty

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import signs
from kiosk.ui.widgets.cup_art import CAP, draw_cup
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.geometry import Point
from kiosk.ui.widgets.pencil import Pencil

WIDE = 252  # units of the dish, from edge to edge
DISH_HIGH = 92  # from the dish down to the table
LOAD_HIGH = 118  # room over the dish for what stands on it
ARROW_HIGH = 58  # room over an empty dish for an arrow


def draw_arrow(pencil: Pencil, x: float, tail: float, tip: float, colour: Colour) -> None:
    """A thick arrow up or down from ``tail`` to ``tip``."""
    way = 1 if tip > tail else -1
    pencil.stroke([(x, tail), (x, tip - way * 22)], 7, colour)
    pencil.fill([(x - 16, tip - way * 25), (x + 16, tip - way * 25), (x, tip)], colour)


def draw_scale(pencil: Pencil, top: float) -> None:
    """The scale with its dish at ``top``, standing on the lower edge."""
    dish = [(14, top + 2), (WIDE - 14, top + 2), (WIDE - 49, top + 27), (49, top + 27)]
    pencil.fill([(115, top + 26), (137, top + 26), (143, top + 54), (109, top + 54)], theme.ink)
    pencil.box(33, top + 51, 186, 38, 14, theme.ink)
    pencil.box(33, top + 70, 186, 20, 6, theme.ink)
    pencil.box(36.5, top + 54.5, 179, 31, 11, theme.lamp)
    pencil.box(36.5, top + 70, 179, 16.5, 3.5, theme.lamp)
    pencil.fill(dish, theme.card)
    pencil.stroke(dish, 4, theme.ink, closed=True)
    pencil.stroke([(3, top), (WIDE - 3, top)], 6, theme.ink)


def draw_tray(pencil: Pencil, box: tuple[float, float, float, float], pieces: bool) -> None:
    """A flat tray in ``box`` (left, top, width, height), with a heap of ``pieces`` or without."""
    left, top, wide, high = box
    rim = top + high * 0.32
    if pieces:
        radius = wide * 0.04
        for count, start, lift, heap in ((6, 0.22, 0.1, 1.0), (7, 0.18, 0.9, 2.2)):
            for piece in range(count):
                share = piece / (count - 1)
                x = left + wide * (start + (1 - 2 * start) * share)
                up = lift + heap * 4 * share * (1 - share) * 0.8
                pencil.disc(x, rim - radius * (up + 0.6), radius, theme.act)
    body: list[Point] = [
        (left + wide * 0.06, rim), (left + wide * 0.94, rim),
        (left + wide * 0.83, top + high - 2), (left + wide * 0.17, top + high - 2),
    ]  # fmt: skip
    pencil.fill(body, theme.steel)
    pencil.stroke(body, wide * 0.028, theme.ink, closed=True)
    pencil.stroke([(left + 2, rim), (left + wide - 2, rim)], wide * 0.042, theme.ink)


def draw_jar(
    pencil: Pencil, box: tuple[float, float, float, float], words: str = "", size: float = 0.0,
    lid: bool = True,
) -> None:  # fmt: skip
    """A jar in its paper sleeve in ``box``; ``words`` of ``size`` pixels stand on it."""
    left, top, wide, high = box
    unit = wide / 148
    line = 3.5 * max(unit, 0.8)
    middle, body = left + wide / 2, top + 34 * unit
    if lid:
        pencil.box(middle - 59 * unit, top + 4 * unit, 118 * unit, 32 * unit, 7 * unit, theme.ink)
    pencil.box(left, body, wide, high - 34 * unit, 26 * unit, theme.kraft)
    pencil.frame(left, body, wide, high - 34 * unit, 26 * unit, line, theme.ink)
    if lid:
        strap = (middle - 12 * unit, top, 24 * unit, 52 * unit, 0)
        pencil.box(*strap, theme.card)
        pencil.frame(*strap, 2.5 * max(unit, 0.8), theme.ink)
    else:
        pencil.stroke([(left + 12 * unit, body), (left + wide - 12 * unit, body)], line * 1.6,
                      theme.ink)  # fmt: skip
    if words:
        centre = body + (high - 34 * unit) * 0.55
        pencil.text(words, middle, centre + CAP / 2 * size / pencil.unit, size, theme.ink,
                    bold=True, anchor="middle", room=wide - 16 * unit)  # fmt: skip


def draw_weight(pencil: Pencil, box: tuple[float, float, float, float]) -> None:
    """A check weight with its knob in ``box``."""
    left, top, wide, high = box
    middle, line = left + wide / 2, wide * 0.065
    pencil.box(middle - wide * 0.16, top + high * 0.24, wide * 0.32, high * 0.2, 1, theme.lamp)
    pencil.frame(middle - wide * 0.16, top + high * 0.24, wide * 0.32, high * 0.2, 1, line,
                 theme.ink)  # fmt: skip
    pencil.disc(middle, top + wide * 0.21, wide * 0.21, theme.ink)
    pencil.disc(middle, top + wide * 0.21, wide * 0.21 - line, theme.lamp)
    pencil.box(left, top + high * 0.36, wide, high * 0.64, wide * 0.18, theme.lamp)
    pencil.frame(left, top + high * 0.36, wide, high * 0.64, wide * 0.18, line, theme.ink)


def draw_vase(pencil: Pencil, box: tuple[float, float, float, float], full: bool) -> None:
    """An open vase in ``box`` (left, top, width, height), with water up to its brim or without."""
    left, top, wide, high = box
    half, line = wide / 2, wide * 0.035
    outline = ((0.0, 0.72), (0.12, 0.6), (0.3, 0.62), (0.55, 0.95), (0.75, 0.95), (1.0, 0.55))
    right: list[Point] = [(left + half * (1 + x), top + high * y) for y, x in outline]
    body: list[Point] = [*right, *((2 * left + wide - x, y) for x, y in reversed(right))]
    pencil.fill(body, theme.under_t if full else theme.card)
    pencil.stroke(body, line, theme.ink, closed=True)
    for x, y in ((0.75, 0.42), (1.25, 0.55), (0.95, 0.78)) if full else ():
        at = left + half * x
        pencil.stroke([(at - half * 0.15, top + high * y), (at + half * 0.15, top + high * y)],
                      line, theme.under)  # fmt: skip
    brim = [(right[0][0], top), (body[-1][0], top)]
    pencil.stroke(brim, line * 1.6, theme.under if full else theme.ink)


class ScaleArt(Drawing):
    """The scale, ``load`` on its dish, ``arrows`` that say: put it on, take it off.

    "clear pan" is an empty dish with an arrow that says: take it off.
    """

    follows: ClassVar[tuple[str, ...]] = ("load", "arrows")

    load = OptionProperty(
        "none",
        options=[
            "none",
            "clear pan",
            "empty cup",
            "filled cup",
            "tray",
            "full tray",
            "jar",
            "vase",
            "full vase",
        ],
    )
    arrows = OptionProperty("none", options=["none", "down", "up"])

    def sheet(self) -> tuple[float, float]:
        """Without a load the art is flatter."""
        return WIDE, DISH_HIGH + self._room()

    def _loaded(self) -> bool:
        return self.load not in ("none", "clear pan")

    def _pointed(self) -> bool:
        return self.arrows != "none" or self.load == "clear pan"

    def _room(self) -> float:
        if self._loaded():
            return LOAD_HIGH + (26 if self._pointed() else 0)
        return ARROW_HIGH if self._pointed() else 4

    def paint(self, pencil: Pencil) -> None:
        """Draw the scale from the dish down, the load from the dish up."""
        top = self._room()
        draw_scale(pencil, top)
        self._paint_load(pencil, top - 3)
        if not self._pointed():
            return
        places, low = ((16, WIDE - 16), 90.0) if self._loaded() else ((WIDE / 2,), top - 8)
        tail, tip = (4.0, low) if self.arrows == "down" else (low, 4.0)
        for x in places:
            draw_arrow(pencil, x, tail, tip, theme.act)

    def _paint_load(self, pencil: Pencil, foot: float) -> None:
        if self.load in ("empty cup", "filled cup"):
            draw_cup(pencil, (41, foot - 115, 170, 115), theme.card, rim=10, lean=0.16,
                     filled=self.load == "filled cup")  # fmt: skip
        elif self.load in ("tray", "full tray"):
            draw_tray(pencil, (41, foot - 74, 170, 74), pieces=self.load == "full tray")
        elif self.load == "jar":
            draw_jar(pencil, (80, foot - 116, 92, 116))
        elif self.load in ("vase", "full vase"):
            draw_vase(pencil, (76, foot - 115, 100, 115), full=self.load == "full vase")


class JarArt(Drawing):
    """One jar in its sleeve; every jar of students is this picture."""

    sheet_size = (150, 196)
    follows: ClassVar[tuple[str, ...]] = ("text",)
    text = StringProperty("")

    def paint(self, pencil: Pencil) -> None:
        """Draw the jar."""
        draw_jar(pencil, (1, 1, 148, 193), self.text, self.type_size(theme.big_cup))


def draw_box(pencil: Pencil, left: float, top: float, scale: float) -> None:
    """A closed box; 150 x 160 units at a ``scale`` of 1."""

    def face(*points: tuple[float, float]) -> list[tuple[float, float]]:
        return [(left + x * scale, top + y * scale) for x, y in points]

    faces = (
        (face((75, 4), (146, 42), (75, 80), (4, 42)), theme.lamp_t),
        (face((4, 42), (75, 80), (75, 156), (4, 118)), theme.lamp),
        (face((75, 80), (146, 42), (146, 118), (75, 156)), theme.lamp_shade),
    )
    for corners, colour in faces:
        pencil.fill(corners, colour)
        pencil.stroke(corners, max(2.0, 3.5 * scale), theme.ink, closed=True)


class BoxArt(Drawing):
    """One closed box; every box of students is this picture, whatever its size."""

    sheet_size = (150, 160)
    follows: ClassVar[tuple[str, ...]] = ("text",)
    text = StringProperty("")

    def paint(self, pencil: Pencil) -> None:
        """Draw the box."""
        draw_box(pencil, 0, 0, 1)
        size = self.type_size(theme.big_cup) * 0.8
        pencil.text(self.text, 39, 112, size, theme.ink, bold=True, anchor="middle", room=60)


class TrayArt(Drawing):
    """The tray, with ``pieces`` in it or empty."""

    sheet_size = (120, 60)
    follows: ClassVar[tuple[str, ...]] = ("pieces",)
    pieces = BooleanProperty(False)

    def paint(self, pencil: Pencil) -> None:
        """Draw the tray."""
        draw_tray(pencil, (1, 0, 118, 60), self.pieces)


class WeightArt(Drawing):
    """A check weight."""

    sheet_size = (58, 78)

    def paint(self, pencil: Pencil) -> None:
        """Draw the weight."""
        draw_weight(pencil, (1, 1, 56, 76))


class PlugArt(Drawing):
    """The plug of the scale, together or apart."""

    sheet_size = (110, 34)
    follows: ClassVar[tuple[str, ...]] = ("connected",)
    connected = BooleanProperty(True)

    def paint(self, pencil: Pencil) -> None:
        """Draw both halves."""
        draw = signs.plug if self.connected else signs.parted_plug
        draw(pencil, 55, 17, 54, theme.ink)
