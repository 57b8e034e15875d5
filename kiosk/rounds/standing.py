"""How a division stands by all that is noted: what counts, what keeps it open, what comes next."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum

from kiosk.estimating.place_ranges import DRAWS
from kiosk.rounds.clock import sittings_over
from kiosk.rounds.contents import Protest, Stage, Team, Typing
from kiosk.rounds.counted import counted
from kiosk.rounds.cups import CupStand, cup_of
from kiosk.rounds.cups import division as step_of
from kiosk.rounds.once import once
from kiosk.rounds.readiness import BOUND
from kiosk.rounds.results import Results, held_back, keys_of, protest_ends, results
from kiosk.rounds.state import RoundState
from kiosk.rounds.typed_answers import FOR_THE_JUDGE, SETTLED, Stand, settled_answers, sheet
from kiosk.settings import Task

STAGES = tuple(Stage)


class What(StrEnum):
    """What keeps a division where it is; the value is the last part of its text's key."""

    TEAMS = "teams"  # none
    SITTINGS = "sittings"
    KEYS = "keys"
    CUPS = "cups"
    TYPED = "typed"  # sheets that are not typed twice
    JUDGE = "judge"  # answers about which the judge decides
    SHARED = "shared"  # jars or boxes of a division that is still at work
    TIME = "time"
    PROTESTS = "protests"


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One of them, how often, and where: names of teams, sittings, divisions or tasks."""

    what: What
    count: int
    names: tuple[str, ...] = ()


def settled(state: RoundState, division: str) -> dict[str, dict[Task, Decimal]]:
    """What counts of each team, by its id; what is blank, missing or without a mass is not there.

    Of a cup's mass and what the judge decided about it, what came later counts.
    """
    return {team.team: _of_team(state, team) for team in state.teams_of(division=division)}


def _of_team(state: RoundState, team: Team) -> dict[Task, Decimal]:
    found = settled_answers(state, team.team)
    cup = counted(state, team)
    return found if cup is None or cup.grams is None else {Task.MASS: cup.grams, **found}


@once
def balance_step(state: RoundState, division: str) -> Decimal | None:
    """The widest step in grams by which a cup of that division was weighed; None without cups."""
    fillings = [
        cup_of(state, team).counting(state.rules) for team in state.teams_of(division=division)
    ]
    steps = [
        step_of(mass.weighing)
        for filling in fillings
        if filling
        for mass in (filling.filled, filling.empty)
    ]
    return max(steps, default=None)


@once
def results_now(state: RoundState, division: str, *, draws: int = DRAWS) -> Results:
    """The results by what is noted; without ``draws`` nothing is said of how sure a place is.

    KeyError while a key is missing: see `blocks`.
    """
    step = balance_step(state, division)
    return results(state, division, settled(state, division), step, draws=draws)


@once
def widest_key(state: RoundState, division: str) -> Task:
    """The task whose key moves places most: the one with the widest interval."""
    keys = keys_of(state, division, balance_step(state, division))
    return max(keys, key=lambda task: keys[task].half_width_percent)


# What comes next ------------------------------------------------------------------------------


def ahead(stage: Stage) -> Stage | None:
    """The stage after that one."""
    return STAGES[STAGES.index(stage) + 1] if stage is not Stage.FINAL else None


def behind(stage: Stage) -> Stage | None:
    """The stage before it."""
    return STAGES[STAGES.index(stage) - 1] if stage is not Stage.OPEN else None


def blocks(state: RoundState, division: str, now: datetime) -> list[Block]:
    """What keeps a division from its next stage at that moment (UTC)."""
    match state.stage(division):
        case Stage.OPEN:
            return list(_not_in(state, division, now))
        case Stage.LOCKED:
            # Two kiosks may have locked and noted something in the same moment.
            return [*_not_in(state, division, now), *_at_work_elsewhere(state, division, now)]
        case Stage.RELEASED:
            return list(_protested(state, division, now))
    return []


def _not_in(state: RoundState, division: str, now: datetime) -> Iterator[Block]:
    teams = state.teams_of(division=division)
    if not teams:
        yield Block(what=What.TEAMS, count=0)
    yield from _block(
        What.SITTINGS, map(str, held_back(state, division, sittings_over(state, now)))
    )
    yield from _block(What.KEYS, (task for task in BOUND if state.key(division, task) is None))
    waited_for = (CupStand.NOT_WEIGHED, CupStand.OUT)
    yield from _block(
        What.CUPS,
        (
            team.label
            for team in teams
            if cup_of(state, team).stand in waited_for
            and state.answer(team.team, Task.MASS, Typing.JUDGE) is None
        ),
    )
    stands = {team.label: {each.stand for each in sheet(state, team.team)} for team in teams}
    typing = {Stand.MISSING, Stand.ONCE}
    assert typing | FOR_THE_JUDGE | SETTLED == set(Stand)
    yield from _block(What.TYPED, (label for label, found in stands.items() if found & typing))
    yield from _block(
        What.JUDGE, (label for label, found in stands.items() if found & FOR_THE_JUDGE)
    )


def _at_work_elsewhere(state: RoundState, division: str, now: datetime) -> Iterator[Block]:
    """Released results tell the real values of jars and boxes."""
    mine = _keys(state, division)
    over = sittings_over(state, now)
    yield from _block(
        What.SHARED,
        (
            other
            for other in state.divisions
            if other != division and mine & _keys(state, other) and held_back(state, other, over)
        ),
    )


def _keys(state: RoundState, division: str) -> set[str]:
    return {key.key_id for task in BOUND if (key := state.key(division, task))}


def _protested(state: RoundState, division: str, now: datetime) -> Iterator[Block]:
    if protest_left(state, division, now):
        yield Block(what=What.TIME, count=1)
    undecided = open_protests(state, division)
    yield from _block(What.PROTESTS, (state.team(each.team).label for each in undecided))


def _block(what: What, names: Iterator[str]) -> Iterator[Block]:
    found = tuple(names)
    if found:
        yield Block(what=what, count=len(found), names=found)


def protest_left(state: RoundState, division: str, now: datetime) -> timedelta:
    """What is left of the time for protests, zero while there is none."""
    ends = protest_ends(state, division)
    return max(timedelta(0), ends - now) if ends else timedelta(0)


def protests_of(state: RoundState, division: str) -> list[Protest]:
    """The protests of a division's teams, in the order in which they came."""
    return [
        each
        for each in state.protests
        if (team := state.latest(Team, f"team {each.team}")) and team.division == division
    ]


def open_protests(state: RoundState, division: str) -> list[Protest]:
    """Those about which nobody decided yet."""
    return [each for each in protests_of(state, division) if each.accepted is None]
