"""Answers from paper: the sheets, who types them, and how far each one is."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Stage, Team, Typing
from kiosk.rounds.once import once
from kiosk.rounds.sheets import sheet_number
from kiosk.rounds.state import RoundState
from kiosk.rounds.typed_answers import (
    FOR_THE_JUDGE,
    Stand,
    for_the_judge,
    next_typing,
    second_looks,
    sheet,
    typed_twice,
    typist,
)
from kiosk.texts import plural, say
from kiosk.ui.pages.common import AskPage, RowsPage, TextPage
from kiosk.ui.pages.judging import JudgePage
from kiosk.ui.pages.one_sheet import SheetPage
from kiosk.ui.pages.own_answers import OwnAnswersPage
from kiosk.ui.pages.page import Role
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Each, Section, sittings_row
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, button

_INITIALS = re.compile(r"\w{1,4}")


@once
def stands(state: RoundState) -> str:
    """How many sheets were typed twice."""
    there, wanted = typed_twice(state, state.teams)
    return say("paper_typing.stands", there=there, wanted=wanted) if wanted else ""


@once
def typed_in(state: RoundState, first: int, last: int) -> tuple[int, int]:
    """How many sheets of these sittings were typed twice, and of how many."""
    return typed_twice(state, (team for team in state.teams if first <= team.sitting <= last))


class SheetsPage(RowsPage):
    """All sheets, and how far each one is."""

    role = Role.HELPER
    columns = 2

    def __init__(self, room: Room) -> None:
        super().__init__(room)
        self._by = ""  # the initials of who types here

    def title(self) -> str:
        """The question."""
        return say("paper_typing.which")

    def corner(self) -> str:
        """How many are typed twice."""
        return stands(self.room.state)

    def body(self) -> str:
        """Two people."""
        return say("paper_typing.two_people")

    def rows(self) -> Sequence[RowView]:
        """One for each team."""
        return Each(self.room.state.teams, self._row)

    def numbers(self) -> Sequence[int]:
        """Their sittings."""
        return [team.sitting for team in self.room.state.teams]

    def section(self, section: Section) -> RowView:
        """Sittings, and how many of their sheets are typed twice."""
        there, wanted = typed_in(self.room.state, *section)
        return replace(
            sittings_row(section),
            note=say("paper_typing.stands", there=there, wanted=wanted),
            sign="fine" if there == wanted else "to come",
        )

    def _row(self, team: Team) -> RowView:
        state = self.room.state
        found = [each.stand for each in sheet(state, team.team)]
        judge = sum(stand in FOR_THE_JUDGE for stand in found)
        if judge:
            note, sign = plural("paper_typing.for_judge", judge), "cannot tell"
        elif Stand.MISSING not in found and Stand.ONCE not in found:
            looked = second_looks(state, team.team)
            note = plural("paper_typing.changed", looked) if looked else say("paper_typing.twice")
            sign = "fine"
        elif Stand.MISSING not in found:
            by = typist(state, team.team, Typing.FIRST)
            note, sign = say("paper_typing.once", by=by), "to come"
        else:
            note, sign = say("paper_typing.not_yet"), "to come"
        closed = state.stage(team.division) is not Stage.OPEN
        return RowView(
            text=team.label,
            note=say("paper_typing.locked") if closed else note,
            value=say("paper_typing.sheet", number=sheet_number(state, team.team)),
            sign=sign,
            says=None if closed else PersonEvent(Person.CHOOSE, team.team),
        )

    def beside_home(self) -> ButtonView | None:
        """Somebody else types."""
        return button(say("paper_typing.typist", by=self._by), Person.UNDO) if self._by else None

    def main(self) -> ButtonView | None:
        """What waits for the judge."""
        waiting = len(for_the_judge(self.room.state))
        if not waiting or self.room.helper:
            return None
        return button(plural("paper_typing.decide", waiting), Person.KEEP, sign="arrow")

    def second(self) -> ButtonView | None:
        """The teams type here, where the rules say so."""
        own = self.room.state.rules.teams_type
        return button(say("own.begin"), Person.GO_ON) if own else None

    def press(self, event: PersonEvent) -> None:
        """One sheet, another typist, or the judge."""
        match event.kind:
            case Person.GO_ON:
                self.room.open(OwnAnswersPage(self.room))
            case Person.CHOOSE if self._by:
                self._open(self.room.state.team(event.value))
            case Person.CHOOSE:
                self._ask_by(self.room.state.team(event.value))
            case Person.UNDO:
                self._ask_by(None)
            case Person.KEEP:
                self.room.open(JudgePage(self.room))
            case _:
                super().press(event)

    def _ask_by(self, team: Team | None) -> None:
        def done(by: str) -> None:
            self._by = by.upper()
            if team is not None:
                self._open(team)

        self.room.open(
            TextPage(
                self.room,
                title=say("paper_typing.who"),
                label=say("paper_typing.initials"),
                done=done,
                refuses=lambda words: (
                    "" if _INITIALS.fullmatch(words) else say("paper_typing.initials.short")
                ),
                role=Role.HELPER,
            )
        )

    def _open(self, team: Team) -> None:
        room, state = self.room, self.room.state
        typing = next_typing(state, team.team)
        page = SheetPage(room, team.team, typing, self._by)
        if typing is Typing.SECOND and typist(state, team.team, Typing.FIRST) == self._by:
            room.open(
                AskPage(
                    room,
                    title=say("paper_typing.same.title"),
                    body=say("paper_typing.same.body", by=self._by),
                    yes=say("paper_typing.same.yes"),
                    no=say("paper_typing.same.no"),
                    done=lambda: room.open(page),
                    role=Role.HELPER,
                )
            )
        else:
            room.open(page)
