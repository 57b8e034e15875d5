"""Four kiosks on one server at the same moment: nothing is lost, and nothing is there twice."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, closing
from dataclasses import replace
from decimal import Decimal
from threading import Barrier
from typing import TypeVar

import pytest

from kiosk.records.checking import check
from kiosk.records.entries import CupTaken, Entry, GuessMade
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote
from kiosk.records.store import Store
from tests.helpers.recorded import AT, cup_taken, handed_in, key_made, key_mass, key_started

KIOSKS = 4
CUPS = 8  # of each kiosk
T = TypeVar("T")


@pytest.fixture
def kiosks(on_server: str) -> Iterator[list[Store]]:
    """The store of each kiosk."""
    with ExitStack() as stack:
        yield [stack.enter_context(closing(Store(on_server))) for _ in range(KIOSKS)]


def at_once(kiosks: list[Store], do: Callable[[Store, int], T]) -> list[T]:
    """What came of each kiosk's doing, all begun at the same moment."""
    together = Barrier(len(kiosks))

    def begin(number: int) -> T:
        together.wait(10)
        return do(kiosks[number], number)

    with ThreadPoolExecutor(len(kiosks)) as threads:
        return list(threads.map(begin, range(len(kiosks))))


def outcome(store: Store, *entries: Entry) -> Problem | None:
    try:
        store.save(*entries)
    except RecordsError as error:
        return error.problem
    return None


def take_a_cup(store: Store, team: str) -> tuple[CupTaken, int]:
    """A cup with the next number, as often as it takes; and how often another was quicker."""
    lost = 0
    while True:
        cup = cup_taken(store.next_cup_number(simulated=False), team=team)
        found = outcome(store, cup)
        if found is None:
            return cup, lost
        assert found is Problem.NUMBER_TAKEN
        lost += 1


def test_every_cup_has_a_number_of_its_own_and_comes_back_once(
    kiosks: list[Store], on_server: str
) -> None:
    def take(store: Store, number: int) -> list[tuple[CupTaken, int]]:
        return [take_a_cup(store, f"Team {number}") for _ in range(CUPS)]

    found = [each for taken in at_once(kiosks, take) for each in taken]
    cups = [cup for cup, _ in found]
    assert sum(lost for _, lost in found) > 0  # or they were never at it at once
    assert sorted(cup.number for cup in cups) == list(range(1, KIOSKS * CUPS + 1))
    assert {out.id for out in kiosks[0].cups_out(simulated=False)} == {cup.id for cup in cups}

    def hand_in(store: Store, number: int) -> list[Problem | None]:
        return [outcome(store, handed_in(cup, f"10{number}.0")) for cup in cups]

    by_kiosk = at_once(kiosks, hand_in)
    for of_one_cup in zip(*by_kiosk, strict=True):
        assert Counter(of_one_cup) == {None: 1, Problem.NOT_OUT: KIOSKS - 1}
    assert kiosks[0].cups_out(simulated=False) == []
    kept = [try_ for n in range(KIOSKS) for try_ in kiosks[0].last_tries(f"Team {n}", False, 99)]
    assert {try_.id for try_ in kept} == {cup.id for cup in cups}
    assert len(kept) == len(cups)
    assert check(on_server, lambda *_: True).findings == ()


def test_one_letter_is_given_once_and_one_guess_of_a_team_counts(kiosks: list[Store]) -> None:
    def make(store: Store, _number: int) -> tuple[str, Problem | None]:
        key = key_started()
        store.save(key, key_mass(key, "sample", "35.4"))
        return key.id, outcome(store, key_made(key, "C"))

    made = at_once(kiosks, make)
    assert Counter(found for _, found in made) == {None: 1, Problem.LETTER_TAKEN: KIOSKS - 1}
    (jar,) = kiosks[0].jars_to_guess(simulated=False)
    assert jar.key_id in [key for key, found in made if found is None]

    def guess(store: Store, number: int) -> None:
        made = GuessMade(key_id=jar.key_id, team="Heron", guess=Decimal(2000 + number), at=AT)
        store.save(made)

    at_once(kiosks, guess)
    guesses = kiosks[0].guesses(jar.key_id)
    assert sorted(guess.guess for guess in guesses) == [2000, 2001, 2002, 2003]
    assert [guess.seen for guess in guesses] == [False, True, True, True]


def test_of_notes_about_one_thing_one_goes_on(kiosks: list[Store]) -> None:
    opened = RoundNote(
        id="a" * 32, at=AT, round_id="a" * 32, simulated=False, kind=NoteKind.ROUND,
        about="round", after=FIRST, content="{}",
    )  # fmt: skip
    kiosks[0].save(opened)

    def note(store: Store, number: int) -> Problem | None:
        mine = f"{number}" * 32
        return outcome(store, replace(opened, id=mine, after=opened.id, content=f"[{number}]"))

    found = at_once(kiosks, note)
    assert Counter(found) == {None: 1, Problem.LOST_RACE: KIOSKS - 1}
    first, second = kiosks[1].round_notes(opened.id)
    assert (first, second.content) == (opened, f"[{found.index(None)}]")


def test_kiosks_that_come_first_together_make_the_tables_once(
    new_database: Callable[[], str],
) -> None:
    where = new_database()
    together = Barrier(KIOSKS)

    def come(number: int) -> None:
        together.wait(10)
        with closing(Store(where)) as store:
            store.save(cup_taken(number + 1))

    with ThreadPoolExecutor(KIOSKS) as threads:
        list(threads.map(come, range(KIOSKS)))
    with closing(Store(where)) as store:
        assert len(store.cups_out(simulated=False)) == KIOSKS
