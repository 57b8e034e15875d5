"""The number to remember, the goal, the cups that are out."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import TakeCupView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class TakeCupSheet(StepSheet):
    """Shows a TakeCupView."""

    view = ObjectProperty(TakeCupView(), rebind=True)
