"""Cards to choose from, over the whole width: which pair, which material."""

from __future__ import annotations

from typing import Any

from kivy.properties import ObjectProperty
from kivy.uix.widget import Widget

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import Choice, ChoicesView
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.widgets.action_button import ChoiceCard

kv_files.load(__file__)

COLUMNS = 5
FEW_COLUMNS, FEW = 3, 6  # few cards are larger ones


class ChoicesSheet(SheetContent):
    """Shows a ChoicesView; `desk.chosen` is told what was chosen."""

    view = ObjectProperty(ChoicesView(screen="choices"), rebind=True)

    def on_view(self, _instance: Any, view: ChoicesView) -> None:
        """Lay the cards out again when they are others."""
        if "cards" not in self.ids:
            return
        cards = self.ids.cards
        cards.cols = FEW_COLUMNS if len(view.choices) <= FEW else COLUMNS
        cards.clear_widgets()
        for choice in view.choices:
            cards.add_widget(self._card(choice))
        for _ in range(-len(view.choices) % cards.cols):
            cards.add_widget(Widget())

    def on_kv_post(self, *_: Any) -> None:
        """Show what the first view says."""
        self.on_view(self, self.view)

    def _card(self, choice: Choice) -> ChoiceCard:
        card = ChoiceCard(
            text=choice.text, note=choice.note, cup_number=choice.cup_number, chosen=choice.chosen
        )
        card.bind(on_release=lambda *_: self.desk.chosen(choice.value))
        return card
