"""One team's own page: each answer on its tent, and what to practise next."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.rounds.results import Row
from kiosk.rounds.state import RoundState
from kiosk.texts import say
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.reckoning import Reckoning
from kiosk.ui.pages.result_table import lock_behind, released
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.result_words import nth
from kiosk.ui.presenters.team_result_views import team_results_view
from kiosk.ui.presenters.views import SheetView


def choose_team(room: Room, division: str) -> None:
    """Ask whose page is wanted, and open it."""
    reckoning = Reckoning(room, division)

    def done(team: object) -> None:
        if any(row.team.team == team for row in reckoning.quick.rows):  # it may have left
            room.open(TeamResultsPage(room, division, str(team)))

    room.open(
        PickPage(
            room,
            title=say("results.which_team"),
            options=[
                (row.team.label, nth(row.place), row.team.team) for row in reckoning.quick.rows
            ],
            sort=True,
            done=done,
        )
    )


class TeamResultsPage(Page):
    """For the team to look at; leaving it leads back behind the code."""

    role = Role.EVERYBODY

    def __init__(self, room: Room, division: str, team: str) -> None:
        super().__init__(room)
        self._division = division
        self._reckoning = Reckoning(room, division)
        (self._row,) = [row for row in self._reckoning.quick.rows if row.team.team == team]
        self._advice: tuple[Row, tuple[str, ...]] | None = None

    def opened(self) -> None:
        """Whoever leaves has to be the coach."""
        lock_behind(self.room)

    def strip(self) -> tuple[str, ...]:
        """Nothing but whose results these are."""
        return (self.room.state.plan.name,)

    def tick(self, now: float) -> None:
        """Results that are taken back go at once."""
        if not released(self.room, self._division):
            self.room.back()

    def view(self) -> SheetView:
        """Its row, spread out."""
        found = self._reckoning.quick
        for row in found.rows:
            if row.team.team == self._row.team.team:  # a team that is gone keeps what it had
                self._row = row
        return team_results_view(self.room.state, found, self._row, self._practise())

    def _practise(self) -> Sequence[str]:
        if self._advice is None or self._advice[0] is not self._row:
            self._advice = self._row, practise(self.room.state, self._row)
        return self._advice[1]


def practise(state: RoundState, row: Row) -> tuple[str, ...]:
    """What the team does well and might practise, in sentences."""
    from kiosk.reports.practice import practise_next  # brings reportlab along: not earlier
    from kiosk.ui.result_printing import team_answers

    return tuple(practise_next(team_answers(state, row), state.rules))
