"""The cups that are out, in one row."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import BooleanProperty, ListProperty, NumericProperty, StringProperty
from kivy.uix.widget import Widget

from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_key import CupKey, MoreKey
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil


class CupRow(Drawing):
    """Small cups in a row: ``numbers`` in order, ``mine`` tinted, short lines for free ``places``.

    ``more`` is the text of a key after the last cup. Dispatches ``on_choose(number)`` and
    ``on_others()``; with ``tappable`` False it is a picture only.
    """

    follows: ClassVar[tuple[str, ...]] = ("numbers", "places")
    __events__ = ("on_choose", "on_others")

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
        theme.bind(u=self._arrange)
        self._rebuild()

    def on_choose(self, number: int) -> None:
        """Nothing by itself."""

    def on_others(self) -> None:
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
        self.dispatch("on_others")

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
