"""The drawer of the scale: which one it is, what is known of it, what it showed just now."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import ScaleView
from kiosk.ui.screens.parts import SheetContent

kv_files.load(__file__)


class ScaleSheet(SheetContent):
    """Shows a ScaleView."""

    view = ObjectProperty(ScaleView(), rebind=True)
