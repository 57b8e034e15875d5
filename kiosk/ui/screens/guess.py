"""One guess: the number typed so far, and the pad."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.views import GuessView
from kiosk.ui.screens.parts import StepSheet
from kiosk.ui.widgets.number_pad import RUB_OUT

kv_files.load(__file__)


class GuessSheet(StepSheet):
    """Shows a GuessView."""

    view = ObjectProperty(GuessView(), rebind=True)

    def key(self, says: str) -> None:
        """A key of the pad was tapped."""
        if says == RUB_OUT:
            self.desk.press(PersonEvent(Person.RUB_OUT))
        else:
            self.desk.press(PersonEvent(Person.TYPE, says))
