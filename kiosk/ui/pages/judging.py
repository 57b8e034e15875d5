"""The judge decides what cannot be read or was typed differently."""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Answer, Typing
from kiosk.rounds.sheets import sheet_rows
from kiosk.rounds.typed_answers import Typed, for_the_judge, typed
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.sheet_views import row_name, value_of

ANOTHER = "another"  # number than was typed
_NUMBER = re.compile(r"0|[1-9][0-9]{0,5}", re.ASCII)


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
                text=f"{self.room.state.team(each.team).label}, {self._task(each.team, each.task)}",
                note=say("paper_typing.typed_as", first=value_of(each.first),
                         second=value_of(each.second)),
                says=PersonEvent(Person.CHOOSE, (each.team, each.task)),
            )
            for each in for_the_judge(self.room.state)
        ]  # fmt: skip

    def _task(self, team: str, task: Task) -> str:
        """As the paper of that team calls it."""
        rows = sheet_rows(self.room.state, self.room.state.team(team))
        return next(row_name(row) for row in rows if row.task is task)

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
        title = say("paper_typing.reads", team=label, task=self._task(found.team, found.task))
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
