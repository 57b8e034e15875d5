"""The table: what can be done now, the cups that are out at its back edge, the coach's drawers."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import HomeView
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

DRAWER_TOP = 8  # units of the table's front edge above the drawers
FOLD = 15


class TableFront(Drawing):
    """The front of the table, under its top."""

    def paint(self, pencil: Pencil) -> None:
        """Draw the edge and the front."""
        pencil.box(0, 0, self.wide, self.high, 0, theme.drawer)
        pencil.box(0, 0, self.wide, DRAWER_TOP, 0, theme.drawer_d)


class Drawer(Tappable, Drawing):
    """A locked drawer with a label in its holder."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "text")
    text = StringProperty("")
    note = StringProperty("")

    def paint(self, pencil: Pencil) -> None:
        """Draw front, label holder, knob and keyhole."""
        wide, high = self.wide, self.high
        pencil.box(0, 0, wide, high, 10, theme.hair if self.pressed else theme.bench)
        pencil.frame(0, 0, wide, high, 10, 4, theme.drawer_d)
        pencil.box(8, 12, wide - 16, high - 64, 6, theme.sheet)
        pencil.frame(8, 12, wide - 16, high - 64, 6, 2.5, theme.ink)
        pencil.disc(wide / 2 - 3, high - 23, 15, theme.drawer_d)
        pencil.disc(wide / 2, high - 26, 15, theme.steel)
        pencil.ring(wide / 2, high - 26, 15, 3, theme.ink)
        mark.SIGNS["keyhole"](pencil, wide - 24, high - 26, 9, theme.ink)


class ThingCard(Drawing):
    """The folded card in front of a thing on the table."""

    def paint(self, pencil: Pencil) -> None:
        """Draw the fold and the front."""
        wide, high = self.wide, self.high
        fold = [(12, 1), (wide - 12, 1), (wide - 1, FOLD), (1, FOLD)]
        pencil.fill(fold, theme.hair)
        pencil.stroke(fold, 2, theme.line, closed=True)
        pencil.box(0, FOLD, wide, high - FOLD, 5, theme.sheet)
        pencil.frame(0, FOLD, wide, high - FOLD, 5, 2, theme.line)


class CardedThing(Tappable):
    """A thing and its card: one target."""

    text = StringProperty("")
    note = StringProperty("")


class CoachLock(Tappable):
    """The coach's lock; while it is open a tap locks the drawers."""

    text = StringProperty("")


class HomeSheet(SheetContent):
    """Shows a HomeView."""

    view = ObjectProperty(HomeView(), rebind=True)
    guesses = BooleanProperty(False)  # something on the table can be guessed
