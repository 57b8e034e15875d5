"""The whole way of a cup, by touch, on a balance of each dialect behind a real port."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from decimal import Decimal

import pytest

from drivers.dialects import use_shapes
from drivers.learning.findings import Learned
from drivers.learning.learner import learn
from tests.helpers.journey import Journey
from tests.helpers.line_styles import KINDS, taught
from tests.helpers.spoken import STYLES, UNMARKED, HidJourney, OneShape

EMPTY_G, FILLED_G = 12.3, 105.7
CAPTURED = [("12.3", "105.7", "93.4")]
BETWEEN_PRESSES_S = 2.0
SHAPE = "staffroom pan"


def captured(journey: Journey) -> list[tuple[object, ...]]:
    return journey.kept(
        "SELECT e.grams, f.grams, net FROM cups_handed_in "
        "JOIN weighings f ON f.id = filled_id "
        "JOIN cups_taken t ON t.id = try_id JOIN weighings e ON e.id = t.empty_id"
    )


def whole_way(journey: Journey) -> None:
    """From the empty cup to its score."""
    journey.wait(3.0)
    number = journey.take_cup(grams=EMPTY_G)
    journey.tap(str(number))
    journey.put(FILLED_G)
    journey.until_screen("score")


@pytest.mark.parametrize("name", STYLES)
def test_a_cup_on_a_balance_that_sends_lines(start: Callable[..., Journey], name: str) -> None:
    journey = start(style=STYLES[name])
    whole_way(journey)
    assert captured(journey) == CAPTURED


@pytest.fixture
def learned_shape() -> Iterator[str]:
    found = learn(taught(KINDS["counter, commas"], readability=Decimal("0.1")), SHAPE, "9600-8N1")
    assert isinstance(found, Learned)
    use_shapes(OneShape(found.shape))
    yield SHAPE
    use_shapes(None)


def test_a_cup_on_a_balance_whose_lines_were_learned(
    start: Callable[..., Journey], learned_shape: str
) -> None:
    journey = start(style=KINDS["counter, commas"].style, dialect=learned_shape)
    whole_way(journey)
    assert captured(journey) == CAPTURED


def test_a_cup_on_a_hid_scale(hid_journey: HidJourney) -> None:
    whole_way(hid_journey)
    assert captured(hid_journey) == CAPTURED


# A balance that prints at its key --------------------------------------------------------------


@pytest.fixture
def keyed(start: Callable[..., Journey]) -> Journey:
    journey = start(style=UNMARKED, at_key=True)
    journey.tap("Fill a cup")
    journey.tap("Heron")
    return journey


def prints(journey: Journey, times: int = 1) -> None:
    for _ in range(times):
        journey.table.press_print()
        journey.wait(BETWEEN_PRESSES_S)


def test_a_balance_that_never_spoke_may_have_a_print_key(keyed: Journey) -> None:
    keyed.until_title("The scale is silent.")
    assert "Has it a print key? Press it twice." in keyed.seen


def test_once_known_it_is_asked_to_print_its_empty_pan(keyed: Journey) -> None:
    keyed.until_title("The scale is silent.")
    prints(keyed, 2)
    keyed.until_title("Print the empty pan first.")


def test_one_print_of_a_cup_weighs_nothing(keyed: Journey) -> None:
    prints(keyed, 3)
    keyed.put(EMPTY_G)
    keyed.wait(BETWEEN_PRESSES_S)
    prints(keyed)
    assert "Press print once more" in keyed.seen
    assert keyed.rows("cups_taken") == 0


def test_a_quiet_balance_is_no_trouble(keyed: Journey) -> None:
    prints(keyed, 3)
    keyed.wait(30.0)
    assert keyed.screen == "put on"
    assert "press its print key twice" in keyed.seen


def test_the_whole_way_of_a_cup_at_the_print_key(keyed: Journey) -> None:
    prints(keyed, 3)
    keyed.put(EMPTY_G)
    keyed.wait(BETWEEN_PRESSES_S)
    prints(keyed, 2)
    keyed.until_title("Cup 1 weighs 12.3 g.")
    keyed.clear()
    prints(keyed)
    keyed.until_screen("take cup")
    keyed.tap("Home")
    keyed.tap("Leave")
    keyed.tap("1")
    keyed.put(FILLED_G)
    keyed.wait(BETWEEN_PRESSES_S)
    prints(keyed, 2)
    keyed.until_screen("score")
    assert captured(keyed) == CAPTURED


def test_a_third_print_captures_nothing_twice(keyed: Journey) -> None:
    prints(keyed, 3)
    keyed.put(EMPTY_G)
    keyed.wait(BETWEEN_PRESSES_S)
    prints(keyed, 4)
    assert keyed.rows("weighings") == 1
