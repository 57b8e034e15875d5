"""A volume key with water by touch: the true volume of the bench's vase lies in its interval."""

from __future__ import annotations

from contextlib import closing
from decimal import Decimal

from drivers.simulated.things import Vessel
from kiosk.procedures.measure_water import WaterState
from kiosk.records.store import Store
from tests.helpers.journey import Journey

CELSIUS = "21"


def state(journey: Journey) -> object:
    procedure = journey.desk.procedure
    return None if procedure is None else procedure.state


def until_state(journey: Journey, wanted: WaterState) -> None:
    journey.until(lambda: state(journey) is wanted, f"the state {wanted}")


def warm(journey: Journey) -> None:
    journey.type(CELSIUS)
    journey.tap(f"Keep {CELSIUS} °C")


def to_empty(journey: Journey) -> None:
    """From home to the empty vase, which is waited for."""
    journey.tap("Measure a box")
    journey.until_screen("choices")
    journey.tap("any, with water")
    journey.until_title("Keep the water away from the scale.")
    journey.tap("The water is ready")
    warm(journey)
    until_state(journey, WaterState.EMPTY)


def weigh_empty(journey: Journey) -> Vessel:
    journey.tap_thing("vase")
    until_state(journey, WaterState.LIFT)
    (vase,) = journey.bench.on_pan
    assert isinstance(vase, Vessel)
    return vase


def fill(journey: Journey) -> None:
    """Filled beside the pan, and put on it."""
    until_state(journey, WaterState.FILLED)
    journey.tap_thing(f"fill it, {CELSIUS} °C")
    journey.tap_thing("vase")
    until_state(journey, WaterState.RESULT)


def test_a_vase_of_any_shape_from_the_caution_to_its_number(journey: Journey) -> None:
    to_empty(journey)
    vase = weigh_empty(journey)
    journey.tap_thing("vase")
    fill(journey)
    journey.tap("Save as box 1")
    journey.until_title("Box 1 is kept.")
    ((low, cm3, high),) = journey.kept("SELECT low, cm3, high FROM volumes_made")
    assert Decimal(str(low)) < Decimal(vase.cm3) < Decimal(str(high))
    assert abs(float(str(cm3)) / vase.cm3 - 1) < 2e-4
    # Water taken for grams alone would be off by more than all that the key allows.
    ((shown,),) = journey.kept(
        "SELECT f.grams - e.grams FROM weighings e, weighings f WHERE e.grams + 0 < f.grams + 0"
    )
    assert float(str(shown)) < float(str(low))
    journey.tap("Done")
    journey.until_screen("home")
    with closing(Store(str(journey.records))) as store:
        assert store.volumes(simulated=False) == []
        assert [box.letter for box in store.boxes_to_guess(simulated=True)] == ["1"]


def test_a_pulled_cable_and_leaving_lose_nothing(journey: Journey) -> None:
    journey.tap("Measure a box")
    journey.tap("any, with water")
    journey.tap("Other shapes")
    journey.until_screen("choices")
    journey.tap("Back")
    to_empty(journey)
    vase = weigh_empty(journey)
    journey.table.unplug()
    journey.until_screen("trouble")
    journey.tap("Put away")
    assert "1 mass is kept" in journey.seen
    journey.table.plug()
    journey.bench.lift()
    until_state(journey, WaterState.FILLED)
    journey.until_screen("question")
    journey.tap("Home")
    journey.tap("Leave")
    journey.until_screen("home")
    journey.tap("Measure a box")
    journey.until_title("Go on with this container?")
    journey.tap("Go on")
    warm(journey)
    fill(journey)
    assert f"{vase.cm3:.0f} cubic cm" in journey.seen
    journey.tap("Cover the big number")
    journey.wait(0.3)
    near = range(int(vase.cm3) - 3, int(vase.cm3) + 4)
    assert not any(f"{cm3}" in journey.seen for cm3 in near)
