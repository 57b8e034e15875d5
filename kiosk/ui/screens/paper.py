"""A sheet of answers, typed from paper on a keypad."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from kivy.properties import ObjectProperty

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.sheet_views import PaperRow, PaperView
from kiosk.ui.presenters.views import ButtonView
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.widgets.number_pad import RUB_OUT

kv_files.load(__file__)


class PaperSheet(SheetContent):
    """Shows a PaperView."""

    view = ObjectProperty(PaperView(), rebind=True)

    @staticmethod
    def row(row: PaperRow, view: PaperView) -> dict[str, Any]:
        """A row for the drawing."""
        return asdict(row) | {"typing_second": bool(view.second_name)}

    def choose(self, place: int) -> None:
        """A row was touched."""
        self.desk.press(PersonEvent(Person.CHOOSE, place))

    def key(self, says: str) -> None:
        """A key of the keypad."""
        rubbed = says == RUB_OUT
        self.desk.press(PersonEvent(Person.RUB_OUT) if rubbed else PersonEvent(Person.TYPE, says))

    def press(self, button: ButtonView | None) -> None:
        """One of the buttons."""
        if button is not None and button.says is not None:
            self.desk.press(button.says)
