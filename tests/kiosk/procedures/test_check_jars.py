"""Closed jars put on one after the other: the same, lighter by so many pieces, or new."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.check_jars import CheckJars, JarState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, NotOfferedError, Person, WeighAgain
from kiosk.records.jar_entries import JarRole, JarWeighed
from kiosk.weighing.pan_events import PanKind
from tests.helpers.jar_scenes import checking_jars, closed_jar
from tests.helpers.pan import (
    DISTURBED,
    EMPTY,
    LOST,
    PLACED,
    REMOVED,
    TOO_HEAVY,
    feed,
    memory,
    press,
    settled,
    surroundings,
)

S = JarState
JARS = (closed_jar("A", "700.0", "710.0"), closed_jar("C", "722.0", "732.1"),
        closed_jar("D", "600.0", None))  # fmt: skip
CHOOSE_C = press(Person.CHOOSE, "C")


def put_on(grams: str) -> tuple[object, ...]:
    return (PLACED, settled(grams))


def looked_at(*events: object, letter: str = "C") -> tuple[CheckJars, list[Effect]]:
    procedure = checking_jars(JARS)
    return procedure, feed(procedure, press(Person.CHOOSE, letter), *events)  # type: ignore[arg-type]  # events of two kinds


def test_a_jar_that_weighs_what_it_weighed_is_the_same() -> None:
    procedure, effects = looked_at(*put_on("731.9"))
    assert procedure.state is S.SAME
    (kept,) = effects
    assert isinstance(kept, JarWeighed)
    assert (kept.key_id, kept.role, str(kept.weighing.grams)) == ("C", JarRole.CHECKED, "731.9")


def test_a_jar_that_lost_pieces_is_found_out() -> None:
    procedure, _ = looked_at(*put_on("728.9"))
    assert procedure.state is S.CHANGED
    change = procedure.changes["C"]
    assert change is not None
    assert (change.grams, change.pieces) == (Decimal("-3.2"), 90)


def test_lifting_a_jar_that_is_the_same_asks_for_the_next_one() -> None:
    procedure, _ = looked_at(*put_on("732.1"), EMPTY)
    assert (procedure.state, procedure.letter) == (S.PUT_ON, "D")
    feed(procedure, *put_on("611.0"), press(Person.YES), EMPTY)  # type: ignore[arg-type]  # as above
    assert (procedure.state, procedure.letter) == (S.PUT_ON, "A")
    feed(procedure, *put_on("710.0"), EMPTY)  # type: ignore[arg-type]  # as above
    assert procedure.state is S.CHOOSE


def test_a_changed_jar_stays_to_be_read_when_it_is_lifted() -> None:
    procedure, _ = looked_at(*put_on("728.9"), REMOVED, EMPTY)
    assert procedure.state is S.CHANGED
    feed(procedure, press(Person.MORE))
    assert (procedure.state, procedure.letter) == (S.PUT_ON, "D")


def test_the_next_jar_is_asked_for_only_on_an_empty_pan() -> None:
    procedure, _ = looked_at(*put_on("732.1"), press(Person.MORE))
    assert procedure.state is S.CLEAR
    feed(procedure, EMPTY)
    assert procedure.state is S.PUT_ON


def test_a_changed_jar_is_weighed_again_from_fresh_readings() -> None:
    procedure, _ = looked_at(*put_on("728.9"))
    assert feed(procedure, press(Person.UNDO)) == [WeighAgain()]
    feed(procedure, settled("732.1"))
    assert procedure.state is S.SAME
    change = procedure.changes["C"]
    assert change is not None
    assert change.same


def test_a_jar_that_weighs_like_another_one_is_named() -> None:
    procedure, _ = looked_at(*put_on("710.1"))
    assert procedure.state is S.CHANGED
    assert procedure.twin() == "A"


def test_a_jar_never_weighed_closed_is_asked_about_and_known_from_then_on() -> None:
    procedure, effects = looked_at(*put_on("611.0"), letter="D")
    assert (procedure.state, effects) == (S.FIRST_TIME, [])
    (kept,) = feed(procedure, press(Person.YES))
    assert isinstance(kept, JarWeighed)
    assert (kept.role, procedure.state) == (JarRole.CLOSED, S.KEPT)


def test_it_is_not_known_by_a_mass_that_nobody_vouches_for() -> None:
    procedure, effects = looked_at(*put_on("611.0"), press(Person.NO), letter="D")
    assert (procedure.state, effects, procedure.changes) == (S.CHOOSE, [], {})


def test_a_closed_jar_lighter_than_it_was_open_has_lost_something() -> None:
    procedure, _ = looked_at(*put_on("598.0"), letter="D")
    assert procedure.state is S.CHANGED
    change = procedure.changes["D"]
    assert change is not None
    assert change.grams == Decimal("-2.0")


@pytest.mark.parametrize("event", [TOO_HEAVY, LOST])
def test_a_pan_in_trouble_is_emptied_first(event: object) -> None:
    procedure, _ = looked_at(PLACED, event)
    assert procedure.state is S.CLEAR


def test_a_jar_that_is_lifted_early_is_asked_for_again() -> None:
    procedure, _ = looked_at(PLACED, REMOVED)
    assert procedure.state is S.PUT_ON


def test_a_jar_on_the_pan_already_is_weighed_as_soon_as_its_letter_is_known() -> None:
    procedure = checking_jars(JARS, memory(PLACED))
    assert feed(procedure, CHOOSE_C) == [WeighAgain()]
    feed(procedure, settled("732.1"))
    assert procedure.state is S.SAME


def test_what_was_written_down_already_must_leave_the_pan_first() -> None:
    pan = memory(PLACED)
    pan.used = True
    procedure = checking_jars(JARS, pan)
    assert feed(procedure, CHOOSE_C) == []
    assert procedure.state is S.CLEAR


def test_a_letter_without_a_key_cannot_be_chosen() -> None:
    with pytest.raises(NotOfferedError):
        feed(checking_jars(JARS), press(Person.CHOOSE, "Z"))


def sealing(pan: PanMemory) -> CheckJars:
    return CheckJars(surroundings(), jars=JARS, pan=pan, sealing="D")


def test_a_new_key_ends_with_its_jar_weighed_closed() -> None:
    procedure = sealing(memory(PLACED))
    assert procedure.state is S.CLEAR
    (kept,) = feed(procedure, REMOVED, EMPTY, *put_on("611.0"))  # type: ignore[arg-type]  # as above
    assert isinstance(kept, JarWeighed)
    assert (kept.role, kept.key_id, procedure.state) == (JarRole.CLOSED, "D", S.KEPT)
    feed(procedure, EMPTY)
    assert procedure.ended


def test_a_jar_still_open_is_not_taken_for_a_closed_one_that_weighs_less() -> None:
    procedure = sealing(PanMemory())
    feed(procedure, *put_on("590.0"))  # type: ignore[arg-type]  # as above
    assert procedure.state is S.CHANGED
    feed(procedure, press(Person.UNDO), settled("612.0"))
    assert procedure.state is S.KEPT


def test_what_moves_while_the_question_stands_is_weighed_afresh() -> None:
    procedure, _ = looked_at(*put_on("611.0"), DISTURBED, letter="D")
    assert procedure.state is S.WEIGHING
    assert PanKind.SETTLED in procedure.TABLE[S.WEIGHING]
