"""The sheet while the bench lies over its right half: instruction and buttons, nothing else."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import SheetView
from kiosk.ui.screens.parts import SheetContent

kv_files.load(__file__)


class CompactSheet(SheetContent):
    """Shows what every view has."""

    view = ObjectProperty(SheetView(screen="compact"), rebind=True)
