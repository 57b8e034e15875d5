"""The samples so far, and one sentence of advice."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui import kv_files
from kiosk.ui.presenters.views import SampleRow, SamplesView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class SamplesSheet(StepSheet):
    """Shows a SamplesView."""

    view = ObjectProperty(SamplesView(), rebind=True)

    @staticmethod
    def row(row: SampleRow) -> dict[str, object]:
        """A row as the widget takes it."""
        return {
            "name": row.name,
            "bricks": row.bricks,
            "differing_bricks": row.differing,
            "mass_text": row.mass_text,
            "state": row.state,
            "note": row.note,
        }

    def undo(self, index: int) -> None:
        """A kept sample is taken back."""
        self.desk.press(PersonEvent(Person.UNDO, index))
