"""The papers of a round: made on the screen, saved among the documents, sent to a printer."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.reports.day_points import DayList
from kiosk.reports.printer import Sending, printer_found
from kiosk.rounds.readiness import BOUND
from kiosk.rounds.state import RoundState
from kiosk.texts import plural, say
from kiosk.ui.pages.common import AskPage, RowsPage
from kiosk.ui.pages.day import day_list_of, today
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Section, sittings_row
from kiosk.ui.pages.usable_keys import usable_keys
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, SheetView, button
from kiosk.ui.round_printing import (
    Made,
    Save,
    answer_sheets,
    day_list,
    helpers_card,
    make,
    sitting_list,
)

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may

Choice = tuple[str, int]  # which paper, of which sitting; 0 for none

AGAIN: dict[str, Callable[[Choice], PersonEvent]] = {
    "save": lambda choice: PersonEvent(Person.CHOOSE, choice),
    "print": lambda _: PersonEvent(Person.PRINT),
}


def stands(_state: RoundState) -> str:
    """What it is for."""
    return say("papers.what_for")


class PapersPage(RowsPage):
    """One row a paper; the last one that was made can be printed."""

    def __init__(
        self,
        room: Room,
        has_printer: Callable[[], bool] = printer_found,
        send: Callable[[Path], Sending] = Sending,
    ) -> None:
        super().__init__(room)
        self._has_printer, self._send = has_printer(), send
        self._made: dict[Choice, Made] = {}
        self._refused: set[Choice] = set()
        self._last: Choice | None = None  # what was made last
        self._job: Choice | None = None  # begins with the next tick
        self._sending: tuple[Choice, Sending] | None = None
        self._told = ""

    def title(self) -> str:
        """The question."""
        return say("papers.title")

    def body(self) -> str:
        """What is being done, or came of it."""
        if self._job is not None:
            return say("papers.working")
        if self._sending is not None:
            return say("papers.sending")
        return self._told

    def rows(self) -> Sequence[RowView]:
        """What the whole day needs, then two for each sitting."""
        state = self.room.state
        rows = [self._row(("day", 0), ""), self._row(("card", 0), say("papers.page"))]
        for sitting in state.sittings:
            teams = state.teams_of(sitting=sitting)
            note = plural("papers.teams", len(teams))
            divisions = {team.division for team in teams}
            ready = all(state.key(division, task) for division in divisions for task in BOUND)
            row = self._row(("sheets", sitting), note if ready else say("papers.no_keys"))
            rows.append(row if ready or row.sign else replace(row, sign="cannot tell"))
            rows.append(self._row(("list", sitting), ""))
        return rows

    def numbers(self) -> Sequence[int]:
        """What the whole day needs stands before the sittings."""
        return [0, 0, *(sitting for sitting in self.room.state.sittings for _ in range(2))]

    def section(self, section: Section) -> RowView:
        """The papers of the day, or of sittings."""
        if section == (0, 0):
            return RowView(text=say("papers.whole_day"))
        return sittings_row(section)

    def _row(self, choice: Choice, note: str) -> RowView:
        what, sitting = choice
        made = self._made.get(choice)
        name = say(f"papers.{what}", sitting=sitting)
        row = RowView(text=name, note=note, says=PersonEvent(Person.CHOOSE, choice))
        if choice in self._refused:
            return replace(row, sign="not fine")
        if made is None or made.file is None:
            return row
        return replace(row, sign="fine", note=made.file.name)

    def main(self) -> ButtonView | None:
        """Print what was made last, where there is a printer."""
        if not self._has_printer or self._file is None:
            return None
        state = "ready" if self._sending is None else "off"
        return button(say("papers.send"), Person.PRINT, sign="printer", state=state)

    @property
    def _file(self) -> Path | None:
        """Where that is."""
        return self._made[self._last].file if self._last else None

    def view(self) -> SheetView:
        """Without buttons while one is being made."""
        view = super().view()
        return view if self._job is None else replace(view, main=None, home=None)

    def press(self, event: PersonEvent) -> None:
        """A paper, or the printer."""
        if self._job is not None:
            return
        match event.kind:
            case Person.CHOOSE:
                self._job = event.value
            case Person.PRINT:
                if self._sending is None and self._last and self._file:
                    self._sending = self._last, self._send(self._file)
            case _:
                super().press(event)

    def tick(self, now: float) -> None:
        """Begin what was asked for, now that the screen says so; hear from the printer."""
        if self._job is not None:
            choice, self._job = self._job, None
            self._begin(choice)
        if self._sending is not None:
            choice, sending = self._sending
            sent = sending.look(now)
            if sent is not None:
                self._sending = None
                self._hear(choice, sent.words, "print", well=sent.taken)

    def _begin(self, choice: Choice) -> None:
        save, paper = self._save(choice), self.room.desk.facts.settings.paper

        def done(made: Made) -> None:
            self._made[choice], self._last = made, choice
            self._hear(choice, made.words, "save", well=made.file is not None)

        self.room.look_up(lambda store: make(store, save, paper), done)

    def _hear(self, choice: Choice, words: str, what: str, *, well: bool) -> None:
        """Tell what came of it; a refusal is asked about, as it may be put right."""
        if well:
            self._refused.discard(choice)
            self._told = words
            return
        self._refused.add(choice)
        self._told = ""
        if self.room.is_open and self.room.page is self:
            self.room.open(
                AskPage(
                    self.room,
                    title=say(f"papers.refused.{what}"),
                    body=words,
                    yes=say("papers.again"),
                    no=say("papers.leave"),
                    done=lambda: self.press(AGAIN[what](choice)),
                )
            )

    def _save(self, choice: Choice) -> Save:
        what, sitting = choice
        state, place = self.room.state, self.room.desk.facts.settings.place
        if what == "sheets":
            return answer_sheets(state, sitting, place)
        if what == "list":
            return sitting_list(state, sitting, place)
        return day_list(self._read_day()) if what == "day" else helpers_card

    def _read_day(self) -> Callable[[Store], DayList]:
        state, day, facts = self.room.state, today(self.room), self.room.desk.facts
        place, poured = facts.settings.place, facts.material

        def read(store: Store) -> DayList:
            keys = usable_keys(store, state.simulated)
            return day_list_of(state, keys, place=place, day=day, poured=poured)

        return read
