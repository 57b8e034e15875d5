"""A jar filled to its goal by touch: the guide, the lots of a small balance, leaving in between."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from drivers.simulated.materials import LENTILS
from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.procedure import Person, PersonEvent
from tests.helpers.journey import LARGE, SMALL, STEADY, USUAL, Journey
from tests.helpers.key_hands import KeyHands

SMALL_BALANCE = replace(USUAL, capacity=Decimal(600))
STEADY_AND_SMALL = replace(STEADY, capacity=Decimal(600))
POURED_AT_ONCE = 60.0  # grams; then the coach looks at the kiosk


class PouringCoach(KeyHands):
    """Pours as the kiosk says, from lot to lot; ``in_jar`` is the true number in the jar."""

    in_jar = 0

    def until_told_to_stop(self) -> None:
        while not self.journey.title.startswith("Stop here"):
            self.pour(POURED_AT_ONCE)

    def stop(self) -> None:
        self.journey.tap("Stop here")
        self.until_state(ContainerState.LOT)
        self.in_jar += self.jar.pieces

    def next_lot(self) -> None:
        self.journey.tap("Next lot")
        self.lift()
        self.journey.bench.empty(self.jar)
        self.weigh_jar()


def to_goal(journey: Journey, *cards: str) -> PouringCoach:
    """From home to the empty jar on the pan, with these cards chosen."""
    hands = PouringCoach(journey, LENTILS)
    hands.begin()
    hands.weigh_tray()
    journey.desk.press(PersonEvent(Person.PIECES, 200))  # whatever is proposed
    for _ in range(3):
        hands.sample(200)
    *first, last = cards
    journey.tap("Go on")
    journey.tap("No")
    for card in first:
        journey.tap(card)
    journey.tap(last)
    hands.lift()
    hands.until_state(ContainerState.EMPTY_ON)
    hands.weigh_jar()
    return hands


HIGH = "12 000 to 20 000"


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=str)
def test_a_jar_of_15_000_pieces_in_lots_on_a_small_balance(
    start: Callable[..., Journey], size: tuple[int, int]
) -> None:
    journey = start(profile=SMALL_BALANCE, size=size)
    hands = to_goal(journey, "in lots", HIGH)
    hands.until_told_to_stop()
    assert journey.title == "Stop here: enough for one lot."
    hands.stop()
    hands.next_lot()
    hands.until_told_to_stop()
    assert journey.title == "Stop here."
    hands.pour(110)  # the goal is met; towards 15 000
    hands.stop()
    journey.tap("That is all")
    journey.until_title("All from the bag you sampled?")
    journey.tap("Yes, all of it")
    hands.until_state(ContainerState.KEY)
    journey.tap("Save as jar A")
    ((count, low, high),) = journey.kept("SELECT count, low, high FROM keys_made")
    assert 14_000 <= hands.in_jar <= 16_000
    assert 12_000 <= int(str(count)) <= 20_000
    assert int(str(low)) <= hands.in_jar <= int(str(high))
    roles = "SELECT role, count(*) FROM key_masses WHERE role IN ('empty', 'filled') GROUP BY role"
    assert journey.kept(roles) == [("empty", 2), ("filled", 2)]


def test_a_lot_is_undone_by_touch(start: Callable[..., Journey]) -> None:
    journey = start(profile=STEADY_AND_SMALL)
    hands = to_goal(journey, "in lots", "thousands")
    hands.pour(40)
    hands.stop()
    journey.tap("Undo")
    assert len(journey.kept("SELECT 1 FROM masses_voided")) == 2
    hands.lift()
    hands.until_state(ContainerState.EMPTY_ON)


def test_a_pour_that_gets_too_heavy_goes_on_in_lots(start: Callable[..., Journey]) -> None:
    journey = start(profile=STEADY_AND_SMALL)
    hands = to_goal(journey, "as it comes")
    journey.bench.pour(hands.jar, LENTILS, grams=700)
    journey.until_title("Too heavy")
    hands.lift()
    journey.bench.empty(hands.jar)
    journey.bench.pour(hands.jar, LENTILS, grams=400)
    journey.bench.put(hands.jar)
    hands.until_state(ContainerState.STILL)
    journey.tap("Weigh in lots")
    hands.until_state(ContainerState.STILL)
    hands.stop()
    assert journey.title == "Lot 1 is kept."


def test_a_band_too_heavy_for_the_balance_is_pointed_out(start: Callable[..., Journey]) -> None:
    journey = start(profile=STEADY_AND_SMALL)
    to_goal(journey, HIGH)
    assert "Too heavy for this scale: weigh in lots." in journey.seen


def test_a_typed_goal_is_poured_to_without_lots(journey: Journey) -> None:
    hands = to_goal(journey, "another number", "1", "5", "0", "0", "That is our goal")
    assert "Goal: about 1 500" in journey.seen
    assert "to go" in journey.seen
    hands.pour(78)
    journey.until_title("Stop here.")
    hands.pour(20)
    journey.until_title("Too many. Take some out.")


def test_the_goal_can_be_changed_while_pouring(journey: Journey) -> None:
    hands = to_goal(journey, "thousands")
    hands.pour(30)
    journey.tap("Change goal")
    journey.tap("hundreds")
    journey.until_title("Stop here.")
    assert journey.kept("SELECT goal FROM keys_changed WHERE goal IS NOT NULL ORDER BY place") == [
        ("middle",), ("low",),
    ]  # fmt: skip


def test_goal_and_lots_survive_a_restart(start: Callable[..., Journey]) -> None:
    hands = to_goal(start(profile=STEADY_AND_SMALL), "in lots", HIGH)
    hands.pour(300)
    hands.stop()
    journey = start(profile=STEADY_AND_SMALL)
    journey.tap("Make a count key")
    journey.tap("Go on")
    journey.until_title("Lot 1 is kept.")
    journey.tap("Next lot")
    again = PouringCoach(journey, LENTILS)
    again.weigh_jar()
    assert "Goal: 12 000 to 20 000" in journey.seen
    assert "kept before: 300." in journey.seen or "kept before: 299." in journey.seen
