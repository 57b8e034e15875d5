"""The cups that are out; the chosen one is expected on the pan."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.views import HandInView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class HandInSheet(StepSheet):
    """Shows a HandInView."""

    view = ObjectProperty(HandInView(), rebind=True)

    def choose(self, number: int) -> None:
        """A number was tapped."""
        self.desk.press(PersonEvent(Person.CHOOSE, number))
