"""A container being measured with water, in every state; every mass is invented."""

from __future__ import annotations

from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, Person
from kiosk.procedures.water_draft import WaterDraft
from tests.helpers.pan import (
    EMPTY,
    PLACED,
    TOO_HEAVY,
    feed,
    memory,
    press,
    settled,
    surroundings,
)

S = WaterState
EMPTY_G, FULL_G = "112.3", "1234.5"


def measuring_water(draft: WaterDraft | None = None, pan: PanMemory | None = None) -> MeasureWater:
    """At the caution, or at the question whether to go on with a draft."""
    return MeasureWater(surroundings(), pan=pan or PanMemory(), draft=draft)


def warm(procedure: MeasureWater, celsius: str = "21") -> list[Effect]:
    """Type how warm the water is, and keep it."""
    typed = [press(Person.TYPE, digit) for digit in celsius]
    return feed(procedure, *typed, press(Person.KEEP))


def at_empty(celsius: str = "21", pan: PanMemory | None = None) -> MeasureWater:
    """The empty container is waited for."""
    procedure = measuring_water(pan=pan)
    feed(procedure, press(Person.GO_ON))
    warm(procedure, celsius)
    return procedure


def lifted(celsius: str = "21", empty: str = EMPTY_G) -> MeasureWater:
    """The empty container is weighed and off the pan again."""
    procedure = at_empty(celsius)
    feed(procedure, PLACED, settled(empty), EMPTY)
    return procedure


def with_volume(*fillings: str, celsius: str = "21", empty: str = EMPTY_G) -> MeasureWater:
    """Weighed empty, and full as often as there are masses."""
    procedure = lifted(celsius, empty)
    for place, full in enumerate(fillings or (FULL_G,)):
        if place:
            feed(procedure, press(Person.MORE), press(Person.KEEP), EMPTY)
        feed(procedure, PLACED, settled(full))
    assert procedure.state is S.RESULT, procedure.state
    return procedure


def in_water(state: WaterState) -> MeasureWater:
    """A container in that state, with the longest words."""
    match state:
        case S.CAUTION:
            procedure = measuring_water()
        case S.RESUME:
            procedure = measuring_water(lifted().kept)
        case S.WARMTH:
            procedure = with_volume()
            feed(procedure, press(Person.MORE))
        case S.SURE:
            procedure = at_empty("38")
        case S.CLEAR:
            procedure = at_empty(pan=memory(PLACED))
        case S.EMPTY:
            procedure = at_empty()
        case S.LIFT:
            procedure = at_empty()
            feed(procedure, PLACED, settled(EMPTY_G))
        case S.FILLED:
            procedure = lifted()
        case S.NOT_FULL:
            procedure = lifted()
            feed(procedure, PLACED, settled("112.4"))
        case S.TOO_HEAVY:
            procedure = lifted()
            feed(procedure, TOO_HEAVY)
        case S.LEAVING:
            procedure = lifted()
            feed(procedure, press(Person.HOME))
        case _:
            procedure = with_volume()
    if state is S.SAVED:
        feed(procedure, press(Person.KEEP, 26))
    assert procedure.state is state, procedure.state
    return procedure


def fahrenheit() -> MeasureWater:
    """The longest note about a temperature."""
    procedure = measuring_water()
    feed(procedure, press(Person.GO_ON))
    warm(procedure, "68")
    return procedure


def filled_anew() -> MeasureWater:
    """A second filling is waited for; the first can be undone."""
    procedure = with_volume()
    feed(procedure, press(Person.MORE), press(Person.KEEP))
    return procedure


def large() -> MeasureWater:
    """Three fillings of more than the event allows."""
    return with_volume("4512.3", "4513.9", "4511.0", empty="412.3")
