"""What is missing or doubtful before a sitting begins, while it can still be mended.

Key facts come from whoever read the records: a note only says what a key was when it was bound.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from math import ceil, floor

from kiosk.estimating.exact import exact
from kiosk.estimating.pour_goal import BANDS
from kiosk.rounds.contents import BoundKey
from kiosk.rounds.state import RoundState
from kiosk.rounds.teams import room_in, same_cup, same_label
from kiosk.settings import Task

COUNTS = (Task.COUNT_LOW, Task.COUNT_MIDDLE, Task.COUNT_HIGH)
VOLUMES = (Task.VOLUME_1, Task.VOLUME_2, Task.VOLUME_3)
BOUND = (*COUNTS, *VOLUMES)

# Medal places lie a few points of 700 apart: what one key may take from or give to an answer of
# 90 points should stay well below that. A judgement of ours.
USUAL_GAP = Decimal("1.5")
GOOD_ANSWER = 90


class Doubt(StrEnum):
    """What may be wrong; the value is the last part of its text's key."""

    NO_TEAMS = "no_teams"
    OVERFULL = "overfull"
    CUP_TWICE = "cup_twice"
    LABEL_TWICE = "label_twice"
    NO_KEY = "no_key"
    GONE = "gone"
    TWICE = "twice"
    BAND = "band"
    LIMIT = "limit"
    OPEN = "open"
    UNSURE = "unsure"


STOPS = frozenset(
    {
        Doubt.CUP_TWICE,
        Doubt.LABEL_TWICE,
        Doubt.NO_TEAMS,
        Doubt.NO_KEY,
        Doubt.GONE,
        Doubt.TWICE,
        Doubt.LIMIT,
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One doubt, and where: the rest is for its sentence. ``letter`` may be a cup's or a team's."""

    doubt: Doubt
    division: str = ""
    task: Task | None = None
    letter: str = ""
    points: Decimal | None = None

    @property
    def stops(self) -> bool:
        """Whether nothing may begin before it is mended."""
        return self.doubt in STOPS


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyFacts:
    """Which keys count by now, and which of the jars were weighed closed; ids of keys."""

    counting: Collection[str]
    closed: Collection[str]


def doubts(state: RoundState, sitting: int, facts: KeyFacts) -> list[Found]:
    """Everything to point out before that sitting begins, what stops it first."""
    found = list(_of_teams(state, sitting))
    for division in dict.fromkeys(team.division for team in state.teams_of(sitting=sitting)):
        found += _of_keys(state, division, facts)
    return sorted(found, key=lambda one: not one.stops)


def _of_teams(state: RoundState, sitting: int) -> Iterator[Found]:
    if not state.teams_of(sitting=sitting):
        yield Found(doubt=Doubt.NO_TEAMS)
    if room_in(state, sitting) < 0:
        yield Found(doubt=Doubt.OVERFULL)
    for number in same_cup(state, sitting):
        yield Found(doubt=Doubt.CUP_TWICE, letter=str(number))
    twice = same_label(state)
    for team in state.teams_of(sitting=sitting):
        if team.label.casefold() in twice:
            yield Found(doubt=Doubt.LABEL_TWICE, letter=team.label)


def _of_keys(state: RoundState, division: str, facts: KeyFacts) -> Iterator[Found]:
    used: set[str] = set()
    for task in BOUND:
        key = state.key(division, task)
        if key is None:
            yield Found(doubt=Doubt.NO_KEY, division=division, task=task)
            continue
        for doubt in _of_key(state, key, facts, used):
            yield Found(
                doubt=doubt, division=division, task=task, letter=key.letter, points=effect(key)
            )
        used.add(key.key_id)


def _of_key(
    state: RoundState, key: BoundKey, facts: KeyFacts, used: Collection[str]
) -> Iterator[Doubt]:
    if key.key_id not in facts.counting:
        yield Doubt.GONE
    if key.key_id in used:
        yield Doubt.TWICE
    rules = state.rules
    limit = rules.count_limit if key.task in COUNTS else rules.volume_limit_cm3
    if key.actual > limit:
        yield Doubt.LIMIT
    elif key.task in COUNTS:
        band = BANDS[COUNTS.index(key.task)]
        if not band.low <= key.actual <= band.high:
            yield Doubt.BAND
    if key.task in COUNTS and key.key_id not in facts.closed:
        yield Doubt.OPEN
    if effect(key) > USUAL_GAP:
        yield Doubt.UNSURE


def bounds(key: BoundKey) -> tuple[int, int]:
    """Between which whole numbers the real value is, rounded outward."""
    actual, share = exact(key.actual), exact(key.half_width_percent) / 100
    return floor(actual * (1 - share)), ceil(actual * (1 + share))


def effect(key: BoundKey) -> Decimal:
    """How many points of an answer of 90 points hang on the key's interval."""
    return round(GOOD_ANSWER * key.half_width_percent / 100, 1)
