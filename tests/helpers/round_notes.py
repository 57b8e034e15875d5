"""Rounds made by hand: teams named after birds, notes said one after the other. All invented."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta
from itertools import count

from kiosk.evidence import Weighing
from kiosk.rounds.contents import Answer, Content, CupNote, CupTurn, Plan, Team, Typing
from kiosk.rounds.state import RoundState, open_round
from kiosk.settings import Rules, Task
from tests.helpers.pan import STARTED
from tests.helpers.weighings import weighed

DIVISION = "Grades 4 to 6"
_ids = count(1)


def an_id() -> str:
    return f"{next(_ids):032x}"


def opened(rules: Rules | None = None, *, simulated: bool = True) -> RoundState:
    """A round without anybody."""
    plan = Plan(name="Autumn round", rules=rules or Rules())
    return RoundState.of([open_round(plan, simulated=simulated, at=STARTED, new_id=an_id)])


def said(
    state: RoundState,
    *contents: Content,
    weighing: Weighing | None = None,
    zero: Weighing | None = None,
    seconds: float = 0,
) -> RoundState:
    """The round after all of these, so many seconds after the start."""
    for content in contents:
        at = STARTED + timedelta(seconds=seconds)
        note = state.next_note(content, at=at, new_id=an_id, weighing=weighing, zero=zero)
        state = state.with_note(note)
    return state


def team(label: str, *, division: str = DIVISION, sitting: int = 1, **more: object) -> Team:
    """A team whose id is its label in small letters."""
    plain = Team(team=label.lower(), label=label, division=division, sitting=sitting)
    return plain.model_copy(update=more)


def with_teams(labels: Iterable[str], rules: Rules | None = None) -> RoundState:
    """A round with these teams in one sitting, their cups numbered from 1."""
    teams = [team(label, cup=number) for number, label in enumerate(labels, 1)]
    return said(opened(rules), *teams)


def answer(label: str, task: Task, estimate: object, typing: Typing = Typing.FIRST) -> Answer:
    """What a team answered, as typed that time."""
    return Answer.model_validate(
        {"team": label.lower(), "task": task, "typing": typing, "estimate": estimate}
    )


def weighed_again(state: RoundState, team_id: str, grams: str, protest: str = "p") -> RoundState:
    """The cup of that team was weighed once more in that protest."""
    note = CupNote(team=team_id, turn=CupTurn.FILLED, protest=protest)
    return said(state, note, weighing=weighed(grams))
