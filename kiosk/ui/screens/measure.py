"""Measuring a container: its edges beside the keypad, and the container in the pan's place."""

from __future__ import annotations

from dataclasses import asdict

from kivy.properties import ObjectProperty
from kivy.uix.floatlayout import FloatLayout

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.views import ContainerView, EdgeRow, MeasureView
from kiosk.ui.screens.parts import StepSheet
from kiosk.ui.widgets.number_pad import RUB_OUT

kv_files.load(__file__)


class MeasureSheet(StepSheet):
    """Shows a MeasureView."""

    view = ObjectProperty(MeasureView(), rebind=True)

    @staticmethod
    def row(row: EdgeRow) -> dict[str, object]:
        """A row as the widget takes it."""
        return asdict(row)

    def key(self, says: str) -> None:
        """A key of the pad was tapped."""
        if says == RUB_OUT:
            self.desk.press(PersonEvent(Person.RUB_OUT))
        else:
            self.desk.press(PersonEvent(Person.TYPE, says))

    def choose(self, edge: str) -> None:
        """A row was tapped."""
        self.desk.press(PersonEvent(Person.CHOOSE, edge))


class ContainerPlace(FloatLayout):
    """Shows a ContainerView: the drawing over the card with the volume."""

    view = ObjectProperty(ContainerView(name="", shape="box", sizes=(), states=(), tags=()),
                          rebind=True)  # fmt: skip
