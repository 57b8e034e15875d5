"""Teaching the kiosk a balance: its lines as they come, what was found in them, what to do."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.teach_views import FindingView, TeachView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)

_NOTHING = FindingView(kind="number", name="")


class TeachSheet(StepSheet):
    """Shows a TeachView."""

    view = ObjectProperty(TeachView(), rebind=True)

    @staticmethod
    def finding(view: TeachView, place: int) -> FindingView:
        """The finding at that place; an empty one where something is amiss instead."""
        return view.findings[place] if place < len(view.findings) else _NOTHING
