"""The teams of a round: their list, new ones by hand or from a file."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.conflicts import given_twice
from kiosk.rounds.contents import Team
from kiosk.rounds.state import RoundState
from kiosk.rounds.teams import (
    from_csv,
    new_team,
    open_divisions,
    room_in,
)
from kiosk.texts import plural, say
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.pages.one_team import TeamPage, name_page
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Each, Section, sittings_row
from kiosk.ui.pages.team_changes import choose_who_comes_back, who_left
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, button
from kiosk.ui.sticks import places, read_text, tables_in


def stands(state: RoundState) -> str:
    """How many teams there are, in how many sittings."""
    if not state.teams:
        return say("teams.none_yet")
    sittings = plural("teams.sittings", len(state.sittings))
    return f"{plural('teams.count', len(state.teams))}, {sittings}"


class TeamsPage(RowsPage):
    """All teams that take part, by sitting."""

    columns = 2

    def __init__(self, room: Room, look: Callable[[], Sequence[Path]] = places) -> None:
        super().__init__(room)
        self._look = look
        self._told = ""  # what came of the last file

    def title(self) -> str:
        """The heading."""
        return say("teams.title")

    def corner(self) -> str:
        """How many."""
        return stands(self.room.state)

    def body(self) -> str:
        """What came of a file, what was given twice, or which sitting is overfull."""
        state = self.room.state
        told = self._told or given_twice(state)
        if told:
            return told
        full = [sitting for sitting in state.sittings if room_in(state, sitting) < 0]
        most = state.rules.teams_a_sitting
        return say("teams.overfull", sitting=full[0], most=most) if full else say("teams.no_names")

    def rows(self) -> Sequence[RowView]:
        """One for each team."""
        return Each(self.room.state.teams, _row)

    def numbers(self) -> Sequence[int]:
        """Their sittings."""
        return [team.sitting for team in self.room.state.teams]

    def section(self, section: Section) -> RowView:
        """Sittings, and how many teams are in them."""
        state, (first, last) = self.room.state, section
        inside = [sitting for sitting in state.sittings if first <= sitting <= last]
        count = sum(len(state.teams_of(sitting=sitting)) for sitting in inside)
        return replace(sittings_row(section), note=plural("teams.count", count))

    def beside_home(self) -> ButtonView | None:
        """Those that were taken out."""
        left = len(who_left(self.room.state))
        return button(say("teams.back", count=left), Person.UNDO) if left else None

    def main(self) -> ButtonView:
        """A new team."""
        return button(say("teams.add"), Person.KEEP, sign="arrow")

    def second(self) -> ButtonView:
        """Many at once."""
        return button(say("teams.file"), Person.PRINT)

    def press(self, event: PersonEvent) -> None:
        """One team, or a new one."""
        if event.kind is not Person.MORE:
            self._told = ""
        match event.kind:
            case Person.UNDO:
                choose_who_comes_back(self.room)
            case Person.PRINT:
                self._pick_file()
            case Person.CHOOSE:
                self.room.open(TeamPage(self.room, event.value))
            case Person.KEEP if open_divisions(self.room.state):
                self.room.open(name_page(self.room, say("teams.add.title"), self._add))
            case Person.KEEP:
                self._told = say("teams.all_locked")
            case _:
                super().press(event)

    def _pick_file(self) -> None:
        def chosen(file: object) -> None:
            assert isinstance(file, Path)
            self._take(file)

        files = tables_in(self._look())
        self.room.open(
            PickPage(
                self.room,
                title=say("teams.file.which"),
                body=say("teams.file.columns" if files else "teams.file.none"),
                options=[(file.name, str(file.parent), file) for file in files],
                done=chosen,
                columns=1,
            )
        )

    def _take(self, file: Path) -> None:
        state, new_id = self.room.state, self.room.desk.world.new_id
        try:
            found = from_csv(state, read_text(file), new_id)
        except ValueError as trouble:
            self._told = str(trouble)
            return
        self.room.say(*found)
        self._told = plural("teams.file.taken", len(found))

    def _add(self, label: str) -> None:
        room, state = self.room, self.room.state
        divisions = open_divisions(state)
        if not divisions:  # locked by another kiosk while the label was typed
            self._told = say("teams.all_locked")
            return
        team = new_team(
            state.everybody, state.rules, room.desk.world.new_id,
            label=label, division=divisions[0],
        )  # fmt: skip
        room.say(team)
        room.open(TeamPage(room, team.team))


def _row(team: Team) -> RowView:
    notes = [team.division, say("teams.sitting", sitting=team.sitting)]
    if team.absent:
        notes.append(plural("teams.absent", team.absent))
    if team.extra_minutes:
        notes.append(say("teams.extra", minutes=team.extra_minutes))
    return RowView(
        text=team.label,
        note=", ".join(notes),
        value=say("teams.cup", number=team.cup),
        says=PersonEvent(Person.CHOOSE, team.team),
    )
