"""Whole ways of cups by touch: weighed empty, taken, filled, handed in, scored."""

from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.simulated.things import Thing
from tests.helpers.journey import LARGE, SMALL, Journey, mass

BOTH = pytest.mark.parametrize("usual", [SMALL, LARGE], indirect=True)
TWO_READINGS = 0.2  # grams by which a difference of two readings may miss the truth
TEAMS = ("Heron", "Wren", "Siskin", "Teal", "Pipit")
TILES = ("empty cup", "solid cup", "empty cup", "solid cup", "empty cup")
BACK = (3, 1, 5, 2, 4)


def take_a_cup(journey: Journey, team: str, tile: str) -> Thing:
    """From home by touch until the cup is out, and home again; the cup."""
    journey.ask_for_cup(team)
    journey.tap_thing(tile)
    journey.until_title("Cup" if journey.rows("cups_taken") == 0 else "This is cup")
    (cup,) = journey.bench.on_pan
    journey.tap_thing(tile)
    journey.until_screen("take cup")
    journey.tap("Home")
    journey.tap("Leave")
    return cup


def hand_in(journey: Journey, number: int, *, scoops: int = 0) -> Thing:
    """From home by touch to the score of a filled cup; the cup."""
    journey.tap(str(number))
    journey.until_screen("hand in")
    for _ in range(scoops):
        journey.tap_thing(f"scoop {journey.kiosk.controls.bench.scoop} g more")
    journey.tap_thing(f"filled cup {number}")
    journey.until_screen("score")
    (cup,) = journey.bench.on_pan
    return cup


@BOTH
def test_a_cup_goes_from_empty_to_its_score(usual: Journey) -> None:
    take_a_cup(usual, "Heron", "empty cup")
    cup = hand_in(usual, 1)
    net = Decimal(usual.score.points)  # under the goal, points are grams
    assert float(net) == pytest.approx(cup.filling, abs=TWO_READINGS)
    assert usual.score.side == "under"
    assert f"{100 - net} g" == usual.score.error


@BOTH
def test_five_cups_come_back_in_another_order_each_with_its_own_mass(usual: Journey) -> None:
    cups = [take_a_cup(usual, team, tile) for team, tile in zip(TEAMS, TILES, strict=True)]
    assert len(usual.desk.facts.cups) == 5
    for scoops, number in enumerate(BACK):
        cup = hand_in(usual, number, scoops=min(scoops, 1))
        assert cup is cups[number - 1]
        ((net,),) = usual.kept("SELECT net FROM cups_handed_in ORDER BY place DESC LIMIT 1")
        assert float(mass(net)) == pytest.approx(cup.filling, abs=TWO_READINGS)
        assert f"inside {mass(net)} g" in usual.seen.replace("[b]", "").replace("[/b]", "")
        usual.bench.lift()
        usual.tap("Home")
    assert usual.desk.facts.cups == []


def test_what_is_shown_is_what_is_kept(usual: Journey) -> None:
    take_a_cup(usual, "Heron", "empty cup")
    hand_in(usual, 1)
    ((points, net),) = usual.kept("SELECT points, net FROM cups_handed_in")
    assert usual.score.points == points
    assert usual.scene.pan.number == net


def test_the_mass_kept_is_a_reading_that_the_balance_sent(usual: Journey) -> None:
    take_a_cup(usual, "Heron", "empty cup")
    ((grams, raw),) = usual.kept("SELECT grams, raw FROM weighings")
    assert str(grams).encode() in bytes(raw)


def test_the_next_pair_can_come_while_a_cup_is_out(journey: Journey) -> None:
    journey.ask_for_cup("Heron")
    journey.put(12.3)
    journey.until_title("weighs")
    journey.bench.lift()
    journey.until_screen("take cup")
    journey.tap("Next pair")
    journey.tap("Wren")
    journey.put(14.1)
    journey.until_title("This is cup 2.")
    assert journey.kept("SELECT number, team FROM cups_taken ORDER BY place") == [
        (1, "Heron"),
        (2, "Wren"),
    ]


def test_a_pair_with_a_cup_out_is_led_to_its_hand_in(journey: Journey) -> None:
    journey.take_cup("Heron")
    journey.tap("Fill a cup")
    journey.tap("Heron")
    journey.until_title("Put cup 1 on the pan.")


def test_the_next_try_weighs_another_empty_cup_for_the_same_pair(journey: Journey) -> None:
    journey.take_cup("Heron")
    journey.tap("1")
    journey.put(112.3)
    journey.until_screen("score")
    journey.tap("Next try")
    journey.until_title("Take everything off the pan.")
    journey.clear()
    journey.put(11.0)
    journey.until_title("weighs")
    assert journey.kept("SELECT number, team FROM cups_taken ORDER BY place DESC LIMIT 1") == [
        (2, "Heron")
    ]


def test_a_material_is_remembered_for_the_next_pair(journey: Journey) -> None:
    journey.tap("Fill a cup")
    journey.tap("Cups of rice")
    journey.tap("lentils")
    journey.tap("Heron")
    journey.put(12.3)
    journey.until_title("weighs")
    journey.bench.lift()
    journey.until_screen("take cup")
    journey.tap("Next pair")
    assert "Cups of lentils" in journey.seen


def test_the_last_tries_of_a_pair_stand_in_order(journey: Journey) -> None:
    for filled in (102.3, 122.3, 107.3):
        number = journey.take_cup("Heron")
        journey.tap(str(number))
        journey.put(filled)
        journey.until_screen("score")
        journey.clear()
        journey.tap("Home")
    assert [round(error) for error in journey.desk.facts.errors] == [-10, 10, -5]
