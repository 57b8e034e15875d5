"""Guesses at a jar by touch, and the answer that the coach shows to all."""

from __future__ import annotations

from contextlib import closing
from decimal import Decimal

import pytest

from kiosk.records.store import Store
from kiosk.rounds.contents import BoundKey
from kiosk.settings import Task
from kiosk.ui.presenters.views import AnswerView
from kiosk.ui.walk import StuckError
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands
from tests.helpers.round_notes import opened, said


@pytest.fixture
def jar(journey: Journey) -> Journey:
    """A kiosk with the key of jar A, at home."""
    hands = KeyHands(journey)
    hands.to_key()
    journey.tap("Save as jar A")
    journey.until_screen("message")
    journey.tap("Home")
    journey.clear()
    return journey


def guess(journey: Journey, team: str, pieces: int) -> None:
    """From the pairs to what is written down."""
    journey.tap(team)
    journey.tap("Jar A")
    for digit in str(pieces):
        journey.tap(digit)
    journey.tap("That is our guess")
    journey.until_title("Written down.")


def test_without_a_key_there_is_no_jar_on_the_table(journey: Journey) -> None:
    with pytest.raises(StuckError):
        journey.find("Guess a jar")


def test_a_guess_is_written_down_and_tells_nothing(jar: Journey) -> None:
    jar.tap("Guess a jar")
    guess(jar, "Heron", 1234)
    assert "1 234 pieces" in jar.seen.replace("\u2009", " ")
    assert "of 100" not in jar.seen
    assert jar.kept("SELECT team, guess, seen FROM guesses_made") == [("Heron", "1234", 0)]


def test_a_whole_group_guesses_and_sees_the_answer(jar: Journey) -> None:
    jar.tap("Guess a jar")
    for team, pieces in (("Heron", 900), ("Wren", 1100), ("Teal", 9000)):
        guess(jar, team, pieces)
        jar.tap("Next pair")
    jar.tap("Show answers")
    jar.tap("Jar A")
    jar.until_title("Show what is in jar A?")
    jar.tap("Show it to all")
    jar.until_screen("answer")
    sheet = jar.scene.sheet
    assert isinstance(sheet, AnswerView)
    assert {mark.name for mark in (*sheet.under, *sheet.over)} == {"Heron", "Wren", "Teal"}
    assert [mark.points for mark in sheet.over if mark.name == "Teal"] == ["0"]


def test_after_the_answer_a_guess_does_not_count(jar: Journey) -> None:
    jar.tap("Guess a jar")
    jar.tap("Show answers")
    jar.tap("Jar A")
    jar.tap("Show it to all")
    jar.tap("Home")
    jar.tap("Guess a jar")
    guess(jar, "Heron", 1000)
    assert jar.kept("SELECT seen FROM guesses_made") == [(1,)]


def test_a_slip_is_checked_against_the_public_limit_only(jar: Journey) -> None:
    jar.tap("Guess a jar")
    jar.tap("Heron")
    jar.tap("Jar A")
    for digit in "20001":
        jar.tap(digit)
    assert "No jar holds more than" in jar.seen
    assert jar.scene.sheet.main is not None
    assert jar.scene.sheet.main.state == "off"
    jar.tap("Home")
    assert jar.rows("guesses_made") == 0


def test_the_answers_are_behind_the_code(jar: Journey) -> None:
    jar.desk.lock.close()
    jar.tap("Guess a jar")
    jar.tap("Show answers")
    jar.until_screen("code")
    assert "Jar A" not in jar.seen


def test_a_retired_key_is_not_guessed_and_frees_its_letter(jar: Journey) -> None:
    jar.tap("Guess a jar")
    jar.tap("Show answers")
    jar.tap("Retire a key")
    jar.tap("Jar A")
    jar.tap("Retire it")
    jar.until_screen("home")
    with pytest.raises(StuckError):
        jar.find("Guess a jar")
    assert jar.desk.facts.used_letters == ()
    assert jar.rows("keys_dropped") == 1


def test_a_jar_that_is_in_a_round_cannot_be_guessed_here(jar: Journey) -> None:
    with closing(Store(str(jar.records))) as store:
        (key,) = store.keys(simulated=True)
        bound = BoundKey(
            division="Grades 4 to 6", task=Task.COUNT_LOW, key_id=key.made.key_id, letter="A",
            actual=Decimal(key.made.count), half_width_percent=Decimal(1),
        )  # fmt: skip
        state = said(opened(), bound)
        store.save(*(one.note for chain in state.chains.values() for one in chain))
    jar.tap("Guess a jar")
    jar.tap("Heron")
    jar.until_title("No jar can be guessed now.")
