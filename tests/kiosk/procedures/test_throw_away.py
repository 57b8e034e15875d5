"""Throwing a try away: asked about, written down with its reason, never a cup that is not out."""

from __future__ import annotations

import pytest

from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import NotOfferedError, Person
from kiosk.procedures.throw_away import ThrowAway, ThrowState
from kiosk.records.entries import CupOut, TryThrownAway, new_id
from tests.helpers.pan import STARTED, feed, press, surroundings
from tests.helpers.weighings import weighed

S = ThrowState


def throwing(*numbers: int) -> ThrowAway:
    cups = [
        CupOut(id=new_id(), number=number, team="Heron", material="rice", empty=weighed("12.3"),
               since=STARTED)
        for number in numbers
    ]  # fmt: skip
    return ThrowAway(surroundings(), cups=cups, pan=PanMemory())


def test_a_cup_is_thrown_away_only_after_the_question() -> None:
    procedure = throwing(7, 8)
    assert feed(procedure, press(Person.CHOOSE, 7)) == []
    (thrown,) = feed(procedure, press(Person.YES))
    assert isinstance(thrown, TryThrownAway)
    assert thrown.reason
    assert list(procedure.cups) == [8]
    assert procedure.state is S.CHOOSE


def test_the_last_cup_ends_it() -> None:
    procedure = throwing(7)
    feed(procedure, press(Person.CHOOSE, 7), press(Person.YES))
    assert procedure.ended


def test_no_keeps_the_cup() -> None:
    procedure = throwing(7)
    assert feed(procedure, press(Person.CHOOSE, 7), press(Person.NO)) == []
    assert list(procedure.cups) == [7]


def test_a_cup_that_is_not_out_cannot_be_thrown_away() -> None:
    with pytest.raises(NotOfferedError):
        feed(throwing(7), press(Person.CHOOSE, 9))
