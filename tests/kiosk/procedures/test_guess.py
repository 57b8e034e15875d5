"""A guess: the digits typed, the public limit, what is written down."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.guess import MOST_DIGITS, Guess, GuessState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import NotOfferedError, Person
from kiosk.records.entries import GuessMade
from kiosk.records.kept import Guessed
from tests.helpers.pan import press, surroundings

JAR = Guessed(kind="jar", key_id="key of C", letter="C", guesses=0, shown=False)


def guessing(typed: str = "") -> Guess:
    procedure = Guess(surroundings(), team="Heron", containers=[JAR], limit=20_000, pan=PanMemory())
    procedure.step(press(Person.CHOOSE, "C"))
    for digit in typed:
        procedure.step(press(Person.TYPE, digit))
    return procedure


@pytest.mark.parametrize(
    ("typed", "guess"),
    [("", None), ("2400", 2400), ("0", None), ("0024", 24), ("1234567", 123456)],
)
def test_digits_make_a_number(typed: str, guess: int | None) -> None:
    assert guessing(typed).guess == guess
    assert len(guessing(typed).typed) <= MOST_DIGITS


def test_the_last_digit_is_rubbed_out() -> None:
    procedure = guessing("24")
    for left in (2, None, None):
        procedure.step(press(Person.RUB_OUT))
        assert procedure.guess == left


@pytest.mark.parametrize(
    ("typed", "offered"), [("", False), ("1", True), ("20000", True), ("20001", False)]
)
def test_a_guess_is_taken_within_the_public_limit(typed: str, offered: bool) -> None:
    assert guessing(typed).offers(Person.ENTER) is offered


def test_the_guess_is_written_down_for_the_pair_and_the_key() -> None:
    (entry,) = guessing("2400").step(press(Person.ENTER))
    assert isinstance(entry, GuessMade)
    assert (entry.key_id, entry.team, entry.guess) == ("key of C", "Heron", Decimal(2400))


def test_another_jar_begins_with_nothing_typed() -> None:
    procedure = guessing("2400")
    procedure.step(press(Person.ENTER))
    procedure.step(press(Person.MORE))
    assert procedure.state is GuessState.CHOOSE
    procedure.step(press(Person.CHOOSE, "C"))
    assert (procedure.guess, procedure.done) == (None, {"C"})


def test_a_jar_without_a_key_cannot_be_chosen() -> None:
    procedure = Guess(surroundings(), team="", containers=[JAR], limit=20_000, pan=PanMemory())
    with pytest.raises(NotOfferedError):
        procedure.step(press(Person.CHOOSE, "D"))
