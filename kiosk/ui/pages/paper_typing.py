"""Answers from paper: the sheets, one sheet typed once and once more, what the judge decides."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Answer, Stage, Team, Typing
from kiosk.rounds.once import once
from kiosk.rounds.sheets import sheet_number, sheet_rows
from kiosk.rounds.state import RoundState
from kiosk.rounds.typed_answers import (
    FOR_THE_JUDGE,
    Stand,
    Typed,
    for_the_judge,
    is_a_slip,
    next_typing,
    sheet,
    typed,
    typed_twice,
    typist,
)
from kiosk.texts import plural, say
from kiosk.texts.numbers import number
from kiosk.ui.pages.common import AskPage, RowsPage, TextPage
from kiosk.ui.pages.keys import task_name
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Each, Section, sittings_row
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.sheet_views import MOST_DIGITS, over_limit, paper_view, value_of
from kiosk.ui.presenters.views import ButtonView, SheetView, button

ANOTHER = "another"  # number than was typed
_INITIALS = re.compile(r"\w{1,4}")
_NUMBER = re.compile(r"0|[1-9][0-9]{0,5}", re.ASCII)


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
            note, sign = say("paper_typing.twice"), "fine"
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
                self._teams_type()
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

    def _teams_type(self) -> None:
        from kiosk.ui.pages.own_answers import OwnAnswersPage  # it stands on this module

        self.room.open(OwnAnswersPage(self.room))

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


class SheetPage(Page):
    """One sheet in one typing; each row is noted as soon as it is typed."""

    role = Role.HELPER
    types_on = True

    def __init__(self, room: Room, team: str, typing: Typing, by: str) -> None:
        super().__init__(room)
        self._id, self._typing, self._by = team, typing, by
        self._rows = sheet_rows(room.state, room.state.team(team))
        self._digits, self._hint, self._asked = "", "", ""
        self._old = False  # the digits are those of before: the first new one replaces them
        self._saying = False
        self._present = next(
            (place for place in range(len(self._rows)) if not self._typed_at(place)), 0
        )

    def _found(self, place: int) -> Typed:
        return typed(self.room.state, self._id, self._rows[place].task)

    def _mine(self, place: int) -> Answer | None:
        found = self._found(place)
        if self._typing is Typing.TEAM:
            return self.room.state.answer(self._id, found.task, Typing.TEAM)
        return found.second if self._typing is Typing.SECOND else found.first

    def _typed_at(self, place: int) -> bool:
        differs = self._found(place).stand is Stand.MISMATCH and self._typing is Typing.SECOND
        return self._mine(place) is not None and not differs

    def view(self) -> SheetView:
        """The six rows."""
        state = self.room.state
        return paper_view(
            state, state.team(self._id), self._typing,
            present=self._present, typed_now=self._digits,
            hint=say("paper_typing.closed") if self._locked else self._hint,
        )  # fmt: skip

    def strip(self) -> tuple[str, ...]:
        """Whose sheet it is, and that it comes from paper."""
        return (*super().strip(), self.room.state.team(self._id).label, say("paper_typing.strip"))

    def press(self, event: PersonEvent) -> None:
        """A digit, a row, or the end of one."""
        match event.kind:
            case Person.HOME:
                super().press(event)
            case _ if self._locked:
                return
            case Person.TYPE:
                before = "" if self._old else self._digits
                whole = (before + event.value).lstrip("0") or "0"
                self._digits, self._hint, self._old = whole[:MOST_DIGITS], "", False
            case Person.RUB_OUT:
                self._digits, self._hint, self._old = self._digits[:-1], "", False
            case Person.CHOOSE:
                self._go_to(event.value)
            case Person.NO:
                self._note(unreadable=True)
                self._next()
            case Person.UNDO:
                self._first_was_wrong()
            case Person.ENTER:
                self._enter()
            case _:
                super().press(event)

    @property
    def _locked(self) -> bool:
        """Whether nothing may be typed any more: from the lock on the coach corrects."""
        state = self.room.state
        return state.stage(state.team(self._id).division) is not Stage.OPEN

    def changed(self) -> None:
        """Somebody else may have typed the present row: then the next one is due."""
        if not self._saying and self._typed_at(self._present) and not self._old:
            self._next(leave=False)

    def _go_to(self, place: int) -> None:
        mine = self._mine(place)
        known = mine is not None and mine.estimate is not None and self._typed_at(place)
        self._present, self._hint, self._old = place, "", known
        self._digits = str(mine.estimate) if known and mine is not None else ""

    def _enter(self) -> None:
        if self._old:  # it stays as it was
            self._next()
            return
        row = self._rows[self._present]
        differs = self._found(self._present).stand is Stand.MISMATCH
        if not self._digits and differs and self._typing is Typing.SECOND:
            self._next(skip=True)  # it stays for the judge
            return
        estimate = Decimal(self._digits) if self._digits else None
        asked = f"{row.task} {self._digits}"
        if is_a_slip(row.task, estimate, self.room.state.rules) and self._asked != asked:
            self._asked, self._hint = asked, over_limit(self.room.state, row)
            return
        self._note(estimate=estimate)
        if self._typing is Typing.SECOND and self._found(self._present).stand is Stand.MISMATCH:
            self._digits, self._hint = "", say("paper_typing.differ")
        else:
            self._next()

    def _note(self, *, estimate: Decimal | None = None, unreadable: bool = False) -> None:
        self._saying = True
        self.room.say(
            Answer(
                team=self._id, task=self._rows[self._present].task, typing=self._typing,
                estimate=estimate, unreadable=unreadable, by=self._by,
            )
        )  # fmt: skip
        self._saying = False

    def _first_was_wrong(self) -> None:
        found = self._found(self._present)
        if found.second is not None:
            changed = {"typing": Typing.FIRST, "by": self._by, "reason": say("paper_typing.looked")}
            self._saying = True
            self.room.say(found.second.model_copy(update=changed))
            self._saying = False
            self._next()

    def _next(self, *, skip: bool = False, leave: bool = True) -> None:
        self._digits, self._hint, self._old = "", "", False
        after = range(self._present + 1, len(self._rows))
        before = () if skip else range(self._present)
        for place in (*after, *before):
            if not self._typed_at(place):
                self._present = place
                return
        if leave:
            self.room.back()


class JudgePage(RowsPage):
    """What cannot be read or was typed differently: the judge decides by the paper."""

    columns = 1

    def title(self) -> str:
        """The question."""
        return say("paper_typing.judge.title")

    def rows(self) -> Sequence[RowView]:
        """One for each open answer."""
        return [
            RowView(
                text=f"{self.room.state.team(each.team).label}, {task_name(each.task)}",
                note=say("paper_typing.typed_as", first=value_of(each.first),
                         second=value_of(each.second)),
                says=PersonEvent(Person.CHOOSE, (each.team, each.task)),
            )
            for each in for_the_judge(self.room.state)
        ]  # fmt: skip

    def press(self, event: PersonEvent) -> None:
        """Decide one."""
        if event.kind is Person.CHOOSE:
            team, task = event.value
            self._decide(typed(self.room.state, team, task))
        else:
            super().press(event)

    def _decide(self, found: Typed) -> None:
        values = dict.fromkeys(
            each.estimate for each in (found.first, found.second) if each and not each.unreadable
        )
        values[None] = None
        options: list[tuple[str, str, object]] = [
            (say("paper_typing.blank") if value is None else number(value), "", value)
            for value in values
        ]
        options.append((say("paper_typing.another"), "", ANOTHER))

        def chosen(value: object) -> None:
            if value == ANOTHER:
                self._ask_number(found)
            else:
                assert value is None or isinstance(value, Decimal)
                self._ask_reason(found, value)

        label = self.room.state.team(found.team).label
        title = say("paper_typing.reads", team=label, task=task_name(found.task))
        self.room.open(PickPage(self.room, title=title, options=options, done=chosen))

    def _ask_number(self, found: Typed) -> None:
        self.room.open(
            TextPage(
                self.room,
                title=say("paper_typing.number.title"),
                label=say("paper_typing.number.label"),
                done=lambda words: self._ask_reason(found, Decimal(words)),
                refuses=lambda words: (
                    "" if _NUMBER.fullmatch(words) else say("paper_typing.number.wrong")
                ),
            )
        )

    def _ask_reason(self, found: Typed, value: Decimal | None) -> None:
        def done(reason: str) -> None:
            self.room.say(
                Answer(team=found.team, task=found.task, typing=Typing.JUDGE, estimate=value,
                       by=say("strip.coach"), reason=reason)
            )  # fmt: skip

        self.room.open(
            TextPage(
                self.room,
                title=say("paper_typing.reason"),
                label=say("teams.reason"),
                offers=say("paper_typing.reason.offers").split("|"),
                done=done,
            )
        )
