"""The drawer of the scale: which one it is, what is known of it."""

from __future__ import annotations

from typing import Any

from kivy.properties import ObjectProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import ScaleView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class ScaleFact(BoxLayout):
    """One fact: its name above, what is known below."""

    name = StringProperty("")
    known = StringProperty("")


class ScaleSheet(StepSheet):
    """Shows a ScaleView."""

    view = ObjectProperty(ScaleView(), rebind=True)

    def on_view(self, _instance: Any, view: ScaleView) -> None:
        """Lay the facts out again when they are others."""
        if "facts" not in self.ids:
            return
        row = self.ids.facts
        if [(fact.name, fact.known) for fact in reversed(row.children)] == list(view.facts):
            return
        row.clear_widgets()
        for name, known in view.facts:
            row.add_widget(ScaleFact(name=name, known=known))

    def on_kv_post(self, *_: Any) -> None:
        """Show what the first view says."""
        self.on_view(self, self.view)
