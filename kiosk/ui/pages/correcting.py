"""Correcting an answer after the lock: which one, to what, and why; and hints where to look."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Answer, Team, Typing
from kiosk.rounds.cups import CupStand, TeamCup, cup_of
from kiosk.rounds.hints import Hint, Slip, hints
from kiosk.rounds.standing import settled
from kiosk.rounds.typed_answers import is_a_slip
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.kept_list import list_before
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.evidence_rows import outcome
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.result_words import task_short

COACH = "coach"  # who decided
_WHOLE = re.compile(r"0|[1-9][0-9]{0,6}", re.ASCII)
_GRAMS = re.compile(r"(0|[1-9][0-9]{0,4})(?:[.,][0-9]{1,3})?", re.ASCII)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """The answer that is to be corrected."""

    team: Team
    task: Task

    @property
    def kind(self) -> str:
        """mass, count or volume."""
        return self.task.value.partition(" ")[0]


def correct(room: Room, division: str) -> None:
    """Ask which team's answer it is."""
    room.open(
        PickPage(
            room,
            title=say("results.which_team"),
            options=[
                (team.label, "", team.team) for team in room.state.teams_of(division=division)
            ],
            sort=True,
            done=lambda team: _which_task(room, room.state.team(str(team))),
        )
    )


def _which_task(room: Room, team: Team) -> None:
    state = room.state
    values = settled(state, team.division).get(team.team)
    if values is None:  # it left while the question was open
        return

    def done(task: object) -> None:
        assert isinstance(task, Task)
        correct_one(room, Wanted(team=team, task=task))

    room.open(
        PickPage(
            room,
            title=say("results.correct.task", team=team.label),
            options=[
                (
                    task_short(state, team.division, task),
                    say("results.correct.now", value=value_words(values.get(task))),
                    task,
                )
                for task in Task
            ],
            done=done,
        )
    )


def without_mass(room: Room, division: str) -> list[TeamCup]:
    """The cups of a division that ended without a mass."""
    found = (cup_of(room.state, team) for team in room.state.teams_of(division=division))
    return [cup for cup in found if cup.stand is CupStand.NO_MASS and cup.ended is not None]


def decide_cup(room: Room, division: str) -> None:
    """Ask which of those cups it is, and what it is worth."""

    def done(team: object) -> None:
        correct_one(room, Wanted(team=room.state.team(str(team)), task=Task.MASS))

    room.open(
        PickPage(
            room,
            title=say("results.decide_cups.heading"),
            options=[
                (cup.team.label, outcome(cup), cup.team.team)
                for cup in without_mass(room, division)
            ],
            done=done,
        )
    )


def value_words(value: Decimal | None) -> str:
    """An answer as the judge reads it."""
    return say("results.correct.blank") if value is None else number(value)


def correct_one(room: Room, wanted: Wanted) -> None:
    """Ask for the value that counts, and for the reason."""
    blank = say("results.correct.blank")
    asked: set[str] = set()

    def refuses(words: str) -> str:
        if words.casefold() == blank:
            return ""
        if not (_GRAMS if wanted.task is Task.MASS else _WHOLE).fullmatch(words):
            no = "no_mass" if wanted.task is Task.MASS else "no_number"
            return say(f"results.correct.{no}")
        over = wanted.task is not Task.MASS and is_a_slip(
            wanted.task, _value(words), room.state.rules
        )
        if over and words not in asked:
            asked.add(words)
            return say("results.correct.large")
        return ""

    def done(words: str) -> None:
        _ask_why(room, wanted, None if words.casefold() == blank else _value(words))

    room.open(
        TextPage(
            room,
            title=say("results.correct.heading", team=wanted.team.label, what=_what(room, wanted)),
            label=say(f"results.correct.label.{wanted.kind}"),
            offers=(blank,),
            refuses=refuses,
            done=done,
        )
    )


def _value(words: str) -> Decimal:
    return Decimal(words.replace(",", "."))


def _what(room: Room, wanted: Wanted) -> str:
    return task_short(room.state, wanted.team.division, wanted.task)


def _ask_why(room: Room, wanted: Wanted, value: Decimal | None) -> None:
    def done(reason: str) -> None:
        what = _what(room, wanted)
        why = say("results.correct.why", team=wanted.team.label, what=what, reason=reason)
        answer = Answer(
            team=wanted.team.team,
            task=wanted.task,
            typing=Typing.JUDGE,
            estimate=value,
            by=COACH,
            reason=reason,
        )
        room.say(*list_before(room, wanted.team.division, why), answer)

    room.open(
        TextPage(
            room,
            title=say("results.correct.reason"),
            label=say("results.correct.label"),
            offers=say("results.correct.offers").split("|"),
            done=done,
        )
    )


class HintsPage(RowsPage):
    """What looks like a slip by the keys; tapping one leads to its correction."""

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._division = division

    @property
    def _hints(self) -> list[Hint]:
        return [each for each in hints(self.room.state) if each.team.division == self._division]

    def title(self) -> str:
        """The heading."""
        return say("results.hints")

    def body(self) -> str:
        """What a hint is."""
        return say("results.hints.body" if self._hints else "results.do.hints.none")

    def rows(self) -> Sequence[RowView]:
        """One for each."""
        return [self._row(hint) for hint in self._hints]

    def _row(self, hint: Hint) -> RowView:
        state, division = self.room.state, self._division
        other = task_short(state, division, hint.other) if hint.other else ""
        wanted = Wanted(team=hint.team, task=hint.task)
        what = _what(self.room, wanted)
        return RowView(
            text=say(
                "results.hint.row",
                team=hint.team.label, what=what, value=number(hint.estimate),
            ),
            note=say(f"results.hint.{Slip(hint.slip).name.lower()}", other=other),
            sign="cannot tell",
            says=PersonEvent(Person.CHOOSE, wanted),
        )  # fmt: skip

    def press(self, event: PersonEvent) -> None:
        """Correct it."""
        if event.kind is Person.CHOOSE:
            correct_one(self.room, event.value)
        else:
            super().press(event)
