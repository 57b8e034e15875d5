"""The cup table of a round; a short tone when a mass is written down."""

from __future__ import annotations

from typing import Any

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.queue_views import QueueView
from kiosk.ui.presenters.views import ButtonView
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.tone import tone

kv_files.load(__file__)


class QueueSheet(SheetContent):
    """Shows a QueueView."""

    view = ObjectProperty(QueueView(), rebind=True)

    def __init__(self, **kwargs: Any) -> None:
        self._signal: str | None = None  # the newest mass that was told
        super().__init__(**kwargs)

    def on_view(self, _instance: Any, view: QueueView) -> None:
        """Sound when another mass was written down while it lies there."""
        if view.kept and view.signal != self._signal:
            self._signal = view.signal
            tone.sound()

    def said(self, button: ButtonView | None) -> None:
        """The card was tapped."""
        if button is not None and button.says is not None:
            self.desk.press(button.says)

    @staticmethod
    def step_text(view: QueueView, place: int) -> str:
        """The words of one of the two steps."""
        return view.pair[place].text if view.pair else ""

    @staticmethod
    def step_look(view: QueueView, place: int) -> str:
        """How it looks."""
        return view.pair[place].look if view.pair else "then"
