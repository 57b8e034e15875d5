"""Notes of a round: one chain a thing, and nobody writes over another."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from decimal import Decimal

import pytest

from kiosk.evidence import Source
from kiosk.records import keeping
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote
from kiosk.records.store import Store
from kiosk.rounds.contents import (
    Answer,
    BoundKey,
    ClockNote,
    ClockTurn,
    Content,
    CupNote,
    CupTurn,
    Plan,
    Protest,
    Stage,
    Step,
    Typing,
)
from kiosk.rounds.state import RoundState, open_round
from kiosk.settings import Task
from tests.helpers.both_stores import BOTH_STORES
from tests.helpers.round_notes import DIVISION, an_id, team
from tests.helpers.weighings import weighed

pytestmark = BOTH_STORES

NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
OPENED = RoundNote(
    id="a" * 32, at=NOON, round_id="a" * 32, simulated=True, kind=NoteKind.ROUND,
    about="round", after=FIRST, content='{"name": "Autumn"}',
)  # fmt: skip


def note(about: str = "team 1", after: str = FIRST, **more: object) -> RoundNote:
    plain = RoundNote(
        at=NOON, round_id=OPENED.id, simulated=True, kind=NoteKind.TEAM,
        about=about, after=after, content='{"division": "d", "gone": ""}',
    )  # fmt: skip
    return replace(plain, **more)  # type: ignore[arg-type]


@pytest.fixture(autouse=True)
def opened(store: Store) -> None:
    store.save(OPENED)


def test_notes_come_back_in_their_order_with_what_was_weighed(store: Store) -> None:
    first = note(weighing=weighed("112.5"), zero=weighed("0.1"))
    second = note(after=first.id)
    store.save(first, second)
    assert store.round_notes(OPENED.id) == [OPENED, first, second]


def test_who_goes_on_from_what_is_no_longer_the_latest_is_told(store: Store) -> None:
    first = note()
    store.save(first, note(after=first.id))
    with pytest.raises(RecordsError) as told:
        store.save(note(after=first.id))
    assert told.value.problem is Problem.LOST_RACE


def test_two_that_were_read_before_either_was_written_meet_at_the_constraint(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    store.save(note())
    blind = {**keeping._KINDS, RoundNote: (keeping._KINDS[RoundNote][0], lambda *_: {})}
    monkeypatch.setattr(keeping, "_KINDS", blind)
    with pytest.raises(RecordsError) as told:
        store.save(note())
    assert told.value.problem is Problem.LOST_RACE


def test_the_same_note_is_kept_once(store: Store) -> None:
    one = note()
    store.save(one)
    store.save(one)
    assert len(store.round_notes(OPENED.id)) == 2


def test_a_note_of_no_round_is_refused(store: Store) -> None:
    with pytest.raises(RecordsError) as told:
        store.save(note(round_id="b" * 32))
    assert told.value.problem is Problem.NO_ROUND


def test_a_real_note_has_no_place_in_a_simulated_round(store: Store) -> None:
    with pytest.raises(RecordsError) as told:
        store.save(note(simulated=False))
    assert told.value.problem is Problem.MIXED


def test_a_weighing_of_another_sort_of_balance_is_refused_at_once() -> None:
    with pytest.raises(ValueError, match="simulated"):
        note(weighing=replace(weighed("1.0"), source=Source.BALANCE))


def test_rounds_are_listed_as_they_are_called_by_now(store: Store) -> None:
    store.save(note(about="round", kind=NoteKind.ROUND, after=OPENED.id, content='{"name": "B"}'))
    (found,) = store.rounds(simulated=True)
    assert (found.id, found.since, found.content) == (OPENED.id, NOON, '{"name": "B"}')
    assert store.rounds(simulated=False) == []


def test_a_weighing_keeps_its_digits(store: Store) -> None:
    one = note(weighing=weighed("112.50"))
    store.save(one)
    kept = store.round_notes(OPENED.id)[-1].weighing
    assert kept is not None
    assert str(kept.grams) == str(Decimal("112.50"))


# What comes late ------------------------------------------------------------------------------

OTHER = "Grades 7 to 8"
WREN = team("Wren")


def said(store: Store, *contents: Content) -> Problem | None:
    """What became of these in a round of their own, one after the other."""
    first = open_round(Plan(name="Late"), simulated=True, at=NOON, new_id=an_id)
    state = RoundState.of([first])
    store.save(first)
    for content in contents:
        made = state.next_note(content, at=NOON, new_id=an_id)
        try:
            store.save(made)
        except RecordsError as refused:
            return refused.problem
        state = state.with_note(made)
    return None


def typed(typing: Typing) -> Answer:
    return Answer(team="wren", task=Task.COUNT_LOW, typing=typing, estimate=Decimal(1))


def key(reason: str = "") -> BoundKey:
    return BoundKey(
        division=DIVISION, task=Task.COUNT_LOW, key_id="k", letter="A", actual=Decimal(400),
        half_width_percent=Decimal(1), reason=reason,
    )  # fmt: skip


ROBIN = team("Robin", division=OTHER)
LOCK = Step(division=DIVISION, stage=Stage.LOCKED)
OPEN_AGAIN = Step(division=DIVISION, stage=Stage.OPEN, reason="A sheet was missing")
START = ClockNote(sitting=1, turn=ClockTurn.START)
SPILLED = CupNote(team="wren", turn=CupTurn.SPILLED_AFTER)


@pytest.mark.parametrize(
    "late",
    [
        typed(Typing.TEAM),
        typed(Typing.FIRST),
        typed(Typing.SECOND),
        SPILLED,
        WREN.model_copy(update={"gone": "Ill"}),
        WREN.model_copy(update={"division": OTHER}),
        team("Heron"),
    ],
    ids=lambda content: f"{content.KIND} {getattr(content, 'typing', '')}",
)
def test_after_the_lock_the_answers_of_a_division_stand(store: Store, late: Content) -> None:
    assert said(store, WREN, LOCK, late) is Problem.ROUND_LOCKED
    assert said(store, WREN, LOCK, OPEN_AGAIN, late) is None


@pytest.mark.parametrize(
    "decided",
    [
        typed(Typing.JUDGE),
        SPILLED.model_copy(update={"protest": "p"}),
        WREN.model_copy(update={"gone": "Ill", "reason": "Told by the school"}),
        team("Robin", division=OTHER),
    ],
    ids=lambda content: content.KIND,
)
def test_what_is_decided_after_the_lock_is_kept(store: Store, decided: Content) -> None:
    assert said(store, WREN, LOCK, decided) is None


def test_nobody_comes_into_a_division_that_is_locked_whatever_the_reason(store: Store) -> None:
    robin = team("Robin", division=OTHER)
    comes = robin.model_copy(update={"division": DIVISION, "reason": "They are in grade 5"})
    assert said(store, WREN, robin, LOCK, comes) is Problem.ROUND_LOCKED


GONE = WREN.model_copy(update={"gone": "Ill", "reason": "Told by the school"})


def test_a_team_that_is_gone_comes_back_into_its_own_division_for_a_reason(store: Store) -> None:
    back = WREN.model_copy(update={"reason": "They came after all"})
    assert said(store, WREN, LOCK, GONE, back) is None
    assert said(store, WREN, LOCK, GONE, WREN) is Problem.ROUND_LOCKED


FINAL = Step(division=DIVISION, stage=Stage.FINAL)
RELEASED = Step(division=DIVISION, stage=Stage.RELEASED, reason="A sheet was missing")


@pytest.mark.parametrize(
    "change",
    [
        GONE,
        WREN.model_copy(update={"division": OTHER, "reason": "They are in grade 7"}),
        ROBIN.model_copy(update={"division": DIVISION, "reason": "They are in grade 5"}),
        SPILLED,
        SPILLED.model_copy(update={"protest": "p"}),
        typed(Typing.FIRST),
        typed(Typing.JUDGE),
        key("The jar was broken"),
        Protest(protest="p", team="wren", task=Task.COUNT_LOW),
    ],
    ids=lambda content: content.KIND,
)
def test_what_is_final_is_changed_by_a_step_back_only(store: Store, change: Content) -> None:
    assert said(store, WREN, ROBIN, FINAL, change) is Problem.ROUND_FINAL
    assert said(store, WREN, ROBIN, FINAL, RELEASED, change) is not Problem.ROUND_FINAL


def test_what_a_decided_protest_went_by_is_not_undone(store: Store) -> None:
    protest = Protest(protest="p", team="wren", task=Task.MASS)
    accepted = protest.model_copy(update={"accepted": True, "reason": "weighed again"})
    again = CupNote(team="wren", turn=CupTurn.FILLED, protest="p")
    undone = again.model_copy(update={"turn": CupTurn.UNDONE})
    assert said(store, WREN, LOCK, protest, again, undone) is None
    assert said(store, WREN, LOCK, protest, again, accepted, undone) is Problem.ROUND_LOCKED


def test_once_a_sitting_began_another_key_needs_a_reason(store: Store) -> None:
    assert said(store, WREN, START, key()) is Problem.ROUND_FROZEN
    assert said(store, WREN, START, key("The jar was broken")) is None
    assert said(store, WREN, key(), START) is None


def test_moving_the_only_team_away_thaws_no_key(store: Store) -> None:
    moved = WREN.model_copy(update={"sitting": 2})
    assert said(store, WREN, START, moved, key()) is Problem.ROUND_FROZEN
    assert said(store, WREN, moved, START, key()) is None  # it was away before


@pytest.mark.parametrize("into", ["", "heron"])
def test_a_team_that_left_before_the_start_freezes_no_key(store: Store, into: str) -> None:
    left = WREN.model_copy(update={"gone": "Twice", "into": into})
    assert said(store, WREN, left, START, key()) is None
    assert said(store, WREN, START, left, key()) is Problem.ROUND_FROZEN


@pytest.mark.parametrize("content", ["[]", "nothing", '{"turn": "start"}'])
def test_a_clock_that_cannot_be_read_stops_no_key(store: Store, content: str) -> None:
    store.save(note("clock 9", kind=NoteKind.CLOCK, content=content))
    store.save(note(key().about, kind=NoteKind.KEY, content=key().model_dump_json()))
    assert len(store.round_notes(OPENED.id)) == 3


def test_once_a_sitting_began_the_rules_stand(store: Store) -> None:
    assert said(store, START, Plan(name="Renamed")) is Problem.ROUND_FROZEN


def test_what_was_kept_since_a_note_is_read_alone(store: Store) -> None:
    first, second = note(), note("team 2")
    store.save(first, second)
    assert store.round_notes(OPENED.id, first.id) == [second]
    assert store.round_notes(OPENED.id, second.id) == []


def test_only_notes_about_some_things_may_be_asked_for(store: Store) -> None:
    step = note("step d", kind=NoteKind.STEP, content='{"division": "d", "stage": "locked"}')
    store.save(note(), step)
    assert store.round_notes(OPENED.id, kinds=[NoteKind.ROUND, NoteKind.STEP]) == [OPENED, step]
