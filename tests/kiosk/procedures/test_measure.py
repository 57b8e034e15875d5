"""Measuring a container: what is kept of each edge, what is asked about, what volume it makes."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.procedures.measure import MOST_DIGITS, MeasureState
from kiosk.procedures.procedure import NotOfferedError, Person
from kiosk.procedures.volume_draft import VolumeDraft
from kiosk.records import kept
from kiosk.records.volume_entries import (
    LengthUnit,
    Shape,
    SizeRead,
    SizeVoided,
    VolumeDropped,
    VolumeMade,
    VolumeStarted,
)
from tests.helpers.measured import keep, measured, measuring, resumed, type_in
from tests.helpers.pan import STARTED, feed, press

S = MeasureState
BOX = ("12", "12", "9", "9", "23", "23")


def test_a_key_begins_with_its_shape_and_the_unit() -> None:
    procedure = resumed(None)
    assert feed(procedure, press(Person.CHOOSE, Shape.CYLINDER)) == []
    (started,) = feed(procedure, press(Person.CHOOSE, LengthUnit.MM))
    assert isinstance(started, VolumeStarted)
    assert started.shape == "cylinder"
    assert (procedure.state, procedure.edge) == (S.SIZE, "across")


def test_water_is_the_way_of_another_procedure() -> None:
    procedure = resumed(None)
    assert feed(procedure, press(Person.CHOOSE, Shape.WATER)) == []
    assert (procedure.state, procedure.ended) == (S.WATER, True)


def test_each_edge_is_measured_at_two_places() -> None:
    procedure = measuring()
    edges = []
    for text in BOX:
        edges.append(procedure.edge)
        keep(procedure, text)
    assert edges == ["long", "long", "wide", "wide", "tall", "tall"]
    assert procedure.state is S.RESULT


def test_a_size_is_written_down_at_once_as_it_was_typed() -> None:
    (size,) = keep(measuring(unit=LengthUnit.MM), "184.0")
    assert isinstance(size, SizeRead)
    assert (size.edge, size.typed, size.unit) == ("long", "184.0", "mm")


def test_a_box_of_12_by_9_by_23_holds_2484_cubic_cm() -> None:  # common practice, no source
    volume = measured(*BOX).kept.volume()
    assert volume is not None
    assert volume.cm3 == 2484
    assert volume.low < 2484 < volume.high


def test_a_winchester_bushel_in_inches() -> None:
    """18.5 in across and 8 in deep: 2150.42 cubic inches (NIST Handbook 44, Appendix C)."""
    bushel = measured("18.5", "18.5", "8", "8", shape=Shape.CYLINDER, unit=LengthUnit.INCH)
    volume = bushel.kept.volume()
    assert volume is not None
    assert volume.cm3 / Decimal("16.387064") == pytest.approx(
        Decimal("2150.42"), abs=Decimal("0.005")
    )


@pytest.mark.parametrize(
    ("unit", "text"), [(LengthUnit.CM, "25.4"), (LengthUnit.MM, "254"), (LengthUnit.INCH, "10")]
)
def test_units_are_exact(unit: LengthUnit, text: str) -> None:
    procedure = measuring(unit=unit)
    keep(procedure, text)
    assert procedure.kept.places("long") == (Decimal("25.4"),)


def test_a_sixteenth_of_an_inch_is_coarser_than_a_millimetre() -> None:
    def width(unit: LengthUnit, *texts: str) -> Decimal:
        volume = measured(*texts, shape=Shape.CYLINDER, unit=unit).kept.volume()
        assert volume is not None
        return volume.high - volume.low

    fine = width(LengthUnit.CM, "25.4", "25.4", "25.4", "25.4")
    coarse = width(LengthUnit.INCH, "10", "10", "10", "10")
    assert coarse / fine == pytest.approx(Decimal("1.5875"), rel=Decimal("0.01"))


def test_tapered_shapes_take_their_ends_apart() -> None:
    bin_ = ("20", "20", "10", "10", "20", "20", "10", "10", "5", "5")
    box = measured(*bin_, shape=Shape.TAPERED_BOX).kept.volume()
    cone = measured("10", "10", "10", "10", "5", "5", shape=Shape.TAPERED).kept.volume()
    can = measured("10", "10", "5", "5", shape=Shape.CYLINDER).kept.volume()
    assert box is not None
    assert cone is not None
    assert can is not None
    assert box.cm3 == 1000
    assert cone.cm3 == can.cm3


def test_places_that_differ_widen_the_interval() -> None:
    even, bulging = (
        measured(*BOX).kept.volume(),
        measured("12", "12", "9", "9.2", "23", "23").kept.volume(),
    )
    assert even is not None
    assert bulging is not None
    assert bulging.high - bulging.low > 2 * (even.high - even.low)


def test_an_edge_that_bulges_is_measured_at_a_third_place() -> None:
    procedure = measuring()
    keep(procedure, "12.0", "12.8")
    assert (procedure.state, procedure.edge) == (S.SIZE, "long")
    keep(procedure, "12.4")
    assert procedure.edge == "wide"


def test_a_bulge_need_not_be_measured_again() -> None:
    procedure = measuring()
    keep(procedure, "12.0", "12.8")
    feed(procedure, press(Person.GO_ON))
    assert procedure.edge == "wide"


def test_one_place_may_do() -> None:
    procedure = measuring()
    keep(procedure, "12")
    feed(procedure, press(Person.GO_ON))
    assert procedure.edge == "wide"
    assert procedure.kept.places("long") == (12,)


def test_nobody_goes_on_without_a_size() -> None:
    assert not measuring().offers(Person.GO_ON)


def test_no_more_than_three_places() -> None:
    procedure = measuring()
    keep(procedure, "12.0", "12.8", "12.4")
    feed(procedure, press(Person.CHOOSE, "long"))
    assert not procedure.offers(Person.TYPE)


# What is asked about ---------------------------------------------------------------------------


def test_nothing_is_no_size() -> None:
    procedure = measuring()
    assert keep(procedure, "0.0") == []
    assert "0 is no size" in procedure.note
    assert procedure.state is S.SIZE


def test_a_point_alone_is_no_number_and_says_so() -> None:
    procedure = measuring()
    assert keep(procedure, ".") == []
    assert procedure.note


def test_a_second_point_and_endless_digits_are_not_taken() -> None:
    procedure = measuring()
    type_in(procedure, "1.2.3456789")
    assert procedure.text == "1.23456"
    assert len(procedure.text) == MOST_DIGITS


def test_rubbing_out_takes_the_last_digit_and_the_note() -> None:
    procedure = measuring()
    keep(procedure, "0")
    feed(procedure, press(Person.RUB_OUT))
    assert (procedure.text, procedure.note) == ("", "")


@pytest.mark.parametrize(
    ("unit", "text", "asked"),
    [
        (LengthUnit.CM, "300", False),
        (LengthUnit.CM, "300.1", True),
        (LengthUnit.MM, "3000", False),
        (LengthUnit.INCH, "119", True),
    ],
)
def test_more_than_three_metres_is_asked_about(unit: LengthUnit, text: str, asked: bool) -> None:
    procedure = measuring(unit=unit)
    keep(procedure, text)
    assert (procedure.state is S.SURE) is asked


def test_a_slip_of_the_point_is_asked_about() -> None:
    procedure = measuring()
    keep(procedure, "18.4")
    assert keep(procedure, "184") == []
    assert (procedure.state, procedure.other) == (S.SURE, Decimal("18.4"))
    assert feed(procedure, press(Person.NO)) == []
    assert (procedure.text, procedure.kept.places("long")) == ("", (Decimal("18.4"),))


def test_what_was_asked_about_can_be_kept() -> None:
    procedure = measuring()
    keep(procedure, "301")
    (size,) = feed(procedure, press(Person.YES))
    assert isinstance(size, SizeRead)
    assert size.typed == "301"


# Going back ------------------------------------------------------------------------------------


def test_each_reading_can_be_undone() -> None:
    procedure = measuring()
    (first, second) = keep(procedure, "12.1", "12.2")
    assert isinstance(first, SizeRead)
    assert isinstance(second, SizeRead)
    (gone,) = feed(procedure, press(Person.UNDO))
    assert isinstance(gone, SizeVoided)
    assert gone.size_id == second.id
    assert (procedure.edge, procedure.kept.places("long")) == ("long", (Decimal("12.1"),))
    (gone,) = feed(procedure, press(Person.UNDO))
    assert isinstance(gone, SizeVoided)
    assert gone.size_id == first.id
    assert not procedure.offers(Person.UNDO)


def test_an_undo_on_another_row_takes_that_rows_reading() -> None:
    procedure = measured(*BOX)
    feed(procedure, press(Person.MORE), press(Person.CHOOSE, "wide"), press(Person.UNDO))
    assert procedure.kept.places("wide") == (9,)
    assert procedure.state is S.SIZE


def test_more_goes_back_to_the_edge_that_differs_most() -> None:
    procedure = measured("12", "12", "9.0", "9.2", "23", "23")
    feed(procedure, press(Person.MORE))
    assert procedure.edge == "wide"


def test_an_edge_that_the_shape_lacks_cannot_be_chosen() -> None:
    with pytest.raises(NotOfferedError):
        feed(measuring(), press(Person.CHOOSE, "across"))


def test_leaving_asks_and_keeps_what_was_measured() -> None:
    procedure = measuring()
    keep(procedure, "12")
    assert feed(procedure, press(Person.HOME)) == []
    assert procedure.state is S.LEAVING
    feed(procedure, press(Person.STAY))
    assert procedure.state is S.SIZE
    assert feed(procedure, press(Person.HOME), press(Person.LEAVE)) == []
    assert procedure.ended


def test_nothing_measured_is_left_without_a_question() -> None:
    procedure = measuring()
    feed(procedure, press(Person.HOME))
    assert procedure.ended


def stored(*texts: str) -> VolumeDraft | None:
    procedure = measuring(unit=LengthUnit.MM)
    keep(procedure, *texts)
    draft = procedure.kept
    return VolumeDraft.from_records(
        kept.VolumeDraft(id=draft.id, shape="box", since=STARTED, sizes=draft.sizes)
    )


def test_a_draft_goes_on_where_it_was_left_in_its_unit() -> None:
    procedure = resumed(stored("120", "120", "90"))
    assert procedure.state is S.RESUME
    assert feed(procedure, press(Person.YES)) == []
    assert (procedure.edge, procedure.kept.unit) == ("wide", LengthUnit.MM)
    assert procedure.kept.places("wide") == (9,)


def test_a_draft_with_every_size_goes_on_with_its_volume() -> None:
    procedure = resumed(stored("120", "120", "90", "90", "230", "230"))
    feed(procedure, press(Person.YES))
    assert procedure.state is S.RESULT


def test_starting_over_drops_the_draft() -> None:
    procedure = resumed(stored("120"))
    (dropped,) = feed(procedure, press(Person.NO))
    assert isinstance(dropped, VolumeDropped)
    assert procedure.state is S.SHAPE


def test_nothing_stored_is_no_draft() -> None:
    assert VolumeDraft.from_records(None) is None


# The key -------------------------------------------------------------------------------------


def test_the_key_is_saved_under_a_number_with_what_it_costs() -> None:
    procedure = measured(*BOX)
    (made,) = feed(procedure, press(Person.KEEP, 3))
    assert isinstance(made, VolumeMade)
    assert (made.number, made.cm3) == (3, 2484)
    assert made.low < made.cm3 < made.high
    worst = max(made.high - made.cm3, made.cm3 - made.low) / made.cm3 * 100
    assert made.score_effect == pytest.approx(worst, rel=Decimal("0.12"))
    assert procedure.state is S.SAVED
    feed(procedure, press(Person.HOME))
    assert procedure.ended


def test_the_ruler_of_a_draft_is_the_coarsest_that_was_used() -> None:
    procedure = measuring()
    (size,) = keep(procedure, "12")
    assert isinstance(size, SizeRead)
    assert procedure.kept.ruler == Decimal("0.1")
    mixed = procedure.kept.with_size(replace(size, unit="in"))
    assert mixed.ruler == Decimal("0.15875")
