"""Samples of another day: offered, asked about, and written down anew for the new key."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest

from kiosk.estimating.pour_goal import AS_IT_COMES
from kiosk.estimating.scatter import ScatterClass
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.fill_container import FillContainer
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, Person
from kiosk.records.entries import KeyChanged, KeyMass, KeyStarted
from tests.helpers.pan import EMPTY, PLACED, STARTED, feed, press, settled, surroundings
from tests.helpers.sampled import LENTILS, UNKNOWN, draft

NUTS = ("hex nuts", ScatterClass.BEADS.value, Decimal(5))
S = SamplesState


def beginning(days: float = 0, old: KeyDraft | None = None) -> CountSamples:
    """Lentils were sampled so many days ago."""
    now = replace(surroundings(), utc=lambda at: STARTED + timedelta(days=days, seconds=at))
    return CountSamples(now, pan=PanMemory(), known={"lentils": old or draft()})


def used_again(days: float = 0, old: KeyDraft | None = None) -> tuple[CountSamples, list[Effect]]:
    procedure = beginning(days, old)
    effects = feed(procedure, press(Person.CHOOSE, LENTILS), press(Person.YES), press(Person.YES))
    return procedure, effects


def test_a_material_that_was_sampled_before_is_asked_about() -> None:
    procedure = beginning()
    assert feed(procedure, press(Person.CHOOSE, LENTILS)) == []
    assert procedure.state is S.OLD_SAMPLES
    feed(procedure, press(Person.YES))
    assert procedure.state is S.SAME_BAG


def test_another_material_is_not() -> None:
    procedure = beginning()
    feed(procedure, press(Person.CHOOSE, UNKNOWN))
    assert procedure.state is S.BITS


@pytest.mark.parametrize("answers", [(Person.NO,), (Person.YES, Person.NO)])
def test_samples_that_are_not_wanted_or_of_another_bag_are_counted_anew(
    answers: tuple[Person, ...],
) -> None:
    procedure = beginning()
    choice = press(Person.CHOOSE, LENTILS)
    begun, *_ = feed(procedure, choice, *map(press, answers), press(Person.NO))
    assert isinstance(begun, KeyStarted)
    assert procedure.state is S.TRAY_ON
    assert procedure.kept.samples == ()


def test_used_again_they_are_written_down_for_the_new_key_by_the_same_weighings() -> None:
    procedure, (begun, *masses, answer) = used_again()
    old = draft()
    assert isinstance(begun, KeyStarted)
    assert begun.pieces == old.pieces
    kept = [mass for mass in masses if isinstance(mass, KeyMass)]
    assert [mass.role for mass in kept] == ["tray", "sample", "sample", "sample"]
    assert {mass.key_id for mass in kept} == {begun.id}
    remembered = procedure.known["lentils"]
    assert remembered.tray is not None
    weighings = [mass.weighing for mass in (remembered.tray, *remembered.samples)]
    assert [mass.weighing for mass in kept] == weighings
    assert isinstance(answer, KeyChanged)
    assert (answer.back_in, answer.bits) == (False, False)


def test_nothing_of_the_old_fill_comes_along() -> None:
    old = replace(draft(), back_in=True, goal="high", in_lots=True)
    procedure = beginning(0, old)
    feed(procedure, press(Person.CHOOSE, LENTILS), press(Person.YES), press(Person.YES))
    new = procedure.kept
    assert (new.back_in, new.goal, new.in_lots, new.empty, new.filled) == (
        False, None, False, None, None,
    )  # fmt: skip
    assert procedure.state is S.SAMPLED


@pytest.mark.parametrize("bits", [True, False])
def test_whether_bits_count_is_asked_once_and_goes_with_the_samples(bits: bool) -> None:
    first = beginning()
    first.known = {}
    feed(first, press(Person.CHOOSE, LENTILS), press(Person.YES if bits else Person.NO))
    again, (_, *_, answer) = used_again(old=replace(draft(), bits=first.kept.bits))
    assert isinstance(answer, KeyChanged)
    assert (answer.bits, again.kept.bits, again.state) == (bits, bits, S.SAMPLED)


def test_hardware_does_not_break_so_nobody_is_asked() -> None:
    procedure = beginning()
    (begun,) = feed(procedure, press(Person.CHOOSE, NUTS))
    assert isinstance(begun, KeyStarted)
    assert (procedure.state, procedure.kept.bits) == (S.TRAY_ON, None)


def test_pieces_and_bits_are_known_to_differ_as_mixed_pieces_do() -> None:
    procedure = beginning()
    begun, _ = feed(procedure, press(Person.CHOOSE, LENTILS), press(Person.NO), press(Person.YES))
    assert isinstance(begun, KeyStarted)
    assert begun.piece_cv_percent == procedure.kept.piece_cv_percent == 40


def half_width(days: float) -> Decimal:
    """Of a key made with samples of so many days ago."""
    samples, _ = used_again(days)
    fill = FillContainer(samples.world, pan=PanMemory(), draft=samples.kept)
    feed(
        fill, press(Person.CHOOSE, AS_IT_COMES), PLACED, settled("159.9"), PLACED,
        settled("659.9"), press(Person.STOP),
    )  # fmt: skip
    key = fill.kept.key(fill.world.rules)
    return key.half_width_percent  # type: ignore[union-attr]  # not refused: 10 000 pieces


def test_weeks_later_the_key_is_wider_and_the_same_day_it_is_not() -> None:
    assert half_width(0) == half_width(0.5)
    added = float(half_width(7) ** 2 - half_width(0) ** 2) ** 0.5
    assert added == pytest.approx(1.4, abs=0.01)
    assert half_width(30) > half_width(7)


def test_a_clock_that_went_back_widens_nothing() -> None:
    assert half_width(-3) == half_width(0)


def test_it_can_be_left_at_each_question() -> None:
    for answers in ((), (Person.YES,), (Person.NO,)):
        procedure = beginning()
        feed(procedure, press(Person.CHOOSE, LENTILS), *map(press, answers), press(Person.HOME))
        assert procedure.state is S.LEFT


def test_starting_over_a_key_left_half_made_offers_them_too() -> None:
    procedure = CountSamples(
        surroundings(), pan=PanMemory(), draft=draft(), known={"lentils": draft()}
    )
    feed(procedure, press(Person.NO), press(Person.CHOOSE, LENTILS), EMPTY)
    assert procedure.state is S.OLD_SAMPLES
