"""Keep going, or leave it parked for now."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import LeaveView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class LeaveSheet(StepSheet):
    """Shows a LeaveView."""

    view = ObjectProperty(LeaveView(), rebind=True)
