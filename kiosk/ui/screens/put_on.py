"""One thing to put on the pan, or to take off it."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import PutOnView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class PutOnSheet(StepSheet):
    """Shows a PutOnView."""

    view = ObjectProperty(PutOnView(), rebind=True)
