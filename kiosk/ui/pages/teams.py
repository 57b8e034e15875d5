"""The teams of a round: their list, one team, new ones by hand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Team
from kiosk.rounds.state import RoundState
from kiosk.rounds.teams import MOST_MEMBERS, from_csv, label_taken, moved, new_team, room_in
from kiosk.texts import plural, say
from kiosk.ui.pages.common import AskPage, PickPage, RowsPage, TextPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, button
from kiosk.ui.sticks import places, read_text, tables_in

EXTRA_MINUTES = (0, 5, 8, 10, 15, 30)
SITTINGS_OFFERED = 11


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
        """What came of a file, or which sitting is overfull."""
        if self._told:
            return self._told
        state = self.room.state
        full = [sitting for sitting in state.sittings if room_in(state, sitting) < 0]
        most = state.rules.teams_a_sitting
        return say("teams.overfull", sitting=full[0], most=most) if full else say("teams.no_names")

    def rows(self) -> Sequence[RowView]:
        """One for each team."""
        return [_row(team) for team in self.room.state.teams]

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
            case Person.PRINT:
                self._pick_file()
            case Person.CHOOSE:
                self.room.open(TeamPage(self.room, event.value))
            case Person.KEEP:
                self.room.open(name_page(self.room, say("teams.add.title"), self._add))
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
        state = self.room.state
        try:
            found = from_csv(
                state.everybody, state.rules, read_text(file), self.room.desk.world.new_id
            )
        except ValueError as trouble:
            self._told = str(trouble)
            return
        self.room.say(*found)
        self._told = plural("teams.file.taken", len(found))

    def _add(self, label: str) -> None:
        room, state = self.room, self.room.state
        team = new_team(state.everybody, state.rules, room.desk.world.new_id, label=label)
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


def name_page(
    room: Room, title: str, done: Callable[[str], None], team: Team | None = None
) -> TextPage:
    """What is the team called? One that another team has is refused."""

    def refuses(label: str) -> str:
        there = room.state.everybody
        taken = label_taken(there, label, but=team.team if team else "")
        return say("teams.name.taken", label=label) if taken else ""

    free = [
        name
        for name in room.desk.facts.settings.teams
        if not label_taken(room.state.everybody, name)
    ]
    return TextPage(
        room,
        title=title,
        label=say("teams.name.label"),
        typed=team.label if team else "",
        offers=free[:4],
        done=done,
        refuses=refuses,
    )


class TeamPage(RowsPage):
    """One team, and what can be changed about it; each change is another note."""

    columns = 2

    def __init__(self, room: Room, team: str) -> None:
        super().__init__(room)
        self._id = team

    @property
    def _team(self) -> Team:
        return self.room.state.team(self._id)

    def title(self) -> str:
        """Its label."""
        return self._team.label

    def corner(self) -> str:
        """Its cup."""
        return say("teams.cup", number=self._team.cup)

    def body(self) -> str:
        """Whether it came late."""
        begun = self.room.state.begun(self._team.sitting)
        return say("teams.begun") if begun else ""

    def rows(self) -> Sequence[RowView]:
        """What can be changed."""
        team = self._team
        values = {
            "label": team.label,
            "division": team.division,
            "sitting": str(team.sitting),
            "members": str(team.members),
            "absent": str(team.absent),
            "extra": say("teams.minutes", minutes=team.extra_minutes),
            "school": team.school or say("teams.none"),
        }
        return [
            RowView(
                text=say(f"teams.row.{name}"), value=value, says=PersonEvent(Person.CHOOSE, name)
            )
            for name, value in values.items()
        ]

    def beside_home(self) -> ButtonView:
        """It is the same team as another one."""
        return button(say("teams.merge"), Person.MATERIAL)

    def second(self) -> ButtonView:
        """It takes no part."""
        return button(say("teams.leave"), Person.LEAVE)

    def press(self, event: PersonEvent) -> None:
        """Change something."""
        match event.kind:
            case Person.CHOOSE:
                self._change(event.value)
            case Person.LEAVE:
                self._leave()
            case Person.MATERIAL:
                self._merge()
            case _:
                super().press(event)

    def _set(self, **changed: object) -> None:
        self.room.say(self._team.model_copy(update=changed))

    def _change(self, what: str) -> None:
        room, team = self.room, self._team
        if what == "label":
            room.open(
                name_page(room, say("teams.rename"), lambda label: self._set(label=label), team)
            )
        elif what == "school":
            room.open(
                TextPage(
                    room,
                    title=say("teams.row.school"),
                    label=say("teams.school.label"),
                    typed=team.school,
                    offers=sorted({other.school for other in room.state.everybody} - {""})[:4],
                    done=lambda school: self._set(school=school),
                )
            )
        else:
            self._pick(what)

    def _pick(self, what: str) -> None:
        team, rules = self._team, self.room.state.rules
        options, now = {
            "division": (self._divisions(), team.division),
            "sitting": (self._sittings(), team.sitting),
            "members": (_numbers(range(1, MOST_MEMBERS + 1)), team.members),
            "absent": (_numbers(range(team.members)), team.absent),
            "extra": (_numbers(EXTRA_MINUTES), team.extra_minutes),
        }[what]

        def done(value: object) -> None:
            if what == "sitting":
                assert isinstance(value, int)
                self.room.say(moved(self.room.state.everybody, self._team, value))
            else:
                self._set(**{"extra_minutes" if what == "extra" else what: value})

        body = say("teams.sitting.most", most=rules.teams_a_sitting) if what == "sitting" else ""
        self.room.open(
            PickPage(
                self.room, title=say(f"teams.row.{what}"), body=body, options=options,
                now=now, done=done,
            )
        )  # fmt: skip

    def _divisions(self) -> list[tuple[str, str, object]]:
        state = self.room.state
        return [
            (name, "", name) for name in dict.fromkeys((*state.rules.divisions, *state.divisions))
        ]

    def _sittings(self) -> list[tuple[str, str, object]]:
        state = self.room.state
        last = state.sittings[-1] if state.sittings else 0
        return [
            (say("teams.sitting", sitting=number), plural("teams.count", count), number)
            for number in range(1, min(last + 1, SITTINGS_OFFERED) + 1)
            for count in [len(state.teams_of(sitting=number))]
        ]

    def _leave(self) -> None:
        def gone(reason: str) -> None:
            self._set(gone=reason)
            self.room.back()

        self.room.open(
            TextPage(
                self.room,
                title=say("teams.leave.title", label=self._team.label),
                label=say("teams.reason"),
                offers=say("teams.leave.offers").split("|"),
                done=gone,
            )
        )

    def _merge(self) -> None:
        team = self._team

        def chosen(value: object) -> None:
            into = self.room.state.team(str(value))

            def sure() -> None:
                self._set(gone=say("teams.merged", label=into.label), into=into.team)
                self.room.back()

            self.room.open(
                AskPage(
                    self.room,
                    title=say("teams.merge.title", label=team.label, into=into.label),
                    body=say("teams.merge.body", label=team.label, into=into.label),
                    yes=say("teams.merge.yes"),
                    no=say("teams.merge.no"),
                    done=sure,
                )
            )

        others = [
            (other.label, other.division, other.team)
            for other in self.room.state.teams_of(sitting=team.sitting)
            if other.team != team.team
        ]
        self.room.open(
            PickPage(
                self.room, title=say("teams.merge.into", label=team.label), options=others,
                done=chosen,
            )
        )  # fmt: skip


def _numbers(values: Sequence[int]) -> list[tuple[str, str, object]]:
    return [(str(value), "", value) for value in values]
