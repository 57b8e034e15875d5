"""The keypad in the pan's place: an adult types what the display of the balance shows."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty
from kivy.uix.floatlayout import FloatLayout

from kiosk.ui import kv_files
from kiosk.ui.palette import Colour
from kiosk.ui.presenters.pad_views import PadView
from kiosk.ui.theme import theme
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)


class SideKey(Tappable, Drawing):
    """A tall key beside the digits; the `main` one is the action, the other one quiet."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "main", "tappable")

    text = StringProperty("")
    main = BooleanProperty(False)

    def colours(self) -> tuple[Colour, Colour, Colour]:
        """Ground, outline and words in the present state."""
        if not self.tappable:
            return theme.kraft, theme.line, theme.soft
        if self.main:
            ground = theme.act_d if self.pressed else theme.act
            return ground, ground, theme.card
        return (theme.hair if self.pressed else theme.sheet), theme.ink, theme.ink

    def paint(self, pencil: Pencil) -> None:
        """Draw the key."""
        ground, edge, _ = self.colours()
        pencil.box(0, 0, self.wide, self.high, 14, ground)
        pencil.frame(0, 0, self.wide, self.high, 14, 2.5, edge)


class Display(Drawing):
    """The line with the digits so far; a second edge while something is wrong with them."""

    follows: ClassVar[tuple[str, ...]] = ("warns",)

    warns = BooleanProperty(False)

    def paint(self, pencil: Pencil) -> None:
        """Draw the ground and the edge."""
        pencil.box(0, 0, self.wide, self.high, 10, theme.card)
        edge, width = (theme.ink, 4) if self.warns else (theme.line, 2)
        pencil.frame(0, 0, self.wide, self.high, 10, width, edge)


class TypingPad(FloatLayout):
    """Shows a PadView; what is pressed goes to the desk."""

    desk = ObjectProperty(None, allownone=True)
    view = ObjectProperty(PadView(), rebind=True)

    def key(self, says: Any) -> None:
        """A digit, the point or the rub-out was tapped."""
        self.desk.pad_key(says)
