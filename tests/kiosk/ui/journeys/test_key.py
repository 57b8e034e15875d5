"""A count key by touch, from the material to the letter on the jar."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from drivers.simulated.materials import BEADS, HEX_NUTS, Material
from drivers.simulated.things import Jar
from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.fill_container import ContainerState
from kiosk.ui.walk import StuckError
from tests.helpers.journey import LARGE, SMALL, Journey
from tests.helpers.key_hands import KeyHands

BOTH = pytest.mark.parametrize("usual", [SMALL, LARGE], indirect=True)


def keep_by_touch(journey: Journey, hands: KeyHands) -> None:
    """A sample from the bench, kept by the button that names its mass."""
    journey.tap_thing("100 more" if hands.state is SamplesState.ADD else "tray of 100")
    hands.until_state(SamplesState.READY)
    hands.keep()


def key_by_touch(journey: Journey) -> Jar:
    """From home to the finished key with the tiles of the bench alone; the filled jar."""
    hands = KeyHands(journey)
    hands.begin()
    journey.tap_thing("empty tray")
    hands.until_state(SamplesState.COUNT)
    for _ in range(3):
        keep_by_touch(journey, hands)
    journey.tap_thing("clear pan")
    journey.wait(2.0)
    journey.tap("Go on")
    journey.tap("No")
    journey.tap("as it comes")
    hands.until_state(ContainerState.EMPTY_ON)
    journey.tap_thing("jar")
    hands.until_state(ContainerState.POUR)
    for _ in range(5):
        journey.tap_thing("pour in")
        journey.wait(2.5)
    hands.until_state(ContainerState.STILL)
    (jar,) = journey.bench.on_pan
    assert isinstance(jar, Jar)
    hands.finish()
    return jar


def made(journey: Journey) -> tuple[int, int, int, str]:
    """Count, low, high and letter of the key kept last."""
    ((count, low, high, letter),) = journey.kept(
        "SELECT count, low, high, letter FROM keys_made ORDER BY place DESC LIMIT 1"
    )
    return int(str(count)), int(str(low)), int(str(high)), str(letter)


@BOTH
def test_the_true_number_lies_inside_the_interval(usual: Journey) -> None:
    jar = key_by_touch(usual)
    usual.tap("Save as jar A")
    _, low, high, _ = made(usual)
    assert low <= jar.pieces <= high


@pytest.mark.parametrize(
    ("material", "grams"), [(BEADS, 700.0), (HEX_NUTS, 1800.0)], ids=lambda each: str(each)[:20]
)
def test_other_materials_hold_the_true_number_too(
    usual: Journey, material: Material, grams: float
) -> None:
    hands = KeyHands(usual, material)
    hands.to_key(grams)
    usual.tap("Save as jar A")
    _, low, high, _ = made(usual)
    assert low <= hands.jar.pieces <= high


def test_the_key_shown_is_the_key_kept(usual: Journey) -> None:
    KeyHands(usual).to_key()
    shown = usual.seen.replace("[b]", "").replace("[/b]", "")
    usual.tap("Save as jar A")
    count, low, high, _ = made(usual)
    assert f"{count:,} whole pieces".replace(",", " ") in shown
    assert f"95 % sure: between {low:,} and {high:,}".replace(",", " ") in shown


def test_a_saved_key_says_what_to_write_on_the_jar(journey: Journey) -> None:
    KeyHands(journey).to_key()
    journey.tap("Save as jar A")
    journey.until_title("Jar A is kept.")
    assert "Close the jar and write A on it." in journey.seen


def test_another_letter_can_be_chosen(journey: Journey) -> None:
    KeyHands(journey).to_key()
    journey.tap("C")
    journey.tap("Save as jar C")
    assert made(journey)[3] == "C"


def test_letters_beyond_the_first_page_can_be_chosen(journey: Journey) -> None:
    KeyHands(journey).to_key()
    journey.tap("E to H")
    journey.tap("G")
    journey.tap("Save as jar G")
    assert made(journey)[3] == "G"


def test_a_used_letter_is_not_given_again(start: Callable[..., Journey]) -> None:
    first = start()
    KeyHands(first).to_key()
    first.tap("Save as jar A")
    first.tap("Home")
    second = start()
    KeyHands(second).to_key()
    assert "Save as jar B" in second.seen
    with pytest.raises(StuckError):
        second.find("A")


# The cover -----------------------------------------------------------------------------------


def test_a_covered_key_shows_none_of_its_numbers(journey: Journey) -> None:
    KeyHands(journey).to_key()
    numbers = [f"{each:,}".replace(",", "\u2009") for each in key_numbers(journey)]
    journey.tap("Cover the big number")
    pan = journey.scene.pan
    shown = [*journey.texts(), pan.number, pan.line1, pan.line2, pan.label]
    assert [text for text in shown for number in numbers if number in text] == []


def key_numbers(journey: Journey) -> tuple[int, int, int]:
    procedure = journey.desk.procedure
    key = getattr(procedure, "key", None)
    assert key is not None
    return key.count, key.low, key.high


def test_the_cover_goes_away_by_the_same_touch(journey: Journey) -> None:
    KeyHands(journey).to_key()
    count, _, _ = key_numbers(journey)
    journey.tap("Cover the big number")
    journey.tap("Show the big number")
    assert f"{count:,} whole pieces".replace(",", " ") in journey.seen


def test_a_covered_key_can_be_saved(journey: Journey) -> None:
    KeyHands(journey).to_key()
    journey.tap("Cover the big number")
    journey.tap("Save as jar A")
    journey.until_title("Jar A is kept.")
    assert journey.scene.pan.phase == "hidden"


# Changes of mind -----------------------------------------------------------------------------


def test_a_sample_is_taken_back_by_its_own_undo(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    hands.sample()
    hands.sample()
    ((second,),) = journey.kept("SELECT id FROM key_masses ORDER BY place DESC LIMIT 1")
    journey.tap("Undo")
    voided = journey.kept("SELECT mass_id FROM masses_voided")
    assert len(voided) == 1
    assert voided != [(second,)]


def test_other_pieces_a_sample_void_the_samples_of_before(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    journey.tap("Count 200 at once")
    journey.until_title("Count out 200 whole pieces.")
    hands.lay_sample(200)
    hands.keep()
    changed = "SELECT pieces FROM keys_changed WHERE pieces IS NOT NULL"
    assert journey.kept(changed) == [(200,)]


def test_the_empty_jar_can_be_weighed_again(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.to_pour()
    journey.tap("Weigh it again")
    journey.until_title("Take everything off the pan.")
    hands.lift()
    hands.jar = journey.bench.new_jar()
    hands.weigh_jar()
    hands.pour(600)
    hands.finish()
    journey.tap("Save as jar A")
    _, low, high, _ = made(journey)
    assert low <= hands.jar.pieces <= high


def test_one_more_sample_after_the_key_narrows_it(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.to_key()
    _, low, high = key_numbers(journey)
    journey.tap("More samples")
    hands.sample()
    hands.until_state(SamplesState.SPREAD)
    hands.go_to_jar()
    hands.jar = journey.bench.new_jar()
    hands.weigh_jar()
    hands.pour(600)
    hands.finish()
    _, new_low, new_high = key_numbers(journey)
    assert new_high - new_low < high - low


def test_counted_pieces_that_are_in_the_jar_are_kept_as_such(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.all_samples()
    hands.go_to_jar(counted_inside=True)
    hands.weigh_jar()
    hands.pour(600)
    hands.finish()
    journey.tap("Save as jar A")
    assert journey.kept("SELECT from_container FROM keys_made") == [(1,)]


def test_hardly_anything_in_the_jar_makes_no_key(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.to_pour()
    hands.pour(1.2)
    journey.tap("Stop here")
    journey.until_title("No key from these masses.")
    assert "fill in more" in journey.seen
