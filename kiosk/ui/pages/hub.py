"""The hub of a round: what there is to do, in the order of the day."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.state import RoundState
from kiosk.texts import plural, say
from kiosk.ui.pages import (
    clock,
    cups,
    day,
    files,
    keys,
    paper_typing,
    papers,
    results,
    rules,
    teams,
)
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """Something to do: the key of its name, how it stands, the page where it is done."""

    name: str
    role: Role = Role.COACH
    stands: Callable[[RoundState], str]
    page: Callable[[Room], Page]


ITEMS: tuple[Item, ...] = (
    Item(name="rules", stands=rules.stands, page=rules.RulesPage),
    Item(name="teams", stands=teams.stands, page=teams.TeamsPage),
    Item(name="keys", stands=keys.stands, page=keys.KeysPage),
    Item(name="day", stands=day.stands, page=day.DayPage),
    Item(name="papers", stands=papers.stands, page=papers.PapersPage),
    Item(name="clock", stands=clock.stands, page=clock.SittingsPage),
    Item(name="cups", role=Role.HELPER, stands=cups.stands, page=cups.CupsPage),
    Item(
        name="answers",
        role=Role.HELPER,
        stands=paper_typing.stands,
        page=paper_typing.SheetsPage,
    ),
    Item(name="results", stands=results.stands, page=results.results_page),
    Item(name="files", stands=files.stands, page=files.FilesPage),
)


class HubPage(RowsPage):
    """Shows ITEMS."""

    columns = 2

    def who(self) -> Role:
        """A helper who came by a code of the helpers, or the coach."""
        return Role.HELPER if self.room.helper else Role.COACH

    def title(self) -> str:
        """The name of the round."""
        return self.room.state.plan.name

    def body(self) -> str:
        """Whether a newer version wrote what this one cannot read."""
        unread = len(self.room.state.unread)
        return plural("rounds.unread", unread) if unread else ""

    def rows(self) -> Sequence[RowView]:
        """One for each thing to do."""
        return [
            RowView(
                text=say(f"hub.{item.name}"),
                note=item.stands(self.room.state),
                says=PersonEvent(Person.CHOOSE, item.name),
            )
            for item in ITEMS
            if item.role is Role.HELPER or not self.room.helper
        ]

    def press(self, event: PersonEvent) -> None:
        """Go where it is done."""
        if event.kind is Person.CHOOSE:
            (item,) = [item for item in ITEMS if item.name == event.value]
            self.room.open(item.page(self.room))
        else:
            super().press(event)
