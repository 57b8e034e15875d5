"""The clock for the class, to be read from three metres; a touch anywhere leads back."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.animation import Animation
from kivy.properties import BooleanProperty, NumericProperty, ObjectProperty, StringProperty

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.palette import Colour
from kiosk.ui.presenters.wall_views import WallView
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_art import draw_cup
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

GLOW_S = 3.0  # a quiet sign: seen by who looks up, and by nobody else


class WallGlass(Tappable):
    """All of the sheet, as one thing to touch."""

    text = StringProperty("")


class WallBand(Drawing):
    """The ground of the sentence, brighter by ``glow``, and an empty cup before it."""

    follows: ClassVar[tuple[str, ...]] = ("cup", "glow")
    cup = BooleanProperty(False)
    glow = NumericProperty(0.0)

    def paint(self, pencil: Pencil) -> None:
        """Draw both."""
        pencil.box(0, 0, self.wide, self.high, 18, _between(theme.kraft, theme.lamp_t, self.glow))
        if self.cup:
            high = self.high - 36
            draw_cup(pencil, (16, 18, 1.45 * high, high), theme.card, rim=8)


class WallSheet(SheetContent):
    """Shows a WallView."""

    view = ObjectProperty(WallView(), rebind=True)
    glow = NumericProperty(0.0)

    def on_view(self, _instance: Any, view: WallView) -> None:
        """Let the band become brighter, or as it was, when a sign comes and goes."""
        wanted = 1.0 if view.sign else 0.0
        Animation.cancel_all(self, "glow")
        if self.glow == wanted:
            return
        lasts = theme.time(GLOW_S) * abs(wanted - self.glow)
        if lasts:
            Animation(glow=wanted, duration=lasts).start(self)
        else:
            self.glow = wanted

    def leave(self) -> None:
        """Back to the coach's page."""
        self.desk.press(PersonEvent(Person.HOME))


def _between(one: Colour, other: Colour, share: float) -> Colour:
    red, green, blue, seen = (a + (b - a) * share for a, b in zip(one, other, strict=True))
    return red, green, blue, seen
