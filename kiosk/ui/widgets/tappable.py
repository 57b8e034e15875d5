"""A thing that can be tapped: one finger, one release, one event."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.clock import Clock
from kivy.input import MotionEvent
from kivy.properties import BooleanProperty
from kivy.uix.widget import Widget

from kiosk.ui.theme import theme

AGAIN_AFTER_S = 0.4  # a finger that bounces on the glass is one tap


class Tappable(Widget):
    """Dispatches ``on_release`` once a tap; ``pressed`` while the finger rests on it.

    A second touch within ``again_after`` seconds of a release is swallowed. The target reaches
    at least ``theme.tap`` pixels each way, also when the drawing is smaller.
    """

    again_after: ClassVar[float] = AGAIN_AFTER_S

    pressed = BooleanProperty(False)
    tappable = BooleanProperty(True)

    def __init__(self, **kwargs: Any) -> None:
        self.register_event_type("on_release")
        super().__init__(**kwargs)
        self._released_at = float("-inf")

    def on_release(self) -> None:
        """Nothing by itself."""

    def target(self) -> tuple[float, float, float, float]:
        """The box that takes touches, in the parent's pixels: left, bottom, width, height."""
        width, height = max(self.width, theme.tap), max(self.height, theme.tap)
        return self.center_x - width / 2, self.center_y - height / 2, width, height

    def covers(self, x: float, y: float) -> bool:
        """Whether a touch at ``x``, ``y`` is meant for this thing."""
        left, bottom, width, height = self.target()
        return bool(left <= x <= left + width and bottom <= y <= bottom + height)

    def on_touch_down(self, touch: MotionEvent) -> bool:
        """Take the touch if it is ours, also when it comes too soon to count."""
        if not self.tappable or self.disabled or not self.covers(*touch.pos):
            return bool(super().on_touch_down(touch))
        if not self.pressed and Clock.get_time() - self._released_at >= self.again_after:
            touch.grab(self)
            self.pressed = True
        return True

    def on_touch_up(self, touch: MotionEvent) -> bool:
        """Count the tap if the finger is still on the thing."""
        if touch.grab_current is not self:
            return bool(super().on_touch_up(touch))
        touch.ungrab(self)
        self.pressed = False
        if self.covers(*touch.pos) and self.tappable:
            self._released_at = Clock.get_time()
            self.dispatch("on_release")
        return True
