"""A table top on which a picture of the gallery is laid out."""

from __future__ import annotations

from typing import Any

from kiosk.ui.theme import theme
from kiosk.ui.widgets.action_button import SecondButton
from kiosk.ui.widgets.fit_label import FitLabel
from kiosk.ui.widgets.pan import Pan
from kiosk.ui.widgets.sheet import Bench, Sheet
from kiosk.ui.widgets.status_strip import StatusStrip
from kiosk.ui.widgets.step_trail import StepTrail


class Table:
    """Places widgets by the look's units, from the upper left of the window."""

    def __init__(self, width: int, height: int) -> None:
        self.theme, self.width, self.height = theme, width, height
        self.root = Bench(size_hint=(None, None), size=(width, height))

    def put(self, widget: Any, x: float, y: float, wide: float, high: float) -> Any:
        u = self.theme.u
        widget.size_hint = (None, None)
        widget.size = (wide * u, max(high * u, widget.height if high == 0 else 0))
        widget.pos = (x * u, self.height - y * u - widget.height)
        self.root.add_widget(widget)
        return widget

    def sheet(self, *, step: int = 1, steps: int = 4, text: str = "") -> None:
        self.put(Sheet(), 416, 50, 598, 540)
        if text:
            self.put(StepTrail(step=step, steps=steps, text=text), 416, 62, 570, 40)

    def say(self, text: str, x: float, y: float, wide: float, high: float, **look: Any) -> None:
        bold = look.pop("heavy", True)
        label = FitLabel(text=text)
        label.font_name = self.theme.bold if bold else self.theme.regular
        for name, value in look.items():
            setattr(label, name, value)
        self.put(label, x, y, wide, high)

    def strip(self, **look: Any) -> None:
        strip = StatusStrip(**look)
        self.put(strip, 0, 0, self.width / self.theme.u, 40)
        strip.height = self.theme.strip_high
        strip.top = self.height

    def pan(self, **look: Any) -> None:
        self.put(Pan(**look), 16, 66, 384, 430)

    def button(self, text: str, sign: str | None, x: float = 28, wide: float = 140) -> None:
        self.put(SecondButton(text=text, sign=sign), x, 510, wide, 70)
