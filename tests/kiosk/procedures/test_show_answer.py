"""Showing an answer: asked about once, written down once."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person
from kiosk.procedures.show_answer import Answer, ShowAnswer, ShowState, scored
from kiosk.records.entries import AnswerShown, Entry, KeyDropped
from kiosk.records.kept import Guess, Guessed
from kiosk.records.volume_entries import VolumeDropped
from kiosk.settings import Rules
from tests.helpers.pan import press, surroundings


def showing(*, shown: bool = False) -> ShowAnswer:
    jar = Guessed(kind="jar", key_id="key of C", letter="C", guesses=2, shown=shown)
    answer = Answer(
        container=jar, actual=Decimal(2830), low=Decimal(2770), high=Decimal(2890), guesses=()
    )
    procedure = ShowAnswer(surroundings(), answers=[answer], pan=PanMemory())
    procedure.step(press(Person.CHOOSE, "C"))
    return procedure


def test_the_first_time_it_is_asked_about() -> None:
    procedure = showing()
    assert procedure.state is ShowState.SURE
    (entry,) = procedure.step(press(Person.YES))
    assert isinstance(entry, AnswerShown)
    assert (procedure.state, entry.key_id) == (ShowState.SHOWN, "key of C")


def test_not_yet_shows_nothing() -> None:
    procedure = showing()
    assert procedure.step(press(Person.NO)) == []
    assert procedure.state is ShowState.CHOOSE


def test_what_was_shown_is_shown_again_without_asking() -> None:
    assert showing(shown=True).state is ShowState.SHOWN
    procedure = showing()
    procedure.step(press(Person.YES))
    procedure.step(press(Person.MORE))
    assert procedure.step(press(Person.CHOOSE, "C")) == []
    assert procedure.state is ShowState.SHOWN


def test_guesses_are_scored_best_first_and_only_those_that_count() -> None:
    jar = Guessed(kind="jar", key_id="key of C", letter="C", guesses=2, shown=False)
    made = [("Heron", 3500, False), ("Wren", 4500, False), ("Heron", 4000, True), ("", 4000, False)]
    answer = Answer(
        container=jar, actual=Decimal(4000), low=Decimal(3900), high=Decimal(4100),
        guesses=tuple(
            Guess(team=team, guess=Decimal(guess), seen=seen) for team, guess, seen in made
        ),
    )  # fmt: skip
    found = [(each.team, each.score.points, each.inside) for each in scored(answer, Rules())]
    assert found == [("Heron", Decimal("87.5"), False), ("Wren", Decimal("87.5"), False)]


@pytest.mark.parametrize(("kind", "entry"), [("jar", KeyDropped), ("box", VolumeDropped)])
def test_a_key_that_is_not_right_any_more_is_retired(kind: str, entry: type[Entry]) -> None:
    procedure = retiring(kind)
    (dropped,) = procedure.step(press(Person.YES))
    assert isinstance(dropped, entry)
    assert (dropped.key_id, procedure.state) == ("key of C", ShowState.LEFT)  # type: ignore[attr-defined]  # both kinds name their key


def test_a_key_is_kept_after_all() -> None:
    procedure = retiring("jar")
    assert procedure.step(press(Person.NO)) == []
    assert (procedure.state, list(procedure.answers)) == (ShowState.RETIRE, ["C"])


def retiring(kind: str) -> ShowAnswer:
    container = Guessed(kind=kind, key_id="key of C", letter="C", guesses=2, shown=False)
    answer = Answer(
        container=container, actual=Decimal(2830), low=Decimal(2770), high=Decimal(2890), guesses=()
    )
    procedure = ShowAnswer(surroundings(), answers=[answer], pan=PanMemory())
    procedure.step(press(Person.UNDO))
    procedure.step(press(Person.CHOOSE, "C"))
    return procedure
