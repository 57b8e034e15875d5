"""What looks like a slip of the pen once the keys may be looked at: for the scorer, after the lock.

A hint never changes anything. The widths are our own choice, common practice without a source: an
answer within a quarter of a power of ten of the key is more likely a lost or a doubled zero than a
guess, and two answers that fit each other's keys by a quarter were likely written in each other's
rows.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from itertools import combinations

from kiosk.rounds.contents import Stage, Team
from kiosk.rounds.sheets import BOXES, JARS
from kiosk.rounds.state import RoundState
from kiosk.rounds.typed_answers import settled_answers
from kiosk.settings import Task

NEAR = Decimal("1.25")  # as a ratio, either way
FAR = Decimal(2)  # what both answers must be off by before a swap explains them
TEN = Decimal(10)


class Slip(StrEnum):
    """What it looks like."""

    TEN_TIMES = "ten times"  # too much
    A_TENTH = "a tenth"
    SWAPPED = "swapped"  # with the row of another task


@dataclass(frozen=True, slots=True, kw_only=True)
class Hint:
    """One answer that looks like a slip; `other` is the task whose answer it may be."""

    team: Team
    task: Task
    slip: Slip
    estimate: Decimal
    other: Task | None = None


def hints(state: RoundState) -> list[Hint]:
    """What looks like a slip among the teams of divisions that are locked."""
    return [
        hint
        for team in state.teams
        if state.stage(team.division) is not Stage.OPEN
        for hint in _of(state, team)
    ]


def _of(state: RoundState, team: Team) -> Iterator[Hint]:
    answers = settled_answers(state, team.team)
    for tasks in (JARS, BOXES):
        off = {
            task: answers[task] / key.actual
            for task in tasks
            if answers.get(task) and (key := state.key(team.division, task))
        }
        swapped = _swapped(state, team, answers, off)
        for task, ratio in off.items():
            found = Slip.SWAPPED if task in swapped else _by_ten(ratio)
            if found is not None:
                yield Hint(
                    team=team,
                    task=task,
                    slip=found,
                    estimate=answers[task],
                    other=swapped.get(task),
                )


def _by_ten(ratio: Decimal) -> Slip | None:
    if _near(ratio / TEN):
        return Slip.TEN_TIMES
    return Slip.A_TENTH if _near(ratio * TEN) else None


def _swapped(
    state: RoundState, team: Team, answers: dict[Task, Decimal], off: dict[Task, Decimal]
) -> dict[Task, Task]:
    """For each task whose answer fits another row, and the other way round, that other task."""
    found: dict[Task, Task] = {}
    for one, other in combinations(off, 2):
        key_of_one, key_of_other = state.key(team.division, one), state.key(team.division, other)
        if key_of_one is None or key_of_other is None:
            continue
        fits = _near(answers[one] / key_of_other.actual) and _near(
            answers[other] / key_of_one.actual
        )
        if fits and not (_near(off[one], FAR) or _near(off[other], FAR)):
            found |= {one: other, other: one}
    return found


def _near(ratio: Decimal, width: Decimal = NEAR) -> bool:
    return 1 / width <= ratio <= width
