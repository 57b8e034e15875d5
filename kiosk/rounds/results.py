"""The results of a division: places, medals, what each task brought, and what was corrected."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal
from math import sqrt
from statistics import median

from kiosk.estimating.place_ranges import DRAWS
from kiosk.estimating.score import error_percent
from kiosk.estimating.standings import Answers, Key, standings
from kiosk.rounds.contents import KeptList, ListedTeam, Stage, Team
from kiosk.rounds.counted import counted
from kiosk.rounds.state import RoundState
from kiosk.settings import Task

# A cup's net mass is the difference of two readings, each rounded to a step: 95 % of such
# differences lie within (1 - sqrt(0.05)) steps (the triangular distribution).
STEPS_OF_A_CUP = 1 - sqrt(0.05)


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """What a team answered to one task, in the unit of its key; None for blank or missing."""

    task: Task
    estimate: Decimal | None
    actual: Decimal
    corrected: bool

    @property
    def error_percent(self) -> Decimal | None:
        """How far the estimate is off, in signed per cent of the key; None without one."""
        return None if self.estimate is None else error_percent(self.actual, self.estimate)


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One team's results; ``medal`` is 1 for the first kind, 0 for none.

    ``place_low`` and ``place_high`` are for the coach's eyes only.
    """

    team: Team
    place: int
    shared: bool
    medal: int
    answered: tuple[Answered, ...]
    scores: tuple[Decimal, ...]
    total: Decimal
    place_low: int
    place_high: int

    @property
    def safe(self) -> bool:
        """Whether the keys' uncertainty leaves the place as it is."""
        return self.place_low == self.place == self.place_high


@dataclass(frozen=True, slots=True, kw_only=True)
class Results:
    """A division's results, best first; ``best`` and ``median`` are points for each task.

    ``drawn``: something is known of how sure the places are.
    """

    division: str
    stage: Stage
    rows: tuple[Row, ...]
    best: tuple[Decimal, ...]
    median: tuple[Decimal, ...]
    drawn: bool = True

    @property
    def unsafe_medals(self) -> bool:
        """Whether a place with a medal, or the one below, is not safe."""
        return any(
            not row.safe and (row.medal or row.place_low <= self._last_medal) for row in self.rows
        )

    @property
    def _last_medal(self) -> int:
        return max((row.place for row in self.rows if row.medal), default=0)


def keys_of(state: RoundState, division: str, step: Decimal | None) -> dict[Task, Key]:
    """The keys of a division that are there; ``step`` is the balance's readability in grams.

    The cup has the goal of the rules as its key; how sure a net mass is, is said by the step.
    """
    goal = state.rules.cup_target_g
    rounding = Decimal(STEPS_OF_A_CUP) * (step or Decimal(0)) / goal * 100
    keys = {Task.MASS: Key(actual=goal, half_width_percent=round(rounding, 6))}
    for task in list(Task)[1:]:
        bound = state.key(division, task)
        if bound is not None:
            keys[task] = Key(actual=bound.actual, half_width_percent=bound.half_width_percent)
    return keys


def results(
    state: RoundState,
    division: str,
    answers: Mapping[str, Mapping[Task, Decimal]],
    step: Decimal | None,
    *,
    draws: int = DRAWS,
) -> Results:
    """What a division's teams earned by their settled ``answers``, by team.

    Without ``draws`` every place counts as safe. KeyError for a task that has no key.
    """
    teams = state.teams_of(division=division)
    keys = keys_of(state, division, step)
    given = [Answers(team=team.team, estimates=answers.get(team.team, {})) for team in teams]
    by_id = {team.team: team for team in teams}
    found = standings(keys, given, state.rules, draws=draws)
    teams_at = Counter(each.place for each in found)
    rows = tuple(
        Row(
            team=by_id[each.team],
            place=each.place,
            shared=teams_at[each.place] > 1,
            medal=each.place if each.place <= state.rules.medals and each.total else 0,
            answered=_answered(state, by_id[each.team], answers.get(each.team, {}), keys),
            scores=each.scores,
            total=each.total,
            place_low=each.place_low,
            place_high=each.place_high,
        )
        for each in found
    )
    columns = list(zip(*(row.scores for row in rows), strict=True))
    return Results(
        division=division,
        stage=state.stage(division),
        rows=rows,
        best=tuple(max(column) for column in columns),
        median=tuple(median(column) for column in columns),
        drawn=draws > 0,
    )


def _answered(
    state: RoundState, team: Team, given: Mapping[Task, Decimal], keys: Mapping[Task, Key]
) -> tuple[Answered, ...]:
    changed = corrected(state, team)
    return tuple(
        Answered(
            task=task,
            estimate=given.get(task),
            actual=keys[task].actual,
            corrected=task in changed,
        )
        for task in Task
    )


def corrected(state: RoundState, team: Team) -> frozenset[Task]:
    """The tasks of a team in which something counts that came after its division was locked."""
    locked = locked_at(state, team.division)
    if locked is None:
        return frozenset()
    late = {
        task
        for task in list(Task)[1:]
        for said in state.history(f"answer {team.team} {task} judge")
        if said.place > locked
    }
    cup = counted(state, team)
    if cup is not None and cup.place > locked:
        late.add(Task.MASS)
    return frozenset(late)


def locked_at(state: RoundState, division: str) -> int | None:
    """The place among all notes at which the division was locked after it was open last.

    None while it is open. By places, since the clocks of two kiosks may differ.
    """
    locked: int | None = None
    for said in state.history(f"step {division}"):
        stage = getattr(said.content, "stage", None)
        if stage is Stage.OPEN:
            locked = None
        elif stage is Stage.LOCKED:
            locked = said.place if locked is None else locked
    return locked


def protest_ends(state: RoundState, division: str) -> datetime | None:
    """When the time for protests ends (UTC), None while results are not released."""
    moments = [
        said.note.at
        for said in state.history(f"step {division}")
        if getattr(said.content, "stage", None) is Stage.RELEASED
    ]
    if not moments or state.stage(division) is not Stage.RELEASED:
        return None
    return moments[-1] + timedelta(minutes=state.rules.protest_minutes)


def held_back(state: RoundState, division: str, over: Sequence[int]) -> list[int]:
    """The sittings of a division that are not over yet: till then its results are held back."""
    sittings = {team.sitting for team in state.teams_of(division=division)}
    return sorted(sittings - set(over))


def as_it_was(found: Results, why: str) -> KeptList:
    """The list to keep before something changes."""
    rows = tuple(
        ListedTeam(place=row.place, label=row.team.label, scores=row.scores, total=row.total)
        for row in found.rows
    )
    return KeptList(division=found.division, why=why, rows=rows)
