"""Pouring: how many pieces by now, between which numbers, how far to the goal."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import PourView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class PourSheet(StepSheet):
    """Shows a PourView."""

    view = ObjectProperty(PourView(), rebind=True)

    @staticmethod
    def panel_text(view: PourView) -> str:
        """The lines of the panel that say something."""
        goal, warning, good_to = (
            f"[b]{line}[/b]" if line else ""
            for line in (view.goal_text, view.warning, view.good_to)
        )
        lines = (goal, warning, view.between, good_to, view.jar_text)
        return "\n".join(line for line in lines if line)
