"""Parts of the cup table: the dots of its list, the card of a cup, a step, the other outcomes."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import BooleanProperty, ListProperty, NumericProperty, OptionProperty
from kivy.properties import StringProperty as Text
from kivy.uix.boxlayout import BoxLayout
from kivy.uix.widget import Widget

from kiosk.ui import kv_files
from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark, signs
from kiosk.ui.widgets.action_button import SecondButton
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.cup_key import LOOKS
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

DOT, NOW_DOT, WIDEST_APART = 5.5, 7.0, 27.0  # units; radius of a dot, of the present one
PLACES = 4  # as wide as one of so many is a button that stands alone
STEP_LOOKS = ["now", "done", "then"]


class QueueDots(Drawing):
    """One dot a cup: done, without (a mass), aside, now, to come."""

    follows: ClassVar[tuple[str, ...]] = ("dots",)
    dots = ListProperty([])

    def paint(self, pencil: Pencil) -> None:
        """Draw them from left to right."""
        apart = (self.wide - 2 * NOW_DOT) / max(len(self.dots) - 1, 1)
        for place, look in enumerate(self.dots):
            x, y = NOW_DOT + place * min(apart, WIDEST_APART), self.high / 2
            if look == "now":
                pencil.disc(x, y, NOW_DOT, theme.act)
                continue
            pencil.disc(x, y, DOT, theme.ink if look != "to come" else theme.line)
            if look != "done":
                pencil.disc(x, y, DOT - 2, theme.lamp if look == "aside" else theme.sheet)
            if look == "without":
                pencil.stroke([(x - DOT, y), (x + DOT, y)], 2, theme.ink)


class QueueCard(Tappable, Drawing):
    """The cup that is waited for, whose it is, and who comes then; a tap means another cup."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "kept")

    text = Text("")  # what a tap does
    number = NumericProperty(0)
    look = OptionProperty("yours", options=LOOKS)
    kept = BooleanProperty(False)
    when = Text("")
    team = Text("")
    then = Text("")

    def paint(self, pencil: Pencil) -> None:
        """Draw the ground."""
        ground = theme.hair if self.pressed else theme.kraft
        pencil.box(0, 0, self.wide, self.high, 18, ground)


class QueueStep(Drawing):
    """One of the two things to do: its number, or a tick where it is done."""

    follows: ClassVar[tuple[str, ...]] = ("number", "look")
    number = NumericProperty(1)
    text = Text("")
    look = OptionProperty("then", options=STEP_LOOKS)

    def paint(self, pencil: Pencil) -> None:
        """Draw the outline and the number."""
        now = self.look == "now"
        edge: Colour = theme.act if now else theme.line
        pencil.box(0, 0, self.wide, self.high, 14, theme.card if now else theme.sheet)
        pencil.frame(0, 0, self.wide, self.high, 14, 4 if now else 2, edge)
        x, y = 34.0, self.high / 2
        if self.look == "done":
            mark.badge(pencil, "tick", x, y, 17)
            return
        pencil.disc(x, y, 17, edge if now else theme.sheet)
        if not now:
            pencil.ring(x, y, 16, 3, edge)
        size = theme.step_name
        pencil.text(
            str(int(self.number)), x, y + CAP / 2 * size / pencil.unit, size,
            theme.card if now else theme.soft, bold=True, anchor="middle",
        )  # fmt: skip


class RecordedBand(Drawing):
    """A large tick and a sentence: that is written down."""

    text = Text("")

    def paint(self, pencil: Pencil) -> None:
        """Draw the band and its tick."""
        pencil.box(0, 0, self.wide, self.high, 18, theme.card)
        pencil.frame(0, 0, self.wide, self.high, 18, 3, theme.ink)
        y = self.high / 2
        radius = min(34.0, y - 8)
        pencil.disc(56, y, radius, theme.ink)
        signs.tick(pencil, 56, y, radius, theme.sheet)


class OutcomeRow(BoxLayout):
    """Second buttons side by side, from ``buttons``; dispatches ``on_press`` with what one says."""

    buttons = ListProperty([])

    def __init__(self, **kwargs: Any) -> None:
        self.register_event_type("on_press")
        super().__init__(**kwargs)

    def on_press(self, says: object) -> None:
        """Nothing by itself."""

    def on_buttons(self, *_: Any) -> None:
        """Make them anew when they are others."""
        self.clear_widgets()
        for view in self.buttons:
            made = SecondButton(text=view.text)
            made.bind(on_release=lambda _made, says=view.says: self.dispatch("on_press", says))
            self.add_widget(made)
        if len(self.buttons) == 1:
            for _place in range(PLACES - 1):
                self.add_widget(Widget())
