"""The check of the scale: one weighing after the other, then what was found."""

from __future__ import annotations

from typing import Any

from kivy.properties import ListProperty, ObjectProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import CheckedView, CheckView
from kiosk.ui.screens.parts import SheetContent

kv_files.load(__file__)


class CheckFact(BoxLayout):
    """One fact: its name above, what is known below."""

    name = StringProperty("")
    known = StringProperty("")


class CheckFacts(BoxLayout):
    """A row of facts, each (name, what is known)."""

    facts = ListProperty([])

    def on_facts(self, _instance: Any, facts: list[tuple[str, str]]) -> None:
        """Lay them out again when there are others; else let the texts follow."""
        if len(self.children) != len(facts):
            self.clear_widgets()
            for _ in facts:
                self.add_widget(CheckFact())
        for fact, (name, known) in zip(reversed(self.children), facts, strict=True):
            fact.name, fact.known = name, known


class CheckSheet(SheetContent):
    """Shows a CheckView."""

    view = ObjectProperty(CheckView(), rebind=True)


class CheckedSheet(SheetContent):
    """Shows a CheckedView."""

    view = ObjectProperty(CheckedView(), rebind=True)
