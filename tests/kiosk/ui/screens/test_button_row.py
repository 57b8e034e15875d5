"""The row of buttons below a sheet."""

from __future__ import annotations

from typing import Any

from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.views import button
from kiosk.ui.screens.parts import ButtonRow
from kiosk.ui.theme import theme
from tests.helpers.offscreen import unseen_frames

GO, UNDO = button("Go on", Person.GO_ON), button("Undo", Person.UNDO)


def test_a_second_button_gives_its_place_back_to_the_main_one(window: Any) -> None:
    row = ButtonRow(size_hint=(None, None), width=400, second=UNDO)
    window.add_widget(row)
    unseen_frames()
    (second,) = row.children
    assert second.width == 400
    row.main = GO
    unseen_frames()
    assert second.width == 188 * theme.u
    assert row.children[0].width > second.width
