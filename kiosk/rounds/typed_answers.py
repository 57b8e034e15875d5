"""How a team's answers stand after being typed once, twice, by the team, or by the judge."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from kiosk.rounds.contents import Answer, Team, Typing
from kiosk.rounds.once import once
from kiosk.rounds.sheets import TASKS, limit
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task


class Stand(StrEnum):
    """How one answer stands."""

    MISSING = "missing"  # never typed
    ONCE = "once"  # typed once
    AGREED = "agreed"  # typed twice, the same
    MISMATCH = "mismatch"  # typed twice, differently
    UNREADABLE = "unreadable"  # somebody could not read it
    DECIDED = "decided"  # by the judge


SETTLED = frozenset({Stand.AGREED, Stand.DECIDED})
FOR_THE_JUDGE = frozenset({Stand.MISMATCH, Stand.UNREADABLE})


@dataclass(frozen=True, slots=True, kw_only=True)
class Typed:
    """One answer of one team, by its typings. `value` counts; None is blank and earns nothing.

    While it is not settled `value` is None too.
    """

    team: str
    task: Task
    first: Answer | None
    second: Answer | None
    judge: Answer | None

    @property
    def stand(self) -> Stand:
        """How it stands."""
        if self.judge is not None:
            return Stand.DECIDED
        typings = [each for each in (self.first, self.second) if each is not None]
        if any(each.unreadable for each in typings):
            return Stand.UNREADABLE
        if len(typings) < 2:
            return Stand.ONCE if typings else Stand.MISSING
        same = typings[0].estimate == typings[1].estimate
        return Stand.AGREED if same else Stand.MISMATCH

    @property
    def settled(self) -> bool:
        """Whether it counts as it is."""
        return self.stand in SETTLED

    @property
    def value(self) -> Decimal | None:
        """What counts."""
        if self.judge is not None:
            return self.judge.estimate
        return self.first.estimate if self.first and self.settled else None

    @property
    def seen_twice(self) -> bool:
        """Whether nobody needs to type it again."""
        return self.judge is not None or None not in (self.first, self.second)


def typed(state: RoundState, team: str, task: Task) -> Typed:
    """How a team's answer to one of the six tasks stands."""
    return Typed(
        team=team,
        task=task,
        first=first_typing(state, team, task),
        second=state.answer(team, task, Typing.SECOND),
        judge=state.answer(team, task, Typing.JUDGE),
    )


def first_typing(state: RoundState, team: str, task: Task) -> Answer | None:
    """The first typing; what the team typed itself stands for it if the rules say so."""
    first = state.answer(team, task, Typing.FIRST)
    if first is None and state.rules.teams_type:
        return state.answer(team, task, Typing.TEAM)
    return first


@once
def sheet(state: RoundState, team: str) -> tuple[Typed, ...]:
    """How the six answers of a team stand, in the order of tasks."""
    return tuple(typed(state, team, task) for task in TASKS)


def settled_answers(state: RoundState, team: str) -> dict[Task, Decimal]:
    """What counts of a team's sheet; blank and open ones are missing."""
    found = ((each.task, each.value) for each in sheet(state, team))
    return {task: value for task, value in found if value is not None}


def blocking(state: RoundState, division: str) -> list[Typed]:
    """What keeps a division from being closed: all answers that are not settled."""
    return [
        each
        for team in state.teams_of(division=division)
        for each in sheet(state, team.team)
        if not each.settled
    ]


@once
def for_the_judge(state: RoundState) -> tuple[Typed, ...]:
    """The answers about which the judge has to decide, team by team."""
    return tuple(
        each
        for team in state.teams
        for each in sheet(state, team.team)
        if each.stand in FOR_THE_JUDGE
    )


def typed_twice(state: RoundState, teams: Iterable[Team]) -> tuple[int, int]:
    """How many sheets were typed twice, and of how many."""
    sheets = [sheet(state, team.team) for team in teams]
    return sum(all(each.seen_twice for each in one) for one in sheets), len(sheets)


def next_typing(state: RoundState, team: str) -> Typing:
    """Which typing of a sheet is due; the second one also when nothing is left to type."""
    missing = any(each.first is None and each.judge is None for each in sheet(state, team))
    return Typing.FIRST if missing else Typing.SECOND


def typist(state: RoundState, team: str, typing: Typing) -> str:
    """Who began that typing of a sheet, "" for nobody yet."""
    begun = [
        (said[0].note.at, said[0].content.by)
        for task in TASKS
        if (said := state.history(f"answer {team} {task} {typing}"))
        and isinstance(said[0].content, Answer)
    ]
    return min(begun)[1] if begun else ""


def second_looks(state: RoundState, team: str) -> int:
    """How many answers of a first typing were changed by who typed them the second time."""
    firsts = (state.history(f"answer {team} {task} {Typing.FIRST}") for task in TASKS)
    return sum(
        any(isinstance(said.content, Answer) and said.content.reason for said in chain)
        for chain in firsts
    )


def is_a_slip(task: Task, estimate: Decimal | None, rules: Rules) -> bool:
    """Whether an answer is over what can be in any jar or box: asked about, never refused."""
    return estimate is not None and estimate > limit(task, rules)
