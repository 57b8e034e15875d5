"""The protests of a division, and a new one."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Protest, Team
from kiosk.rounds.standing import protests_of
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.evidence import EvidencePage, how, is_final
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.result_words import task_short
from kiosk.ui.presenters.views import ButtonView, button

SIGNS = {None: "cannot tell", True: "fine", False: "not fine"}


class ProtestsPage(RowsPage):
    """The protests of a division, and a new one."""

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._division = division

    def title(self) -> str:
        """The heading."""
        return say("protests.heading")

    def body(self) -> str:
        """What a tap does."""
        if is_final(self.room, self._division):
            return say("protests.final")
        found = protests_of(self.room.state, self._division)
        return say("protests.body" if found else "protests.none")

    def rows(self) -> Sequence[RowView]:
        """One for each, newest first."""
        found = protests_of(self.room.state, self._division)
        return [self._row(protest) for protest in reversed(found)]

    def _row(self, protest: Protest) -> RowView:
        team = self.room.state.team(protest.team)
        what = task_short(self.room.state, team.division, protest.task)
        return RowView(
            text=say("protests.row", team=team.label, what=what),
            note=protest.text,
            value=how(protest),
            sign=SIGNS[protest.accepted],
            says=PersonEvent(Person.CHOOSE, protest.protest),
        )

    def main(self) -> ButtonView | None:
        """A new one."""
        if is_final(self.room, self._division):
            return None
        return button(say("protests.new"), Person.GO_ON, sign="arrow")

    def press(self, event: PersonEvent) -> None:
        """Look into one, or take one down."""
        match event.kind:
            case Person.CHOOSE:
                self.room.open(EvidencePage(self.room, event.value))
            case Person.GO_ON:
                self._whose()
            case _:
                super().press(event)

    def _whose(self) -> None:
        teams = self.room.state.teams_of(division=self._division)
        self.room.open(
            PickPage(
                self.room,
                title=say("results.which_team"),
                options=[(team.label, "", team.team) for team in teams],
                sort=True,
                done=lambda team: self._against(self.room.state.team(str(team))),
            )
        )

    def _against(self, team: Team) -> None:
        def done(task: object) -> None:
            assert isinstance(task, Task)
            self._take_down(team, task)

        self.room.open(
            PickPage(
                self.room,
                title=say("protests.what", team=team.label),
                options=[
                    (task_short(self.room.state, team.division, task), "", task) for task in Task
                ],
                done=done,
            )
        )

    def _take_down(self, team: Team, task: Task) -> None:
        def done(words: str) -> None:
            protest = Protest(
                protest=self.room.desk.world.new_id(), team=team.team, task=task, text=words
            )
            self.room.say(protest)
            self.room.open(EvidencePage(self.room, protest.protest))

        self.room.open(
            TextPage(
                self.room,
                title=say("protests.text", team=team.label),
                label=say("protests.text.label"),
                offers=say("protests.text.offers").split("|"),
                done=done,
            )
        )
