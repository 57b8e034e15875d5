"""Guesses: a team's first one counts, none after the answer was shown."""

from __future__ import annotations

from decimal import Decimal

from kiosk.records.entries import AnswerShown, GuessMade, KeyDropped, KeyStarted
from kiosk.records.errors import Problem
from kiosk.records.kept import Guess, Guessed
from kiosk.records.store import Store
from tests.helpers.both_stores import BOTH_STORES
from tests.helpers.recorded import AT, key_made, key_mass, key_started, refused

pytestmark = BOTH_STORES


def sealed(store: Store, letter: str = "C") -> KeyStarted:
    key = key_started()
    store.save(key, key_mass(key, "sample", "3.5"), key_made(key, letter=letter))
    return key


def guess(key: KeyStarted, team: str, pieces: int) -> GuessMade:
    return GuessMade(key_id=key.id, team=team, guess=Decimal(pieces), at=AT)


def shown(key: KeyStarted) -> AnswerShown:
    return AnswerShown(key_id=key.id, at=AT)


def test_a_guess_is_kept_as_it_was_made(store: Store) -> None:
    key = sealed(store)
    store.save(guess(key, "Heron", 2400))
    assert store.guesses(key.id) == [Guess(team="Heron", guess=Decimal(2400), seen=False)]


def test_only_the_first_guess_of_a_team_counts(store: Store) -> None:
    key = sealed(store)
    store.save(guess(key, "Heron", 2400), guess(key, "Wren", 2800), guess(key, "Heron", 2830))
    assert [(each.team, each.seen) for each in store.guesses(key.id)] == [
        ("Heron", False),
        ("Wren", False),
        ("Heron", True),
    ]


def test_no_guess_counts_after_the_answer_was_shown(store: Store) -> None:
    key = sealed(store)
    store.save(shown(key), guess(key, "Heron", 2830))
    assert [each.seen for each in store.guesses(key.id)] == [True]


def test_who_is_just_trying_may_guess_again(store: Store) -> None:
    key = sealed(store)
    store.save(guess(key, "", 1000), guess(key, "", 2000))
    assert [each.seen for each in store.guesses(key.id)] == [False, False]


def test_a_jar_is_told_by_its_letter_and_how_many_guessed(store: Store) -> None:
    second, first = sealed(store, "D"), sealed(store, "B")
    store.save(guess(first, "Heron", 1), guess(first, "Heron", 2), guess(first, "Wren", 3))
    store.save(shown(second))
    assert store.jars_to_guess(simulated=False) == [
        Guessed(kind="jar", key_id=first.id, letter="B", guesses=2, shown=False),
        Guessed(kind="jar", key_id=second.id, letter="D", guesses=0, shown=True),
    ]
    assert store.jars_to_guess(simulated=True) == []


def test_a_jar_that_was_dropped_cannot_be_guessed_by_mistake(store: Store) -> None:
    key = sealed(store)
    store.save(KeyDropped(key_id=key.id, reason="poured anew", at=AT))
    assert store.jars_to_guess(simulated=False) == []
    assert refused(store, guess(key, "Heron", 2400)) is Problem.NO_KEY


def test_a_key_that_is_not_made_yet_cannot_be_guessed(store: Store) -> None:
    key = key_started()
    store.save(key, key_mass(key, "sample", "3.5"))
    assert refused(store, guess(key, "Heron", 2400)) is Problem.NO_KEY


def test_keeping_a_guess_twice_keeps_it_once(store: Store) -> None:
    key = sealed(store)
    made = guess(key, "Heron", 2400)
    store.save(made)
    store.save(made)
    assert len(store.guesses(key.id)) == 1
