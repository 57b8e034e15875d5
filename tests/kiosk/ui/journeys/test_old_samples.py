"""One sample, many keys: a jar poured anew has its key without counting."""

from __future__ import annotations

from drivers.simulated.materials import HEX_NUTS
from kiosk.procedures.fill_container import ContainerState
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands


def first_key(journey: Journey) -> KeyHands:
    hands = KeyHands(journey)
    hands.to_key()
    journey.tap("Save as jar A")
    journey.until_title("Jar A is kept.")
    journey.tap("Home")
    hands.lift()
    return hands


def test_a_jar_poured_anew_has_a_key_without_counting(journey: Journey) -> None:
    hands = first_key(journey)
    weighings = journey.rows("weighings")
    hands.jar = journey.bench.new_jar()
    hands.use_old_samples()
    hands.weigh_jar()
    hands.pour(450)
    journey.tap("Stop here")
    hands.until_state(ContainerState.KEY)
    journey.tap("Save as jar B")
    journey.until_title("Jar B is kept.")
    ((low, high),) = journey.kept("SELECT low, high FROM keys_made WHERE letter = 'B'")
    assert int(str(low)) <= hands.jar.pieces <= int(str(high))
    assert journey.rows("weighings") == weighings + 2  # the new jar, empty and full
    assert journey.rows("key_masses") == 2 * 6


def test_the_question_names_the_day_and_the_piece(journey: Journey) -> None:
    hands = first_key(journey)
    journey.tap("Make a count key")
    journey.tap("pasta")
    journey.until_title("Use the samples of")
    assert "g a whole piece." in journey.seen
    journey.tap("Use them")
    assert "Is it from the same bag?" in journey.seen
    journey.tap("No, or mixed")
    hands.whole_pieces()


def test_another_material_is_counted(journey: Journey) -> None:
    first_key(journey)
    nuts = KeyHands(journey, HEX_NUTS)
    nuts.begin()
    assert journey.rows("keys_started") == 2
