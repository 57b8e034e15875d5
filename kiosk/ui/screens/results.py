"""The table of results: for the coach, and large for the wall."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.result_views import ResultsView
from kiosk.ui.presenters.views import ButtonView
from kiosk.ui.screens.parts import SheetContent

kv_files.load(__file__)


class TableSheet(SheetContent):
    """Shows a ResultsView."""

    view = ObjectProperty(ResultsView(), rebind=True)

    def press(self, button: ButtonView | None) -> None:
        """One of the buttons."""
        if button is not None and button.says is not None:
            self.desk.press(button.says)


class ResultsSheet(TableSheet):
    """For the coach; a tap on the table turns it from numbers to tents and back."""

    def turn_over(self) -> None:
        """Tents instead of numbers, or the other way."""
        self.desk.press(PersonEvent(Person.COVER))


class ResultsWallSheet(TableSheet):
    """For everybody."""
