"""A few words to type, over the whole width."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import ObjectProperty, StringProperty
from kivy.utils import escape_markup, get_hex_from_color

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.page_views import TextView
from kiosk.ui.presenters.views import ButtonView
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.theme import theme
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.letter_keys import RUB_OUT
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

MOST_OFFERS = 4
CARET, QUIET = get_hex_from_color(theme.act), get_hex_from_color(theme.soft)


class WrittenLine(Drawing):
    """The place for the words: a line of the act colour under them."""

    def paint(self, pencil: Pencil) -> None:
        """Draw the ground and the line."""
        wide, high = self.wide, self.high
        pencil.box(0, 0, wide, high, 12, theme.card)
        pencil.box(0, high - 5, wide, 5, 2, theme.act)


class Offer(Tappable, Drawing):
    """Words to take with one tap."""

    follows: ClassVar[tuple[str, ...]] = ("pressed",)
    text = StringProperty("")

    def paint(self, pencil: Pencil) -> None:
        """Draw a slip of paper."""
        ground = theme.act_t if self.pressed else theme.kraft
        pencil.box(0, 0, self.wide, self.high, 10, ground)
        pencil.frame(0, 0, self.wide, self.high, 10, 2, theme.line)


class TextSheet(SheetContent):
    """Shows a TextView; the keys say what was typed."""

    view = ObjectProperty(TextView(), rebind=True)

    def on_kv_post(self, *_: Any) -> None:
        """Show what the first view says."""
        self.on_view(self, self.view)

    def on_view(self, _instance: Any, view: TextView) -> None:
        """Lay the offers out, and let the keys know where a word begins."""
        if "offers" not in self.ids:
            return
        self.ids.letters.begins = not view.typed or view.typed[-1:] in (" ", "-")
        offers = self.ids.offers
        texts = [offer.text for offer in reversed(offers.children)]
        if texts != list(view.offers[:MOST_OFFERS]):
            offers.clear_widgets()
            for text in view.offers[:MOST_OFFERS]:
                offer = Offer(text=text)
                offer.bind(on_release=self._taken)
                offers.add_widget(offer)

    def _taken(self, offer: Offer) -> None:
        self.desk.press(PersonEvent(Person.CHOOSE, offer.text))

    @staticmethod
    def written(typed: str, label: str) -> str:
        """What stands on the line: the words and a caret, or in quiet letters what is wanted."""
        if not typed:
            return f"[color={CARET}]|[/color] [color={QUIET}]{label}[/color]"
        return f"{escape_markup(typed)}[color={CARET}]|[/color]"

    def key(self, says: str) -> None:
        """A key was tapped."""
        rubbed = says == RUB_OUT
        self.desk.press(PersonEvent(Person.RUB_OUT) if rubbed else PersonEvent(Person.TYPE, says))

    def press(self, button: ButtonView | None) -> None:
        """Back, or done."""
        if button is not None and button.says is not None:
            self.desk.press(button.says)
