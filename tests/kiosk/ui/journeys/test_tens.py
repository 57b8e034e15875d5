"""A sample counted in tens, by touch."""

from __future__ import annotations

from kiosk.procedures.count_in_tens import CountInTens
from kiosk.procedures.count_samples import SamplesState
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands


def tens_of(hands: KeyHands) -> CountInTens:
    procedure = hands.journey.desk.procedure
    assert isinstance(procedure, CountInTens)
    return procedure


def put_ten(hands: KeyHands, pieces: int = 10) -> None:
    """Put so many on top and wait until the kiosk has judged them."""
    bench, procedure = hands.journey.bench, tens_of(hands)
    before = procedure.tens_done
    bench.count_onto(hands.tray, pieces, hands.material)
    hands.journey.until(
        lambda: procedure.tens_done != before or hands.state is not SamplesState.TENS, "the ten"
    )


def test_an_eleven_is_pointed_out_while_it_is_on_top(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    journey.tap("In tens")
    for _ in range(3):
        put_ten(hands)
    put_ten(hands, 11)
    assert journey.title == "Count that ten again."
    assert "It weighs about one piece more than the others." in journey.seen
    journey.tap("It is ten")
    for _ in range(6):
        put_ten(hands)
    hands.until_state(SamplesState.READY)
    hands.keep()
    assert journey.rows("key_masses") == 2
