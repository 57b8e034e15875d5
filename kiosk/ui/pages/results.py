"""The results of a round: how far they are, and which division's are wanted."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.state import RoundState
from kiosk.texts import say
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.pages.division_results import ResultsPage
from kiosk.ui.pages.kept_list import SHOWN
from kiosk.ui.pages.page import Page
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView


def stands(state: RoundState) -> str:
    """How far the divisions are."""
    stages = [state.stage(division) for division in state.divisions]
    if len(stages) > 1:
        done = sum(stage in SHOWN for stage in stages)
        return say("results.stands.several", done=done, of=len(stages))
    return say(f"results.stands.{stages[0]}") if stages else say("results.stands.none")


def results_page(room: Room) -> Page:
    """Which division, where there are several."""
    divisions = room.state.divisions
    if len(divisions) == 1:
        return ResultsPage(room, divisions[0])
    return DivisionsPage(room)


class DivisionsPage(RowsPage):
    """One row a division."""

    def title(self) -> str:
        """The question."""
        return say("results.divisions") if self.room.state.divisions else say("hub.results")

    def body(self) -> str:
        """What is missing where there is none."""
        return "" if self.room.state.divisions else say("results.stands.none")

    def rows(self) -> Sequence[RowView]:
        """How far each is."""
        state = self.room.state
        return [
            RowView(
                text=division,
                value=say(f"results.stands.{state.stage(division)}"),
                says=PersonEvent(Person.CHOOSE, division),
            )
            for division in state.divisions
        ]

    def press(self, event: PersonEvent) -> None:
        """The results of a division."""
        if event.kind is Person.CHOOSE:
            self.room.open(ResultsPage(self.room, event.value))
        else:
            super().press(event)
