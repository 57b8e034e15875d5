"""One cup with a number: as a picture, as a key, and the key that turns to the other cups."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, NumericProperty, OptionProperty, StringProperty

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import signs
from kiosk.ui.widgets.cup_art import CAP, draw_cup
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

LOOKS = ["plain", "out", "yours", "chosen", "in"]
# look: ground, edge, number
LOOK_COLOURS: dict[str, tuple[Colour, Colour, Colour]] = {
    "plain": (theme.card, theme.ink, theme.ink),
    "out": (theme.card, theme.ink, theme.ink),
    "yours": (theme.lamp_t, theme.ink, theme.ink),
    "chosen": (theme.act, theme.act, theme.card),
    "in": (theme.kraft, theme.line, theme.soft),
}
KEY_LEAN = 0.22  # cups on keys are flatter, so their walls lean more


class CupDrawing(Drawing):
    """A large cup; ``number`` None leaves it blank, ``filled`` heaps grains in it."""

    follows: ClassVar[tuple[str, ...]] = ("number", "look", "filled")

    number = NumericProperty(None, allownone=True)
    look = OptionProperty("yours", options=LOOKS)
    filled = BooleanProperty(False)

    def paint(self, pencil: Pencil) -> None:
        """Draw the cup as large as the widget."""
        ground, edge, words = LOOK_COLOURS[self.look]
        draw_cup(
            pencil, (0, 0, self.wide, self.high), ground, rim=max(5.0, self.wide * 0.058),
            edge=edge, number=_digits(self.number), size=max(self.height * 0.58, 20),
            words=words, filled=self.filled, lean=0.13,
        )  # fmt: skip


class CupKey(Tappable, Drawing):
    """A cup to tap, its pair's ``name`` under it when it has one."""

    follows: ClassVar[tuple[str, ...]] = ("number", "name", "look", "pressed")

    number = NumericProperty(0)
    name = StringProperty("")
    look = OptionProperty("out", options=LOOKS)

    def paint(self, pencil: Pencil) -> None:
        """Draw the cup and the name."""
        ground, edge, words = LOOK_COLOURS[self.look]
        if self.pressed and self.look != "chosen":
            ground = theme.hair
        size = theme.cup_number if self.name else theme.row_cup_number
        named = theme.label * 1.35 / pencil.unit if self.name else 0
        draw_cup(
            pencil, (0, 0, self.wide, self.high - named - 3), ground,
            rim=7 if self.name else 6, edge=edge, number=_digits(self.number), size=size,
            words=words, lean=KEY_LEAN if self.name else 0.17,
        )  # fmt: skip
        if self.name:
            mine = self.look in ("chosen", "yours")
            colour = theme.act if self.look == "chosen" else theme.ink
            pencil.text(
                self.name, self.wide / 2, self.high - 0.3 * theme.label / pencil.unit,
                theme.label, colour, bold=mine, anchor="middle", room=self.wide + 4,
            )  # fmt: skip


def _digits(number: float | None) -> str:
    return "" if number is None else str(int(number))


class MoreKey(Tappable, Drawing):
    """Turns to the other cups: a word and a chevron in an outline."""

    follows: ClassVar[tuple[str, ...]] = ("text", "pressed")
    text = StringProperty("")

    def paint(self, pencil: Pencil) -> None:
        """Draw the outline, the word and the chevron."""
        ground = theme.hair if self.pressed else theme.sheet
        pencil.box(0, 0, self.wide, self.high, 14, ground)
        pencil.frame(0, 0, self.wide, self.high, 14, 2, theme.ink)
        room = self.wide - 40 if self.text else 0
        x = self.wide - 16 if self.text else self.wide / 2
        signs.chevron(pencil, x, self.high / 2, 8, theme.ink)
        size = theme.label
        baseline = self.high / 2 + CAP / 2 * size / pencil.unit
        pencil.text(self.text, 10, baseline, size, theme.ink, bold=True, room=max(room, 1))
