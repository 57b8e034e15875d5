"""Keys to type words with: digits, three rows of letters, space, a capital, rub-out."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import BooleanProperty, NumericProperty, StringProperty
from kivy.uix.widget import Widget

from kiosk.ui import kv_files
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark, signs
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

RUB_OUT, CAPITAL, SPACE = "rub out", "capital", " "
ROWS = ("1234567890", "qwertyuiop", "asdfghjkl'", "zxcvbnm,.-")
_LAST = ((CAPITAL, 1), (SPACE, 4), (RUB_OUT, 1))  # with which share of the last row
_GAP = 5  # units between two keys


class LetterKey(Tappable, Drawing):
    """One key; ``says`` is its small letter, or what it does."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "says", "lit")
    again_after: ClassVar[float] = 0.12  # a letter often stands twice

    text = StringProperty("")
    says = StringProperty("")
    lit = BooleanProperty(False)
    type_size = NumericProperty(theme.card_title)

    def paint(self, pencil: Pencil) -> None:
        """Draw the key and its sign, if it has one instead of a letter."""
        quiet = theme.kraft if self.says in (RUB_OUT, CAPITAL) else theme.card
        ground = theme.act_t if self.pressed or self.lit else quiet
        pencil.box(0, 0, self.wide, self.high, 12, ground)
        pencil.frame(0, 0, self.wide, self.high, 12, 2, theme.act if self.lit else theme.line)
        half = min(self.high * 0.3, 18)
        if self.says == RUB_OUT:
            signs.rub_out(pencil, self.wide / 2, self.high / 2, half, theme.ink)
        elif self.says == CAPITAL:
            mark.SIGNS["up"](pencil, self.wide / 2, self.high / 2, half, theme.ink)


class LetterKeys(Widget):
    """Dispatches ``on_key`` with a character or RUB_OUT.

    A capital comes after the key for it, and by itself where a word begins: see ``begins``.
    """

    begins = BooleanProperty(True)  # the next letter begins a word
    left_room = NumericProperty(0)  # pixels of the last row that others have
    right_room = NumericProperty(0)
    row_high = NumericProperty(0)
    capital = BooleanProperty(True)

    def __init__(self, **kwargs: Any) -> None:
        self.register_event_type("on_key")
        self._keys: dict[str, LetterKey] = {}
        super().__init__(**kwargs)
        for name in ("pos", "size", "left_room", "right_room"):
            self.fbind(name, self._lay_out)
        theme.fbind("u", self._lay_out)
        self._lay_out()

    def on_key(self, _says: str) -> None:
        """Nothing by itself."""

    def on_begins(self, *_: Any) -> None:
        """Small letters inside a word."""
        self.capital = self.begins

    def on_capital(self, *_: Any) -> None:
        """Show what the keys will write."""
        for says, key in self._keys.items():
            key.text = self._shown(says)
        self._keys[CAPITAL].lit = self.capital

    def pressed(self, says: str) -> None:
        """A key was tapped."""
        if says == CAPITAL:
            self.capital = not self.capital
            return
        written = says if says == RUB_OUT or not self.capital else says.upper()
        self.capital = False
        self.dispatch("on_key", written)
        self.capital = self.begins

    def _shown(self, says: str) -> str:
        if says in (RUB_OUT, CAPITAL, SPACE):
            return ""
        return says.upper() if self.capital else says

    def _lay_out(self, *_: Any) -> None:
        gap = _GAP * theme.u
        wide, high = (self.width - 9 * gap) / 10, (self.height - 4 * gap) / 5
        self.row_high = high
        for number, row in enumerate(ROWS):
            for place, says in enumerate(row):
                key = self._key(says)
                key.size = wide, high
                key.pos = self.x + place * (wide + gap), self.y + (4 - number) * (high + gap)
        room = self.width - self.left_room - self.right_room - 2 * gap
        share = room / sum(part for _, part in _LAST)
        x = self.x + self.left_room
        for says, part in _LAST:
            key = self._key(says)
            key.size = part * share, high
            key.pos = x, self.y
            x += key.width + gap

    def _key(self, says: str) -> LetterKey:
        if says not in self._keys:
            key = LetterKey(says=says, text=self._shown(says), size_hint=(None, None))
            key.lit = says == CAPITAL and self.capital
            key.bind(on_release=lambda made: self.pressed(made.says))
            self._keys[says] = key
            self.add_widget(key)
        return self._keys[says]
