"""Pouring: how many pieces by now, between which numbers, how good a key it would be."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import PourView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class PourSheet(StepSheet):
    """Shows a PourView."""

    view = ObjectProperty(PourView(), rebind=True)
