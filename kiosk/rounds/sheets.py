"""The sheet on which a team writes: its number, its code, and its jars and boxes in their order.

The order is by lot, from the ids of round and team alone, so that every kiosk and every printer
finds the same one whatever happens meanwhile. The algorithm is our own over SHA-256 (FIPS 180-4),
not that of a random generator, whose inside may change with a version.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from hashlib import sha256
from itertools import permutations

from kiosk.rounds.contents import Team
from kiosk.rounds.once import once
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task

JARS = (Task.COUNT_LOW, Task.COUNT_MIDDLE, Task.COUNT_HIGH)
BOXES = (Task.VOLUME_1, Task.VOLUME_2, Task.VOLUME_3)
TASKS = (*JARS, *BOXES)
CODE_DIGITS = 4


class Thing(StrEnum):
    """What is looked at for an answer; every jar and every box has the same picture."""

    JAR = "jar"
    BOX = "box"


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """One row of a sheet: the task that it means, and what stands on the jar or box.

    `label` is the letter of the key that is bound to it, or the row's number of 1 to 3 while
    there is none.
    """

    task: Task
    thing: Thing
    label: str


def sheet_rows(state: RoundState, team: Team) -> tuple[SheetRow, ...]:
    """The six rows of a team's sheet, jars first, each three in this team's order."""
    rows = []
    for thing, tasks in ((Thing.JAR, JARS), (Thing.BOX, BOXES)):
        for number, task in enumerate(lot(state.id, team.team, tasks), 1):
            key = state.key(team.division, task)
            label = key.letter if key and key.letter else str(number)
            rows.append(SheetRow(task=task, thing=thing, label=label))
    return tuple(rows)


def lot(round_id: str, team: str, tasks: tuple[Task, ...]) -> tuple[Task, ...]:
    """These tasks in the order that fell to the team; it never changes."""
    orders = sorted(permutations(sorted(tasks)))
    return orders[_number(round_id, team, *sorted(tasks)) % len(orders)]


def sheet_number(state: RoundState, team: str) -> int:
    """The number of a team's sheet, from 1 in order of entry. KeyError for no such team."""
    return _numbers(state)[team]


@once
def _numbers(state: RoundState) -> dict[str, int]:
    return {each.team: number for number, each in enumerate(state.everybody, 1)}


def team_code(round_id: str, team: str) -> str:
    """The digits by which a team opens its own answers at the kiosk. Two teams may share them."""
    return f"{_number(round_id, team, 'code') % 10**CODE_DIGITS:0{CODE_DIGITS}d}"


def teams_with_code(state: RoundState, code: str) -> list[Team]:
    """The teams whose code that is: one, rarely more."""
    return [team for team in state.teams if team_code(state.id, team.team) == code]


def limit(task: Task, rules: Rules) -> int:
    """The largest answer that the rules, which everybody may know, let anyone expect."""
    return rules.count_limit if task in JARS else rules.volume_limit_cm3


def _number(*words: str) -> int:
    # The length before each word keeps ("a", "bc") apart from ("ab", "c").
    text = "".join(f"{len(word)}:{word}" for word in words)
    return int.from_bytes(sha256(text.encode()).digest(), "big")
