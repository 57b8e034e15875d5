"""Containers being measured, each state and the longest words; every size is invented."""

from __future__ import annotations

from kiosk.procedures.measure import Measure, MeasureState
from kiosk.procedures.procedure import Person
from kiosk.records.volume_entries import LengthUnit, Shape
from tests.helpers.measured import keep, measured, measuring, resumed, type_in
from tests.helpers.pan import feed, press

S = MeasureState
BOX = ("18.4", "18.5", "12.6", "12.6", "9.2", "9.3")
BIN = ("24.5", "24.6", "18.2", "18.3", "20.1", "20.2", "14.4", "14.5", "30.5", "30.6")


def in_measure(state: MeasureState) -> Measure:
    """A measurement of a box in that state."""
    match state:
        case S.SHAPE:
            return resumed(None)
        case S.UNIT:
            procedure = resumed(None)
            feed(procedure, press(Person.CHOOSE, Shape.TAPERED_BOX))
        case S.RESUME:
            procedure = resumed(begun().kept)
        case S.SIZE:
            procedure = begun()
        case S.SURE:
            procedure = measuring()
            keep(procedure, *BOX[:5], "92.25")
        case S.LEAVING:
            procedure = begun()
            feed(procedure, press(Person.HOME))
        case _:
            procedure = measured(*BOX)
    if state is S.SAVED:
        feed(procedure, press(Person.KEEP, 26))
    assert procedure.state is state
    return procedure


def begun() -> Measure:
    """The second place of the third edge is typed."""
    procedure = measuring()
    keep(procedure, *BOX[:5])
    type_in(procedure, "9.3")
    return procedure


def first_edge() -> Measure:
    return measuring(Shape.TAPERED)


def wrong_size() -> Measure:
    """The longest sentence about what was typed."""
    procedure = measuring(unit=LengthUnit.INCH)
    keep(procedure, "7.25", ".")
    return procedure


def bulging() -> Measure:
    """Three places of a bucket's rim in inches, one of them typed now."""
    procedure = measuring(Shape.TAPERED, LengthUnit.INCH)
    keep(procedure, "11.25", "11.75")
    type_in(procedure, "11.4375")
    return procedure


def full_row() -> Measure:
    procedure = measuring(Shape.TAPERED_BOX)
    keep(procedure, "24.5", "25.5", "25.05")
    feed(procedure, press(Person.CHOOSE, "top long"))
    return procedure


def bin_(*, last: str = "30.6") -> Measure:
    """Five edges, the last of them being measured."""
    procedure = measuring(Shape.TAPERED_BOX)
    keep(procedure, *BIN[:9])
    type_in(procedure, last)
    return procedure


def bin_done() -> Measure:
    return measured(*BIN, shape=Shape.TAPERED_BOX)


def can() -> Measure:
    """A cylinder, its height at one place."""
    procedure = measuring(Shape.CYLINDER)
    keep(procedure, "10.1", "10.2", "24.6")
    return procedure


def one_place_each() -> Measure:
    procedure = measuring(Shape.CYLINDER)
    for text in ("10.1", "12.5"):
        keep(procedure, text)
        feed(procedure, press(Person.GO_ON))
    return procedure


def flat_box() -> Measure:
    """So flat that it is drawn thicker than it is."""
    return measured("60", "60", "40", "40", "1.5", "1.6")
