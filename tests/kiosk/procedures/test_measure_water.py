"""Measuring with water: what is captured, what is asked about, how it goes on after leaving."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.estimating.volume import Readings
from kiosk.estimating.water import by_water
from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Person
from kiosk.procedures.water_draft import MOST_FILLINGS
from kiosk.records.volume_entries import VolumeDropped, VolumeMade, VolumeStarted
from kiosk.records.water_entries import WaterVoided, WaterWeighed
from tests.helpers.pan import DISTURBED, EMPTY, LOST, PLACED, TOO_HEAVY, feed, press, settled
from tests.helpers.water_scenes import (
    EMPTY_G,
    FULL_G,
    at_empty,
    in_water,
    lifted,
    measuring_water,
    warm,
    with_volume,
)

S = WaterState


def masses(procedure: MeasureWater) -> list[tuple[str, str, str]]:
    return [
        (mass.role.value, f"{mass.weighing.grams}", f"{mass.celsius}")
        for mass in procedure.kept.masses
    ]


def test_caution_comes_before_anything_is_begun() -> None:
    procedure = measuring_water()
    assert procedure.state is S.CAUTION
    (started,) = feed(procedure, press(Person.GO_ON))
    assert isinstance(started, VolumeStarted)
    assert (started.shape, procedure.state) == ("water", S.WARMTH)


def test_both_masses_are_captured_by_themselves() -> None:
    procedure = at_empty()
    (empty,) = feed(procedure, PLACED, settled(EMPTY_G))
    (filled,) = feed(procedure, EMPTY, PLACED, settled(FULL_G))
    assert isinstance(empty, WaterWeighed)
    assert isinstance(filled, WaterWeighed)
    assert masses(procedure) == [("empty", EMPTY_G, "None"), ("filled", FULL_G, "21")]


def test_the_volume_is_that_of_the_water() -> None:
    volume = with_volume().kept.volume()
    net = Decimal(FULL_G) - Decimal(EMPTY_G)
    assert volume == by_water(Readings((net,)), Decimal(21), Decimal("0.1"))


def test_water_poured_in_on_the_pan_is_not_taken() -> None:
    procedure = at_empty()
    feed(procedure, PLACED, settled(EMPTY_G))
    assert feed(procedure, DISTURBED, settled(FULL_G)) == []
    assert procedure.state is S.LIFT


def test_what_lies_on_the_pan_already_is_taken_off_first() -> None:
    procedure = in_water(S.CLEAR)
    assert feed(procedure, settled("500.0")) == []
    feed(procedure, EMPTY)
    assert procedure.state is S.EMPTY


@pytest.mark.parametrize("grams", ["100.0", EMPTY_G, "114.2"])
def test_hardly_any_water_is_no_filling(grams: str) -> None:
    procedure = lifted()
    assert feed(procedure, PLACED, settled(grams)) == []
    assert procedure.state is S.NOT_FULL
    feed(procedure, EMPTY, PLACED, settled(FULL_G))
    assert procedure.state is S.RESULT


# The temperature ------------------------------------------------------------------------------


@pytest.mark.parametrize(("typed", "word"), [("4", "Only 5 to"), ("41", "40"), ("68", "Fahren")])
def test_water_that_no_hand_fills_in_is_refused_with_a_note(typed: str, word: str) -> None:
    procedure = measuring_water()
    feed(procedure, press(Person.GO_ON))
    warm(procedure, typed)
    assert (procedure.state, procedure.text) == (S.WARMTH, "")
    assert word in procedure.note


@pytest.mark.parametrize(
    ("typed", "asked"), [("9", True), ("10", False), ("30", False), ("31", True)]
)
def test_an_unusual_temperature_is_asked_about(typed: str, asked: bool) -> None:
    assert (at_empty(typed).state is S.SURE) is asked


def test_what_was_asked_about_can_be_kept_or_typed_again() -> None:
    procedure = at_empty("38")
    feed(procedure, press(Person.NO))
    assert (procedure.state, procedure.text) == (S.WARMTH, "")
    warm(procedure, "38")
    feed(procedure, press(Person.YES))
    assert (procedure.state, procedure.celsius) == (S.EMPTY, Decimal(38))


def test_nothing_typed_is_not_kept() -> None:
    procedure = measuring_water()
    feed(procedure, press(Person.GO_ON), press(Person.TYPE, "2"), press(Person.RUB_OUT))
    assert not procedure.offers(Person.KEEP)
    assert not procedure.offers(Person.GO_ON)


# Weighing again -------------------------------------------------------------------------------


def test_the_empty_mass_can_be_weighed_again() -> None:
    procedure = lifted()
    (gone,) = feed(procedure, press(Person.UNDO))
    assert isinstance(gone, WaterVoided)
    assert (procedure.state, procedure.kept.masses) == (S.EMPTY, ())
    feed(procedure, PLACED, settled("112.5"))
    assert masses(procedure) == [("empty", "112.5", "None")]


def test_more_fillings_tell_how_exactly_it_was_filled() -> None:
    once, twice = with_volume(), with_volume(FULL_G, "1238.5")
    one, two = once.kept.volume(), twice.kept.volume()
    assert one is not None
    assert two is not None
    assert two.high - two.low > 2 * (one.high - one.low)


def test_a_filling_can_be_undone_while_the_next_is_waited_for() -> None:
    procedure = with_volume(FULL_G, "1238.5")
    feed(procedure, press(Person.MORE), press(Person.KEEP))
    (gone,) = feed(procedure, press(Person.UNDO))
    assert isinstance(gone, WaterVoided)
    assert procedure.kept.nets == (Decimal(FULL_G) - Decimal(EMPTY_G),)
    assert procedure.state is S.LIFT


def test_another_filling_may_be_left_out() -> None:
    procedure = with_volume()
    feed(procedure, press(Person.MORE))
    assert procedure.text == "21"
    feed(procedure, press(Person.GO_ON))
    assert procedure.state is S.RESULT


def test_there_is_an_end_of_fillings() -> None:
    procedure = with_volume(*[FULL_G] * MOST_FILLINGS)
    assert not procedure.offers(Person.MORE)
    assert procedure.offers(Person.UNDO)


# What gets in the way --------------------------------------------------------------------------


def test_too_heavy_leads_to_a_ruler_or_to_another_try() -> None:
    procedure = lifted()
    feed(procedure, TOO_HEAVY)
    assert procedure.state is S.TOO_HEAVY
    feed(procedure, press(Person.YES))
    assert procedure.state is S.LIFT
    feed(procedure, EMPTY, TOO_HEAVY)
    (dropped,) = feed(procedure, press(Person.NO))
    assert isinstance(dropped, VolumeDropped)
    assert (procedure.state, procedure.ended) == (S.SHAPES, True)


def test_a_pulled_cable_is_in_the_way_only_while_something_is_weighed() -> None:
    procedure = lifted()
    feed(procedure, LOST)
    assert procedure.pan.hindrance is Hindrance.UNPLUGGED
    assert procedure.ask.needs_pan
    assert not with_volume().ask.needs_pan


def test_nothing_weighed_is_left_without_a_question() -> None:
    procedure = at_empty()
    feed(procedure, press(Person.HOME))
    assert procedure.ended


def test_leaving_asks_and_staying_looks_at_the_pan_again() -> None:
    procedure = lifted()
    feed(procedure, press(Person.HOME), PLACED, press(Person.STAY))
    assert procedure.state is S.LIFT
    feed(procedure, press(Person.HOME), press(Person.LEAVE))
    assert procedure.ended


def test_a_draft_asks_how_warm_the_water_is_now() -> None:
    procedure = in_water(S.RESUME)
    feed(procedure, press(Person.YES))
    assert procedure.state is S.WARMTH
    warm(procedure, "23")
    feed(procedure, PLACED, settled(FULL_G))
    assert masses(procedure) == [("empty", EMPTY_G, "None"), ("filled", FULL_G, "23")]


def test_a_draft_with_water_goes_on_with_its_volume() -> None:
    procedure = measuring_water(with_volume().kept)
    feed(procedure, press(Person.YES))
    assert procedure.state is S.RESULT
    feed(procedure, press(Person.UNDO))
    assert (procedure.state, procedure.celsius) == (S.WARMTH, None)


def test_starting_over_drops_the_draft() -> None:
    procedure = in_water(S.RESUME)
    (dropped,) = feed(procedure, press(Person.NO))
    assert isinstance(dropped, VolumeDropped)
    assert procedure.state is S.SHAPES


def test_the_key_is_saved_under_a_number_with_what_it_costs() -> None:
    procedure = with_volume()
    (made,) = feed(procedure, press(Person.KEEP, 3))
    assert isinstance(made, VolumeMade)
    assert (made.number, procedure.state) == (3, S.SAVED)
    assert made.low < made.cm3 < made.high
    assert Decimal(0) < made.score_effect < Decimal(1)
