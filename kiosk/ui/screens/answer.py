"""The real number for all to see, and every guess on one tent."""

from __future__ import annotations

from typing import Any

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import AnswerView
from kiosk.ui.screens.parts import SheetContent

kv_files.load(__file__)


class AnswerSheet(SheetContent):
    """Shows an AnswerView; the markers climb once for each answer."""

    view = ObjectProperty(AnswerView(), rebind=True)
    _climbed = ""

    def on_view(self, *_: Any) -> None:
        """Send the markers up when the answer is another one."""
        if self.view.title and self.view.title != self._climbed and "tent" in self.ids:
            self._climbed = self.view.title
            self.ids.tent.climb()
