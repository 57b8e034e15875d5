"""Which round: one that was opened before, or a new one."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.round_notes import NoteKind, StoredRound
from kiosk.rounds.contents import Plan, read
from kiosk.texts import say
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.files import FilesPage
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.page import Role
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, button


class AllRoundsPage(RowsPage):
    """The rounds, newest first."""

    def __init__(self, room: Room, found: Sequence[StoredRound]) -> None:
        super().__init__(room)
        self._take(found)
        self._was_left = False

    def _take(self, found: Sequence[StoredRound]) -> None:
        plans = {each.id: read(NoteKind.ROUND, "round", each.content) for each in found}
        self._names = {id_: plan.name for id_, plan in plans.items() if isinstance(plan, Plan)}
        self._found = tuple(reversed(found))

    def opened(self) -> None:
        """See again which rounds there are, after one may have come in by file."""
        simulated = self.room.desk.facts.simulated
        if self._was_left:
            self.room.desk.notebook.look_up(lambda store: store.rounds(simulated), self._take)
        self._was_left = True

    def who(self) -> Role:
        """A helper who came by a code of the helpers, or the coach."""
        return Role.HELPER if self.room.helper else Role.COACH

    def title(self) -> str:
        """The question."""
        return say("rounds.title")

    def body(self) -> str:
        """What there is to do where there is none."""
        return "" if self._found else say("rounds.none")

    def rows(self) -> Sequence[RowView]:
        """One for each round."""
        return [self._row(each) for each in self._found]

    def _row(self, each: StoredRound) -> RowView:
        since = say("rounds.since", when=f"{each.since.astimezone():%Y-%m-%d %H:%M}")
        name = self._names.get(each.id)
        if name is None:
            return RowView(text=say("rounds.newer"), note=since, sign="not fine")
        return RowView(text=name, note=since, says=PersonEvent(Person.CHOOSE, each.id))

    def second(self) -> ButtonView | None:
        """One that was begun on another kiosk."""
        return None if self.room.helper else button(say("rounds.files"), Person.GO_ON)

    def main(self) -> ButtonView | None:
        """A new one."""
        return None if self.room.helper else button(say("rounds.new"), Person.KEEP, sign="arrow")

    def press(self, event: PersonEvent) -> None:
        """Open a round."""
        match event.kind:
            case Person.CHOOSE:
                self.room.read(event.value, lambda: self.room.replace(HubPage(self.room)))
            case Person.GO_ON:
                self.room.open(FilesPage(self.room))
            case Person.KEEP:
                self.room.open(
                    TextPage(
                        self.room,
                        title=say("rounds.name"),
                        label=say("rounds.name.label"),
                        offers=say("rounds.name.offers").split("|"),
                        done=self._begin,
                        refuses=self._refuses,
                    )
                )
            case _:
                super().press(event)

    def _refuses(self, name: str) -> str:
        return say("rounds.name.twice") if name in self._names.values() else ""

    def _begin(self, name: str) -> None:
        self.room.begin(Plan(name=name, rules=self.room.desk.facts.settings.rules))
        self.room.replace(HubPage(self.room))
