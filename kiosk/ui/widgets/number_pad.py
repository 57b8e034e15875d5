"""Keys to type digits with: 7-8-9 on top, a wide 0, a point where one is wanted, rub-out."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import BooleanProperty, NumericProperty, StringProperty
from kivy.uix.widget import Widget

from kiosk.ui import kv_files
from kiosk.ui.theme import theme
from kiosk.ui.widgets import signs
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

RUB_OUT, POINT = "rub out", "."
_ROWS = ("789", "456", "123")
_GAP = 6  # units between two keys


class PadKey(Tappable, Drawing):
    """One key; ``text`` is its digit, empty on the rub-out."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "says")
    again_after: ClassVar[float] = 0.12  # one digit is often typed twice

    text = StringProperty("")
    says = StringProperty("")
    type_size = NumericProperty(theme.pad_digit)

    def paint(self, pencil: Pencil) -> None:
        """Draw the key and the sign of the rub-out."""
        quiet = theme.kraft if self.says == RUB_OUT else theme.card
        pencil.box(0, 0, self.wide, self.high, 14, theme.act_t if self.pressed else quiet)
        pencil.frame(0, 0, self.wide, self.high, 14, 2, theme.line)
        if self.says == RUB_OUT:
            half = min(self.high * 0.32, self.wide * 0.3)
            signs.rub_out(pencil, self.wide / 2, self.high / 2, half, theme.ink)


class NumberPad(Widget):
    """Dispatches ``on_key`` with a digit, POINT or RUB_OUT; knows nothing of what was typed."""

    with_point = BooleanProperty(False)

    def __init__(self, **kwargs: Any) -> None:
        self.register_event_type("on_key")
        self._keys: dict[str, PadKey] = {}
        super().__init__(**kwargs)
        for name in ("pos", "size", "with_point"):
            self.fbind(name, self._lay_out)
        theme.fbind("u", self._lay_out)
        self._lay_out()

    def on_key(self, _says: str) -> None:
        """Nothing by itself."""

    def _lay_out(self, *_: Any) -> None:
        last = ("0", POINT, RUB_OUT) if self.with_point else ("0", "0", RUB_OUT)
        rows = (*_ROWS, last)
        gap = _GAP * theme.u
        wide, high = (self.width - 2 * gap) / 3, (self.height - 3 * gap) / 4
        wanted = dict.fromkeys(key for row in rows for key in row)
        for gone in self._keys.keys() - wanted:
            self.remove_widget(self._keys.pop(gone))
        for number, row in enumerate(rows):
            y = self.y + (3 - number) * (high + gap)
            for place, says in enumerate(row):
                if row[:place].count(says):
                    continue
                key = self._key(says)
                span = row.count(says)
                key.pos = self.x + place * (wide + gap), y
                key.size = span * wide + (span - 1) * gap, high

    def _key(self, says: str) -> PadKey:
        if says not in self._keys:
            key = PadKey(says=says, text="" if says == RUB_OUT else says)
            key.bind(on_release=lambda made: self.dispatch("on_key", made.says))
            self._keys[says] = key
            self.add_widget(key)
        return self._keys[says]
