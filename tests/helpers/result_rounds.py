"""Rounds that are over, with cups, sheets and keys, so that their results can be seen. Invented."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from kiosk.rounds.contents import (
    Answer,
    BoundKey,
    ClockNote,
    ClockTurn,
    Content,
    CupNote,
    CupTurn,
    Stage,
    Step,
    Typing,
)
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task
from tests.helpers.round_notes import DIVISION, said, team, with_teams
from tests.helpers.weighings import weighed

BIRDS = ("Wren", "Heron", "Teal", "Swift")
KEYS = dict(zip(list(Task)[1:], (412, 3512, 15234, 2484, 1200, 512), strict=True))
LETTERS = ("A", "C", "K", "1", "2", "3")
AFTER, LOCKED, RELEASED = 10, 20, 30  # seconds from the start


def keys(division: str = DIVISION, *, percent: str = "0.8") -> list[BoundKey]:
    """The six keys of a division, each as sure as said."""
    return [
        BoundKey(
            division=division, task=task, key_id=f"{letter} {division}", letter=letter,
            actual=Decimal(actual), half_width_percent=Decimal(percent),
        )
        for letter, (task, actual) in zip(LETTERS, KEYS.items(), strict=True)
    ]  # fmt: skip


def over(sitting: int = 1) -> list[ClockNote]:
    """Its clock was started and stopped."""
    return [ClockNote(sitting=sitting, turn=turn) for turn in (ClockTurn.START, ClockTurn.STOP)]


def typed_twice(team_id: str, share: float) -> list[Content]:
    """A sheet whose six answers are that share of the keys."""
    return [
        Answer(
            team=team_id, task=task, typing=typing, by="Robin",
            estimate=Decimal(round(actual * share)),
        )
        for task, actual in KEYS.items()
        for typing in (Typing.FIRST, Typing.SECOND)
    ]  # fmt: skip


def with_cup(state: RoundState, team_id: str, net: str) -> RoundState:
    """That cup was weighed empty with 12.0 g, and handed in."""
    empty, filled = Decimal("12.0"), Decimal("12.0") + Decimal(net)
    state = said(state, CupNote(team=team_id, turn=CupTurn.EMPTY), weighing=weighed(str(empty)))
    return said(state, CupNote(team=team_id, turn=CupTurn.FILLED), weighing=weighed(str(filled)))


def played(
    birds: Sequence[str] = BIRDS,
    rules: Rules | None = None,
    *,
    percent: str = "0.8",
    shares: Sequence[float] = (0.97, 1.05, 0.8, 0.965),
    steps: Sequence[Stage] = (),
) -> RoundState:
    """One sitting, everything handed in and typed; each team so far off; then these steps."""
    state = said(with_teams(birds, rules), *keys(percent=percent), *over())
    for number, bird in enumerate(birds):
        share = shares[number % len(shares)] - number // len(shares) / 50
        state = with_cup(state, bird.lower(), f"{100 * share:.1f}")
        state = said(state, *typed_twice(bird.lower(), share), seconds=AFTER)
    for number, stage in enumerate(steps):
        state = said(state, Step(division=DIVISION, stage=stage), seconds=LOCKED + 10 * number)
    return state


def with_other_division(state: RoundState, division: str = "Grades 7 to 8") -> RoundState:
    """Another division in a sitting of its own, with keys of its own, that did not begin."""
    late = team("Robin", division=division, sitting=2, cup=1)
    return said(state, late, *keys(division))
