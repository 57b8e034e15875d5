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
from tests.helpers.both_stores import BOTH_STORES
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
        about=about, after=after, content="{}",
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
