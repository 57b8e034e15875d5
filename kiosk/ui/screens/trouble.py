"""What is in the way, what to do about it in order, and what is kept."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import TroubleView
from kiosk.ui.screens.parts import SheetContent

kv_files.load(__file__)


class TroubleSheet(SheetContent):
    """Shows a TroubleView."""

    view = ObjectProperty(TroubleView(), rebind=True)
