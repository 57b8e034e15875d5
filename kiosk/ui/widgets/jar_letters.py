"""The letters of the jars as small jars: which one gets this key."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import BooleanProperty, ListProperty, NumericProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.cup_key import MoreKey
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

KEY_WIDE, GAP, MORE_WIDE = 64, 6, 108  # units
LID_HIGH = 12


class JarKey(Tappable, Drawing):
    """A jar with a letter; a used one cannot be tapped and says so with ``used_text``.

    Without a ``lid`` it stands for a box.
    """

    follows: ClassVar[tuple[str, ...]] = (
        "letter", "used", "chosen", "used_text", "pressed", "lid",
    )  # fmt: skip

    letter = StringProperty("")
    used = BooleanProperty(False)
    chosen = BooleanProperty(False)
    used_text = StringProperty("")
    lid = BooleanProperty(True)

    def on_used(self, *_: Any) -> None:
        """A used letter takes no touches."""
        self.tappable = not self.used

    def paint(self, pencil: Pencil) -> None:
        """Draw lid, body and letter."""
        ground, edge, words = theme.card, theme.ink, theme.ink
        if self.used:
            ground, edge, words = theme.kraft, theme.line, theme.soft
        elif self.chosen:
            ground, edge, words = theme.act, theme.act, theme.card
        elif self.pressed:
            ground = theme.hair
        wide, body = self.wide, LID_HIGH + 2 if self.lid else 3
        if self.lid:
            pencil.box(wide * 0.2, 0, wide * 0.6, LID_HIGH, 3, edge)
        pencil.box(0, body - 3, wide, self.high - body + 3, self._corner(), ground)
        pencil.frame(0, body - 3, wide, self.high - body + 3, self._corner(), 3, edge)
        size = theme.pan_label if self.used else theme.main_button
        middle = body + (self.high - body) / 2 - (13 if self.used else 2)
        pencil.text(self.letter, wide / 2, middle + CAP / 2 * size / pencil.unit, size, words,
                    bold=True, anchor="middle")  # fmt: skip
        if self.used:
            pencil.text(self.used_text, wide / 2, self.high - 12, theme.axis, words,
                        anchor="middle", room=wide - 8)  # fmt: skip

    def _corner(self) -> int:
        return 14 if self.lid else 4


class JarLetters(Drawing):
    """``letters`` in pages, on jars with ``lids`` or on boxes.

    ``used`` is a list of letters, ``chosen`` one letter or "".
    ``range_text`` with the places {first} and {last} names the page that the last key turns to.
    Dispatches ``on_choose(letter)``.
    """

    __events__ = ("on_choose",)

    letters = ListProperty([])
    used = ListProperty([])
    chosen = StringProperty("")
    used_text = StringProperty("")
    range_text = StringProperty("{first}{last}")
    lids = BooleanProperty(True)
    page = NumericProperty(0)

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._keys: list[JarKey] = []
        self._more = MoreKey()
        self._more.bind(on_release=self._turn)
        for name in ("letters", "chosen", "size"):
            self.fbind(name, self._turn_to_chosen)
        for name in ("letters", "used_text", "range_text", "page", "size"):
            self.fbind(name, self._rebuild)
        for name in ("used", "chosen", "lids"):
            self.fbind(name, self._recolour)
        self.fbind("pos", self._arrange)
        theme.bind(u=self._rebuild)
        self._turn_to_chosen()
        self._rebuild()

    def on_choose(self, letter: str) -> None:
        """Nothing by itself."""

    def key_wide(self) -> float:
        """Width of one jar in pixels."""
        return float(max(KEY_WIDE * theme.u, theme.tap))

    def per_page(self) -> int:
        """How many jars stand beside each other; all of them if they fit without turning."""
        step, gap = self.key_wide() + GAP * theme.u, GAP * theme.u
        if len(self.letters) * step - gap <= self.width:
            return max(1, len(self.letters))
        return max(1, int((self.width - self._more_wide()) // step))

    def pages(self) -> list[list[str]]:
        """The letters page by page."""
        size = self.per_page()
        return [self.letters[first : first + size] for first in range(0, len(self.letters), size)]

    def _more_wide(self) -> float:
        return float(max(MORE_WIDE * theme.u, theme.tap))

    def _turn_to_chosen(self, *_: Any) -> None:
        if self.chosen in self.letters:
            self.page = self.letters.index(self.chosen) // self.per_page()

    def _turn(self, _key: MoreKey) -> None:
        self.page = (self.page + 1) % len(self.pages())

    def _rebuild(self, *_: Any) -> None:
        pages = self.pages()
        page = min(int(self.page), max(len(pages) - 1, 0))
        letters = pages[page] if pages else []
        if [key.letter for key in self._keys] != letters:
            self.clear_widgets()
            self._keys = [JarKey(letter=letter) for letter in letters]
            for key in self._keys:
                key.bind(on_release=self._choose)
                self.add_widget(key)
        self._name_next(pages, page)
        self._recolour()
        self._arrange()

    def _name_next(self, pages: list[list[str]], page: int) -> None:
        if self._more.parent:
            self.remove_widget(self._more)
        if len(pages) > 1:
            following = pages[(page + 1) % len(pages)]
            self._more.text = self.range_text.format(first=following[0], last=following[-1])
            self.add_widget(self._more)

    def _choose(self, key: JarKey) -> None:
        self.dispatch("on_choose", str(key.letter))

    def _recolour(self, *_: Any) -> None:
        for key in self._keys:
            key.used_text = self.used_text
            key.lid = self.lids
            key.used = key.letter in self.used
            key.chosen = key.letter == self.chosen

    def _arrange(self, *_: Any) -> None:
        step = self.key_wide() + GAP * theme.u
        if self._more.parent:
            step = max(step, (self.width - self._more_wide()) / self.per_page())
        for place, key in enumerate(self._keys):
            key.size = (self.key_wide(), max(self.height, 1))
            key.pos = (self.x + place * step, self.y)
        self._more.size = (self._more_wide(), max(self.height - LID_HIGH * theme.u, 1))
        self._more.pos = (self.right - self._more.width, self.y)

    def paint(self, pencil: Pencil) -> None:
        """Nothing under the keys."""
