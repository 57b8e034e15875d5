"""Containers measured by hand, for tests; every size is invented unless a test says whose it is."""

from __future__ import annotations

from kiosk.procedures.measure import Measure, MeasureState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, Person
from kiosk.procedures.volume_draft import VolumeDraft
from kiosk.records.volume_entries import LengthUnit, Shape
from kiosk.settings import Rules
from tests.helpers.pan import feed, press, surroundings


def measuring(
    shape: Shape = Shape.BOX, unit: LengthUnit = LengthUnit.CM, rules: Rules | None = None
) -> Measure:
    """Shape and unit are chosen, nothing is measured yet."""
    procedure = Measure(surroundings(rules), pan=PanMemory())
    feed(procedure, press(Person.CHOOSE, shape), press(Person.CHOOSE, unit))
    return procedure


def resumed(draft: VolumeDraft | None) -> Measure:
    return Measure(surroundings(), pan=PanMemory(), draft=draft)


def type_in(procedure: Measure, text: str) -> None:
    for sign in text:
        feed(procedure, press(Person.TYPE, sign))


def keep(procedure: Measure, *texts: str) -> list[Effect]:
    """Type each of these and keep it; all effects."""
    effects: list[Effect] = []
    for text in texts:
        type_in(procedure, text)
        effects += feed(procedure, press(Person.KEEP))
    return effects


def measured(*texts: str, shape: Shape = Shape.BOX, unit: LengthUnit = LengthUnit.CM) -> Measure:
    """A container with its volume, from two places of each edge in their order."""
    procedure = measuring(shape, unit)
    keep(procedure, *texts)
    assert procedure.state is MeasureState.RESULT, procedure.state
    return procedure
