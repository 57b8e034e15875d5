"""Cups with numbers: one as a picture, one to tap, a row of them, a table of them."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import (
    BooleanProperty,
    ListProperty,
    NumericProperty,
    OptionProperty,
    StringProperty,
)
from kivy.uix.widget import Widget

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
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
        mark.chevron(pencil, x, self.high / 2, 8, theme.ink)
        size = theme.label
        baseline = self.high / 2 + CAP / 2 * size / pencil.unit
        pencil.text(self.text, 10, baseline, size, theme.ink, bold=True, room=max(room, 1))


class CupRow(Drawing):
    """Small cups in a row: ``numbers`` in order, ``mine`` tinted, short lines for free ``places``.

    ``more`` is the text of a key after the last cup. Dispatches ``on_choose(number)`` and
    ``on_more()``; with ``tappable`` False it is a picture only.
    """

    follows: ClassVar[tuple[str, ...]] = ("numbers", "places")
    __events__ = ("on_choose", "on_more")

    numbers = ListProperty([])
    mine = NumericProperty(None, allownone=True)
    more = StringProperty("")
    places = NumericProperty(0)
    tappable = BooleanProperty(True)
    cup_wide = NumericProperty(66.0)
    spacing = NumericProperty(76.0)

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._keys: list[Widget] = []
        for name in ("numbers", "mine", "more", "tappable"):
            self.fbind(name, self._rebuild)
        for name in ("pos", "size", "cup_wide", "spacing"):
            self.fbind(name, self._arrange)
        theme.bind(u=self._arrange_again)
        self._rebuild()

    def on_choose(self, number: int) -> None:
        """Nothing by itself."""

    def on_more(self) -> None:
        """Nothing by itself."""

    def step(self) -> float:
        """Pixels from one cup to the next: targets never overlap."""
        return float(max(self.spacing * theme.u, theme.tap + 2 if self.tappable else 0))

    def _rebuild(self, *_: Any) -> None:
        self.clear_widgets()
        self._keys = [self._key(number) for number in self.numbers]
        if self.more:
            key = MoreKey(text=self.more)
            key.bind(on_release=self._turn)
            self._keys.append(key)
        for key in self._keys:
            self.add_widget(key)
        self._arrange()

    def _key(self, number: int) -> CupKey:
        look = "yours" if number == self.mine else "out"
        key = CupKey(number=number, look=look, tappable=self.tappable)
        key.bind(on_release=self._choose)
        return key

    def _choose(self, key: CupKey) -> None:
        self.dispatch("on_choose", int(key.number))

    def _turn(self, _key: MoreKey) -> None:
        self.dispatch("on_more")

    def _arrange_again(self, *_: Any) -> None:
        self._arrange()

    def _arrange(self, *_: Any) -> None:
        wide = self.cup_wide * theme.u
        for place, key in enumerate(self._keys):
            more = isinstance(key, MoreKey)
            key.size = (wide * 1.5 if more else wide, max(self.height, 1))
            key.pos = (self.x + place * self.step(), self.y)

    def paint(self, pencil: Pencil) -> None:
        """Draw the short lines of free places."""
        step = self.step() / pencil.unit
        for place in range(len(self.numbers), int(self.places)):
            middle = place * step + self.cup_wide / 2
            if middle + 27 <= self.wide:
                pencil.stroke(
                    [(middle - 25, self.high - 3), (middle + 25, self.high - 3)], 4, theme.hair
                )
