"""The finished key: count, interval, what it costs, the letter for the jar."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import KeyView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class KeySheet(StepSheet):
    """Shows a KeyView."""

    view = ObjectProperty(KeyView(), rebind=True)
