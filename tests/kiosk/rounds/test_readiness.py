"""What is pointed out before a sitting begins."""

from __future__ import annotations

from decimal import Decimal

from kiosk.rounds.contents import BoundKey
from kiosk.rounds.readiness import BOUND, Doubt, KeyFacts, doubts, effect
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task
from tests.helpers.round_notes import DIVISION, opened, said, with_teams

ACTUAL = dict(zip(BOUND, (300, 4000, 15000, 900, 2000, 3500), strict=True))
ALL = KeyFacts(counting=list(BOUND), closed=list(BOUND))


def key(task: Task, actual: int | None = None, **more: object) -> BoundKey:
    plain = BoundKey(
        division=DIVISION, task=task, key_id=task, letter="A",
        actual=Decimal(actual or ACTUAL[task]), half_width_percent=Decimal("0.5"),
    )  # fmt: skip
    return plain.model_copy(update=more)


def ready() -> RoundState:
    return said(with_teams(["Wren"]), *map(key, BOUND))


def found(state: RoundState, facts: KeyFacts = ALL) -> list[tuple[Doubt, Task | None]]:
    return [(one.doubt, one.task) for one in doubts(state, 1, facts)]


def test_nothing_is_pointed_out_where_all_is_well() -> None:
    assert found(ready()) == []


def test_a_sitting_without_teams_and_a_division_without_keys_stop_it() -> None:
    assert found(opened()) == [(Doubt.NO_TEAMS, None)]
    missing = doubts(with_teams(["Wren"]), 1, ALL)
    assert [(one.task, one.stops) for one in missing] == [(task, True) for task in BOUND]


def test_too_many_teams_at_once() -> None:
    state = said(with_teams(["Wren", "Teal"], Rules(teams_a_sitting=1)), *map(key, BOUND))
    assert found(state) == [(Doubt.OVERFULL, None)]


def test_a_key_that_was_retired_stops_it() -> None:
    facts = KeyFacts(counting=list(BOUND[1:]), closed=list(BOUND))
    assert found(ready(), facts) == [(Doubt.GONE, Task.COUNT_LOW)]


def test_a_jar_that_nobody_weighed_closed_is_not_sealed() -> None:
    facts = KeyFacts(counting=list(BOUND), closed=list(BOUND[1:]))
    assert found(ready(), facts) == [(Doubt.OPEN, Task.COUNT_LOW)]


def test_one_jar_for_two_tasks() -> None:
    state = said(ready(), key(Task.COUNT_MIDDLE, key_id=Task.COUNT_LOW))
    assert found(state) == [(Doubt.TWICE, Task.COUNT_MIDDLE)]


def test_a_count_outside_its_band_or_beyond_the_limit() -> None:
    assert found(said(ready(), key(Task.COUNT_LOW, 1200))) == [(Doubt.BAND, Task.COUNT_LOW)]
    assert found(said(ready(), key(Task.COUNT_HIGH, 20001))) == [(Doubt.LIMIT, Task.COUNT_HIGH)]
    assert found(said(ready(), key(Task.VOLUME_3, 4001))) == [(Doubt.LIMIT, Task.VOLUME_3)]


def test_a_key_too_unsure_for_the_usual_gaps() -> None:
    unsure = key(Task.COUNT_LOW, half_width_percent=Decimal("2.0"))
    assert effect(unsure) == Decimal("1.8")
    assert found(said(ready(), unsure)) == [(Doubt.UNSURE, Task.COUNT_LOW)]


def test_what_stops_comes_first() -> None:
    facts = KeyFacts(counting=list(BOUND[:-1]), closed=[])
    assert found(ready(), facts)[0] == (Doubt.GONE, Task.VOLUME_3)
