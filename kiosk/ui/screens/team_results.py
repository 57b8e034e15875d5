"""One team's own page: its answers on their tents, and what to practise next."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.team_result_views import TeamResultsView
from kiosk.ui.presenters.views import ButtonView
from kiosk.ui.screens.parts import SheetContent

kv_files.load(__file__)


class TeamResultsSheet(SheetContent):
    """Shows a TeamResultsView."""

    view = ObjectProperty(TeamResultsView(), rebind=True)

    def press(self, button: ButtonView | None) -> None:
        """The one button."""
        if button is not None and button.says is not None:
            self.desk.press(button.says)
