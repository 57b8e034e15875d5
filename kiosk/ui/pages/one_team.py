"""One team of a round, and what can be changed about it; after the lock only for a reason."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Stage, Team
from kiosk.rounds.teams import MOST_MEMBERS, free_cups, label_taken, moved, open_divisions
from kiosk.texts import plural, say
from kiosk.ui.pages.common import AskPage, RowsPage, TextPage
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.team_changes import change_team, keep_team
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, button

EXTRA_MINUTES = (0, 5, 8, 10, 15, 30)
CUPS_OFFERED = 11


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
        """Whether its answers are locked, or it came late."""
        if self._final:
            return say("teams.final")
        if self._locked:
            return say("teams.locked")
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
            "cup": str(team.cup),
            "school": team.school or say("teams.none"),
        }
        return [
            RowView(
                text=say(f"teams.row.{name}"),
                value=value,
                says=None if self._final else PersonEvent(Person.CHOOSE, name),
            )
            for name, value in values.items()
        ]

    def beside_home(self) -> ButtonView | None:
        """It is the same team as another one."""
        return None if self._final else button(say("teams.merge"), Person.MATERIAL)

    def second(self) -> ButtonView | None:
        """It takes no part."""
        return None if self._final else button(say("teams.leave"), Person.LEAVE)

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

    @property
    def _locked(self) -> bool:
        return self.room.state.stage(self._team.division) is not Stage.OPEN

    @property
    def _final(self) -> bool:
        return self.room.state.stage(self._team.division) is Stage.FINAL

    def _set(self, **changed: object) -> None:
        """Change that, after the lock for a reason."""
        change_team(self.room, self._team, changed)

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
            "cup": (_numbers(self._cups()), team.cup),
        }[what]

        def done(value: object) -> None:
            if what == "sitting":
                assert isinstance(value, int)
                there = moved(self.room.state.everybody, self._team, value)
                self._set(sitting=there.sitting, cup=there.cup)
            else:
                self._set(**{"extra_minutes" if what == "extra" else what: value})

        body = say("teams.sitting.most", most=rules.teams_a_sitting) if what == "sitting" else ""
        self.room.open(
            PickPage(
                self.room, title=say(f"teams.row.{what}"), body=body, options=options,
                now=now, done=done, sort=what == "sitting",
            )
        )  # fmt: skip

    def _divisions(self) -> list[tuple[str, str, object]]:
        offered = dict.fromkeys((*open_divisions(self.room.state), self._team.division))
        return [(name, "", name) for name in offered]

    def _cups(self) -> list[int]:
        others = [team for team in self.room.state.everybody if team.team != self._id]
        return free_cups(others, self._team.sitting, CUPS_OFFERED)

    def _sittings(self) -> list[tuple[str, str, object]]:
        state = self.room.state
        last = state.sittings[-1] if state.sittings else 0
        return [
            (say("teams.sitting", sitting=number), plural("teams.count", count), number)
            for number in range(1, last + 2)
            for count in [len(state.teams_of(sitting=number))]
        ]

    def _leave(self) -> None:
        def gone(reason: str) -> None:
            keep_team(self.room, self._team, {"gone": reason}, reason, left=True)
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
                reason = say("teams.merged", label=into.label)
                changed = {"gone": reason, "into": into.team}
                keep_team(self.room, self._team, changed, reason, left=True)
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
