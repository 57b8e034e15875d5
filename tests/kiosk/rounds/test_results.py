"""Results of a division, against an independent ranking, and what is said of corrections."""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal

import pytest
from scipy.stats import rankdata

from kiosk.rounds.contents import Answer, BoundKey, Stage, Step, Typing
from kiosk.rounds.results import (
    Results,
    as_it_was,
    corrected,
    held_back,
    keys_of,
    protest_ends,
    results,
)
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task
from tests.helpers.pan import STARTED
from tests.helpers.round_notes import DIVISION, said, team, with_teams

BIRDS = ("Wren", "Heron", "Teal", "Swift")
STEP = Decimal("0.1")


def keyed(state: RoundState, percent: str = "0") -> RoundState:
    """All six keys are 1 000, as sure as said."""
    bound = [
        BoundKey(
            division=DIVISION, task=task, key_id=task, letter="A",
            actual=Decimal(1000), half_width_percent=Decimal(percent),
        )
        for task in list(Task)[1:]
    ]  # fmt: skip
    return said(state, *bound)


def answered(**counts: int) -> dict[str, dict[Task, Decimal]]:
    return {name: {Task.COUNT_LOW: Decimal(count)} for name, count in counts.items()}


def found(percent: str = "0", medals: int = 2, **counts: int) -> Results:
    state = keyed(with_teams(BIRDS, Rules(medals=medals)), percent)
    return results(state, DIVISION, answered(**counts), STEP)


def test_places_are_those_of_an_independent_ranking() -> None:
    rows = found(wren=900, heron=1100, teal=500, swift=950).rows
    totals = [-float(row.total) for row in rows]
    assert [row.place for row in rows] == list(rankdata(totals, method="min"))
    assert [row.team.label for row in rows] == ["Swift", "Wren", "Heron", "Teal"]


def test_who_shares_a_place_shares_the_medal() -> None:
    rows = found(wren=900, heron=1100, teal=500, swift=950).rows
    assert [(row.place, row.shared, row.medal) for row in rows] == [
        (1, False, 1), (2, True, 2), (2, True, 2), (4, False, 0),
    ]  # fmt: skip


def test_who_answered_nothing_gets_no_medal() -> None:
    rows = found(medals=3, wren=900).rows
    assert [row.medal for row in rows] == [1, 0, 0, 0]


def test_best_and_median_are_of_each_task() -> None:
    table = found(wren=900, heron=800, teal=500, swift=950)
    assert (table.best[1], table.median[1]) == (Decimal("95.0"), Decimal("85.0"))


def test_a_medal_that_the_key_may_move_is_pointed_out() -> None:
    assert found("5", wren=990, heron=1010, teal=500, swift=400).unsafe_medals
    assert not found("0.1", wren=990, heron=900, teal=500, swift=400).unsafe_medals


def test_an_answer_shows_its_signed_error() -> None:
    first = found(wren=900).rows[0].answered[1]
    assert first.error_percent == Decimal(-10)


def test_a_task_without_a_key_cannot_be_scored() -> None:
    with pytest.raises(KeyError):
        results(with_teams(BIRDS), DIVISION, {}, STEP)


def test_a_cup_is_as_sure_as_two_readings() -> None:
    # 95 % of the differences of two evenly spread errors of half a step lie within 0.776 steps.
    mass = keys_of(with_teams(BIRDS), DIVISION, Decimal(1))[Task.MASS]
    assert float(mass.half_width_percent) == pytest.approx(0.776, abs=0.001)


def judged(reason: str) -> Answer:
    return Answer(
        team="wren", task=Task.COUNT_LOW, typing=Typing.JUDGE,
        estimate=Decimal(240), reason=reason,
    )  # fmt: skip


def test_what_the_judge_settles_before_the_lock_is_no_correction() -> None:
    state = said(with_teams(BIRDS), judged("reads 240"))
    state = said(state, Step(division=DIVISION, stage=Stage.LOCKED), seconds=1)
    assert corrected(state, state.team("wren")) == frozenset()
    state = said(state, judged("the sheet says 240"), seconds=2)
    assert corrected(state, state.team("wren")) == {Task.COUNT_LOW}


def test_the_time_for_protests_runs_from_the_release() -> None:
    state = with_teams(BIRDS, Rules(protest_minutes=20))
    assert protest_ends(state, DIVISION) is None
    state = said(state, Step(division=DIVISION, stage=Stage.RELEASED), seconds=60)
    assert protest_ends(state, DIVISION) == STARTED + timedelta(minutes=21)


def test_results_wait_for_the_last_sitting_of_the_division() -> None:
    state = said(with_teams(BIRDS), team("Pipit", sitting=2))
    assert held_back(state, DIVISION, over=[1]) == [2]


def test_a_list_is_kept_as_it_was() -> None:
    table = found(wren=900, heron=800)
    kept = as_it_was(table, "key of jar B counted again")
    assert [(row.place, row.label, row.total) for row in kept.rows][:2] == [
        (1, "Wren", Decimal("90.0")), (2, "Heron", Decimal("80.0")),
    ]  # fmt: skip
