"""What was corrected after a division was locked: each score before and after, and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from kiosk.rounds.contents import BoundKey, Stage, Team, Typing
from kiosk.rounds.counted import counted
from kiosk.rounds.results import Results, Row, locked_at
from kiosk.rounds.standing import results_now
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.texts import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """A score that became another one; ``team`` is None for a key, which counts for all.

    ``before`` is None where there was no score.
    """

    team: Team | None
    task: Task
    before: Decimal | None = None
    after: Decimal | None = None
    reason: str = ""


def corrections(state: RoundState, found: Results) -> list[Change]:
    """What was changed in ``found`` since its division was locked, keys first."""
    locked = locked_at(state, found.division)
    if found.stage is Stage.OPEN or locked is None:
        return []
    then = results_now(state.up_to(locked), found.division, draws=0)
    before = {row.team.team: row.scores for row in then.rows}
    changes = list(_of_keys(state, found.division, locked))
    for row in found.rows:
        changes += _of_row(state, row, before.get(row.team.team))
    return changes


def _of_keys(state: RoundState, division: str, locked: int) -> Iterator[Change]:
    for task in list(Task)[1:]:
        for said in state.history(f"key {division} {task}"):
            if said.place > locked and isinstance(said.content, BoundKey):
                yield Change(team=None, task=task, reason=said.content.reason)


def _of_row(state: RoundState, row: Row, before: tuple[Decimal, ...] | None) -> Iterator[Change]:
    for place, (answered, after) in enumerate(zip(row.answered, row.scores, strict=True)):
        if answered.corrected:
            yield Change(
                team=row.team,
                task=answered.task,
                before=before[place] if before else None,
                after=after,
                reason=_reason(state, row.team, answered.task),
            )


def _reason(state: RoundState, team: Team, task: Task) -> str:
    cup = counted(state, team) if task is Task.MASS else None
    if cup is not None and cup.filling is not None:
        return say("results.weighed_again")
    judged = state.answer(team.team, task, Typing.JUDGE)
    return judged.reason if judged is not None else say("results.weighed_again")
