"""Text that always fits its box: it wraps, and only where that does not help it is set smaller."""

from __future__ import annotations

import re
from typing import Any

from kivy.clock import Clock
from kivy.properties import NumericProperty
from kivy.uix.label import Label

from kiosk.ui import kv_files
from kiosk.ui.theme import theme
from kiosk.ui.widgets.pencil import text_width

kv_files.load(__file__)

_TAGS = re.compile(r"\[/?[a-z_]+(=[^\]]*)?\]")


class FitLabel(Label):
    """A label of ``type_size`` pixels that wraps to its width and stays inside its height.

    Only when the wrapped text is still too large is it set smaller, down to the smallest legible
    size of the theme.
    """

    type_size = NumericProperty(theme.body)

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._refit = Clock.create_trigger(self._fit_now, -1)
        for name in ("text", "size", "padding", "type_size", "font_name", "bold", "line_height"):
            self.fbind(name, self._refit)
        self._fit_now()

    def _fit_now(self, *_: Any) -> None:
        size = round(self.type_size)
        self._set_in(size)
        while size > theme.text_floor and not self._fits(size):
            size -= 1
            self._set_in(size)

    def _set_in(self, size: int) -> None:
        self.font_size = size
        self.texture_update()

    def _fits(self, size: int) -> bool:
        if self.width < 1 or self.height < 1 or not self.text:
            return True
        bold = self.bold or self.font_name == theme.bold
        words = _TAGS.sub("", self.text) if self.markup else self.text
        widest = max((text_width(word, size, bold) for word in words.split()), default=0)
        room = self.width - self.padding[0] - self.padding[2]
        return bool(widest <= room and self.texture_size[1] <= self.height + 1)
