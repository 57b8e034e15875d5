"""Samples added to those on the tray, and a tray that comes back as heavy as it left."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person, WeighAgain
from kiosk.records.entries import KeyMass
from tests.helpers.pan import (
    DISTURBED,
    EMPTY,
    LOST,
    PLACED,
    REMOVED,
    feed,
    press,
    settled,
    surroundings,
)
from tests.helpers.sampled import added

S = SamplesState


def nets(procedure: CountSamples) -> list[str]:
    return [str(net) for net in procedure.kept.sample_nets]


def test_samples_can_be_added_to_those_on_the_tray() -> None:
    procedure = added("3.5", "3.6", "3.4")
    assert procedure.state is S.SPREAD
    assert nets(procedure) == ["3.5", "3.6", "3.4"]
    assert procedure.kept.chains == 1


def test_an_added_sample_is_kept_with_the_reading_before_it() -> None:
    procedure = added("3.5")
    feed(procedure, settled("28.5"))
    (mass,) = feed(procedure, press(Person.KEEP))
    assert isinstance(mass, KeyMass)
    assert mass.tare == procedure.kept.samples[0].weighing
    assert procedure.kept.samples[0].tare is None


def test_pieces_that_trickle_in_are_all_of_the_sample() -> None:
    procedure = added("3.5")
    feed(procedure, settled("25.1"), DISTURBED, settled("25.3"), DISTURBED, settled("28.5"))
    assert procedure.on_tray == Decimal("3.6")


def test_emptying_the_tray_in_between_begins_a_new_chain() -> None:
    procedure = added("3.5", "3.6")
    feed(procedure, settled("21.4"), PLACED, settled("24.8"), press(Person.KEEP))
    assert nets(procedure) == ["3.5", "3.6", "3.4"]
    assert procedure.kept.chains == 2


def test_samples_after_one_that_is_undone_keep_their_own_readings() -> None:
    procedure = added("3.5", "4.9", "3.4")
    feed(procedure, press(Person.UNDO, 1))
    assert nets(procedure) == ["3.5", "3.4"]
    assert procedure.kept.chains == 2
    assert procedure.state is S.ADD
    feed(procedure, settled("36.8"), press(Person.KEEP))
    assert nets(procedure) == ["3.5", "3.4", "3.6"]
    assert procedure.kept.chains == 2


def test_after_the_undo_of_what_lies_on_top_the_tray_is_emptied() -> None:
    procedure = added("3.5", "4.9")
    assert feed(procedure, press(Person.UNDO, 1))[-1] == WeighAgain()
    feed(procedure, settled("29.8"))
    assert procedure.state is S.EMPTY_TRAY
    feed(procedure, DISTURBED, settled("21.4"), PLACED, settled("24.9"))
    assert procedure.state is S.READY


def test_a_tray_put_back_with_the_same_pieces_is_no_new_sample() -> None:
    procedure = added("3.5")
    feed(procedure, REMOVED, EMPTY, PLACED, settled("24.7"))
    assert procedure.state is S.SAME
    assert not procedure.offers(Person.KEEP)
    feed(procedure, DISTURBED, settled("24.7"))
    assert procedure.state is S.SAME


def test_more_can_be_added_to_pieces_that_were_put_back() -> None:
    procedure = added("3.5")
    feed(procedure, REMOVED, EMPTY, PLACED, settled("24.7"), settled("28.3"), press(Person.KEEP))
    assert nets(procedure) == ["3.5", "3.6"]
    assert procedure.kept.chains == 2  # the readings before and after the lifting differ


def test_as_heavy_a_sample_counts_once_the_tray_was_seen_empty() -> None:
    procedure = added("3.5")
    feed(procedure, EMPTY, PLACED, settled("21.4"), EMPTY, PLACED, settled("24.9"))
    assert procedure.state is S.READY


def test_two_samples_at_once_are_pointed_out() -> None:
    procedure = added("3.5", "3.5")
    feed(procedure, settled("35.4"))
    assert procedure.state is S.TOO_MANY
    assert not procedure.offers(Person.KEEP)


def test_taking_some_off_wants_an_empty_tray() -> None:
    procedure = added("3.5", "3.5")
    feed(procedure, DISTURBED, settled("26.0"))
    assert procedure.state is S.EMPTY_TRAY


@pytest.mark.parametrize("away", [(LOST, EMPTY), (EMPTY,), (REMOVED,)])
def test_what_is_on_a_tray_that_was_away_is_looked_at_anew(away: tuple[object, ...]) -> None:
    procedure = added("3.5", "3.5")
    feed(procedure, *away, PLACED, settled("31.9"))  # type: ignore[arg-type]
    assert procedure.state is S.TOO_MANY  # the three together


@pytest.mark.parametrize("question", [(press(Person.HOME),), ()], ids=["leaving", "spread"])
def test_a_tray_that_is_lifted_while_something_is_asked(question: tuple[object, ...]) -> None:
    procedure = added("3.5", "3.5", "3.5")
    feed(procedure, *question, REMOVED, EMPTY, PLACED)  # type: ignore[arg-type]
    if question:
        feed(procedure, press(Person.STAY))
    feed(procedure, press(Person.MORE), settled("31.8"))
    assert procedure.state is S.SAME


def test_a_key_left_half_made_knows_its_last_sample() -> None:
    draft = added("3.5", "3.5").kept
    procedure = CountSamples(surroundings(), pan=PanMemory(), draft=replace(draft, wanted=3))
    feed(procedure, press(Person.YES), PLACED, settled("28.4"))
    assert procedure.state is S.SAME
