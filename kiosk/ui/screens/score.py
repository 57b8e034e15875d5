"""One scored cup: the sum, the tent, the last tries."""

from __future__ import annotations

from typing import Any

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import ScoreView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class ScoreSheet(StepSheet):
    """Shows a ScoreView; the marker climbs once for each scored cup."""

    view = ObjectProperty(ScoreView(), rebind=True)
    _climbed = ""

    def on_view(self, *_: Any) -> None:
        """Send the marker up when the cup is another one."""
        if self.view.cup_key and self.view.cup_key != self._climbed and "tent" in self.ids:
            self._climbed = self.view.cup_key
            self.ids.tent.climb()
