"""Result lists on paper, and those that were kept as they were before something changed."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import KeptList
from kiosk.texts import plural, say
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.pages.kept_list import SHOWN
from kiosk.ui.pages.page import Page
from kiosk.ui.pages.papers import Choice, PapersPage
from kiosk.ui.pages.reckoning import Reckoning
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.result_views import kept_list_view
from kiosk.ui.presenters.views import SheetView
from kiosk.ui.result_printing import result_list, team_pages
from kiosk.ui.round_printing import Save


class ResultPapersPage(PapersPage):
    """The list of a division and its team pages, as they stand now."""

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._reckoning = Reckoning(room, division)

    def title(self) -> str:
        """The question."""
        return say("results.papers.heading")

    def rows(self) -> Sequence[RowView]:
        """One row a paper."""
        found = self._reckoning.quick
        teams = plural("teams.count", len(found.rows))
        rows = [self._row(("results", 0), "")]
        if found.stage in SHOWN:  # a team's page tells the real values, which others may still need
            rows.append(self._row(("teams_results", 0), teams))
        return rows

    def numbers(self) -> Sequence[int]:
        """They are two."""
        return ()

    def _save(self, choice: Choice) -> Save:
        state, place = self.room.state, self.room.desk.facts.settings.place
        found = self._reckoning.quick
        if choice[0] == "results":
            return result_list(state, found, place, self.room.now_utc())
        return team_pages(state, found, place)


class EarlierPage(RowsPage):
    """The lists as they were, newest first, each with what changed it."""

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._division = division

    def title(self) -> str:
        """The heading."""
        return say("results.earlier")

    def rows(self) -> Sequence[RowView]:
        """One for each."""
        kept = self.room.state.kept_lists(self._division)
        return [
            RowView(
                text=say("results.earlier.row", when=clock_time(at), why=found.why),
                note=plural("teams.count", len(found.rows)),
                says=PersonEvent(Person.CHOOSE, (at, found)),
            )
            for at, found in reversed(kept)
        ]

    def press(self, event: PersonEvent) -> None:
        """Show it."""
        if event.kind is Person.CHOOSE:
            self.room.open(KeptListPage(self.room, *event.value))
        else:
            super().press(event)


class KeptListPage(Page):
    """One of them, as the table that it was."""

    def __init__(self, room: Room, at: datetime, found: KeptList) -> None:
        super().__init__(room)
        self._at, self._found = at, found
        self._turned = 0

    def view(self) -> SheetView:
        """The page of it to which it is turned."""
        title = say("results.earlier.list", when=clock_time(self._at))
        return kept_list_view(self.room.state, self._found, title=title, turned=self._turned)

    def press(self, event: PersonEvent) -> None:
        """Turn, or leave."""
        if event.kind is Person.MORE:
            self._turned += 1
        else:
            super().press(event)


def clock_time(at: datetime) -> str:
    """A moment as this machine's clock shows it, to the minute."""
    return f"{at.astimezone():%H:%M}"
