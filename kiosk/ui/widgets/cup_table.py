"""The cups that are out, in places that never move."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import ListProperty, NumericProperty, StringProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_key import CupKey, MoreKey
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil

COLUMNS, ROWS = 5, 3
KEY_WIDE, KEY_HIGH, ROW_GAP = 104, 92, 2  # units; the gap is the least between two rows


class CupTable(Drawing):
    """Five by three places for ``cups``, a list of (number, name); ``chosen`` is one number.

    Free places are short lines. With more than fifteen cups the last place turns the page and
    ``more_text`` stands on it. Dispatches ``on_choose(number)``.
    """

    follows: ClassVar[tuple[str, ...]] = ("cups", "page")
    __events__ = ("on_choose",)

    cups = ListProperty([])
    chosen = NumericProperty(None, allownone=True)
    mine = NumericProperty(None, allownone=True)
    page = NumericProperty(0)
    more_text = StringProperty("")

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._keys: list[CupKey] = []
        self._more: MoreKey | None = None
        for name in ("cups", "page", "more_text"):
            self.fbind(name, self._rebuild)
        for name in ("chosen", "mine"):
            self.fbind(name, self._recolour)
        for name in ("pos", "size"):
            self.fbind(name, self._arrange)
        theme.bind(u=self._arrange)
        self._rebuild()

    def on_choose(self, number: int) -> None:
        """Nothing by itself."""

    def on_chosen(self, *_: Any) -> None:
        """Turn to the page on which the chosen cup stands."""
        for place, (number, _name) in enumerate(self.cups):
            if number == self.chosen:
                self.page = place // self._per_page()

    def _per_page(self) -> int:
        places = COLUMNS * ROWS
        return places if len(self.cups) <= places else places - 1

    def shown(self) -> list[tuple[int, str]]:
        """The cups on the present page."""
        first = int(self.page) * self._per_page()
        return list(self.cups[first : first + self._per_page()])

    def _rebuild(self, *_: Any) -> None:
        if not self.shown() and self.page:
            self.page = 0  # comes back here with a page that exists
            return
        self.clear_widgets()
        self._keys = [CupKey(number=number, name=name) for number, name in self.shown()]
        for key in self._keys:
            key.bind(on_release=self._choose)
            self.add_widget(key)
        self._more = None
        if len(self.cups) > COLUMNS * ROWS:
            self._more = MoreKey(text=self.more_text)
            self._more.bind(on_release=self._turn)
            self.add_widget(self._more)
        self._recolour()
        self._arrange()

    def _recolour(self, *_: Any) -> None:
        for key in self._keys:
            looks = {self.mine: "yours", self.chosen: "chosen"}
            key.look = looks.get(key.number, "out")

    def _choose(self, key: CupKey) -> None:
        self.dispatch("on_choose", int(key.number))

    def _turn(self, _key: MoreKey) -> None:
        pages = -(-len(self.cups) // self._per_page())
        self.page = (self.page + 1) % pages

    def place(self, index: int) -> tuple[float, float]:
        """Left and top of a place in pixels from the upper left corner."""
        key_wide, key_high = self.key_size()
        across = (self.width - COLUMNS * key_wide) / (COLUMNS - 1)
        down = max(ROW_GAP * theme.u, min(12 * theme.u, (self.height - ROWS * key_high) / 2))
        column, row = index % COLUMNS, index // COLUMNS
        return column * (key_wide + across), row * (key_high + down)

    def key_size(self) -> tuple[float, float]:
        """Width and height of one place in pixels."""
        high = min(KEY_HIGH * theme.u, (self.height - 2 * ROW_GAP * theme.u) / ROWS)
        return min(KEY_WIDE * theme.u, self.width / COLUMNS), max(high, 1)

    def _arrange(self, *_: Any) -> None:
        keys = [*enumerate(self._keys)]
        if self._more:
            keys.append((COLUMNS * ROWS - 1, self._more))
        for index, key in keys:
            left, top = self.place(index)
            key.size = self.key_size()
            key.pos = (self.x + left, self.top - top - key.height)

    def paint(self, pencil: Pencil) -> None:
        """Draw the short lines of free places."""
        last = COLUMNS * ROWS - (1 if self._more else 0)
        key_wide, key_high = self.key_size()
        for index in range(len(self._keys), last):
            left, top = self.place(index)
            middle, level = (
                (left + key_wide / 2) / pencil.unit,
                (top + key_high * 0.6) / pencil.unit,
            )
            pencil.stroke([(middle - 31, level), (middle + 31, level)], 4, theme.hair)
