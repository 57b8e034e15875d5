"""While a cup is out, nothing on the students' screen follows the weight before it is captured."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.helpers.journey import LARGE, SMALL, Journey

Way = Callable[[Journey], None]
EMPTY_G, FILLED_G = 12.3, 105.7
RESTLESS = 40.0  # divisions of draught under which nothing settles
BOTH = pytest.mark.parametrize("journey", [SMALL, LARGE], indirect=True)


def put_restlessly(journey: Journey) -> None:
    journey.put(30.0)
    journey.bench.draught(RESTLESS)


def nobody_chose(journey: Journey) -> None:
    put_restlessly(journey)
    journey.until_title("Whose cup is on the pan?")


def weighing(journey: Journey) -> None:
    journey.tap("1")
    put_restlessly(journey)
    journey.until_title("Cup 1 is being weighed.")


def clearing(journey: Journey) -> None:
    journey.tap("Fill a cup")
    put_restlessly(journey)
    journey.tap("Wren")
    journey.until_title("Take everything off the pan.")


def asked_to_leave(journey: Journey) -> None:
    weighing(journey)
    journey.tap("Home")
    journey.until_screen("leave")


def choosing_a_pair(journey: Journey) -> None:
    journey.tap("Fill a cup")
    put_restlessly(journey)


PLACES: dict[str, Way] = {
    "nobody chose": nobody_chose,
    "weighing": weighing,
    "clearing": clearing,
    "asked to leave": asked_to_leave,
    "choosing a pair": choosing_a_pair,
}


def pictures_under_loads(journey: Journey) -> set[bytes]:
    """How the window looks while more and more comes onto the pan."""
    pictures = set()
    for _ in range(4):
        journey.put(45.0)
        journey.wait(0.35)
        pictures.add(journey.pixels())
    return pictures


@BOTH
@pytest.mark.parametrize("place", PLACES)
def test_no_pixel_follows_a_moving_weight(journey: Journey, place: str) -> None:
    journey.take_cup(grams=EMPTY_G)
    PLACES[place](journey)
    journey.wait(0.5)
    assert len(pictures_under_loads(journey)) == 1


def seen_with(journey: Journey, grams: float, title: str) -> bytes:
    journey.swap(grams)
    journey.until_title(title)
    journey.wait(1.0)
    return journey.pixels()


@pytest.mark.parametrize(
    ("one", "other", "title"),
    [
        (5.0, 9.0, "Lighter than cup 1 was empty."),
        (12.3, 12.4, "Nothing is in cup 1 yet."),
        (18.0, 28.0, "Is this really cup 1?"),
    ],
)
def test_no_pixel_tells_a_resting_weight_that_is_not_captured(
    journey: Journey, one: float, other: float, title: str
) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    assert seen_with(journey, one, title) == seen_with(journey, other, title)


def test_a_second_empty_cup_is_weighed_without_its_mass_on_the_screen(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.ask_for_cup("Wren")
    journey.put(14.1)
    journey.until_title("This is cup 2.")
    assert "14.1" not in journey.seen
    assert (journey.scene.pan.phase, journey.scene.pan.number) == ("hidden", "")


def test_with_no_cup_out_the_pan_shows_the_weight(journey: Journey) -> None:
    journey.ask_for_cup()
    before = journey.pixels()
    journey.bench.draught(RESTLESS)
    journey.put(EMPTY_G)
    journey.wait(0.5)
    assert journey.pixels() != before


def test_the_cover_closes_when_the_weighed_cup_is_lifted(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    assert journey.scene.pan.number == "12.3"
    journey.bench.lift()
    journey.until_screen("take cup")
    assert journey.scene.pan.phase == "hidden"


def test_the_score_is_shown_once_it_is_captured(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    journey.put(FILLED_G)
    journey.until_screen("score")
    assert (journey.scene.pan.phase, journey.scene.pan.number) == ("captured", "93.4")


def test_the_score_stays_as_it_was_captured_while_the_pan_moves(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.take_cup("Wren", 14.1)
    journey.tap("1")
    journey.put(FILLED_G)
    journey.until_screen("score")
    journey.wait(1.0)
    before = journey.pixels()
    journey.bench.lean(20)
    journey.wait(0.5)
    assert journey.pixels() == before


def test_the_coach_sees_the_weight_while_cups_are_out(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("Make a count key")
    journey.tap("beads")
    journey.until_title("Put the empty tray on.")
    assert journey.scene.pan.phase != "hidden"
