"""Closed jars by touch: weighed once after the key, and checked again on the morning."""

from __future__ import annotations

from decimal import Decimal

from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands

LID_G = 9.4


def close(hands: KeyHands) -> None:
    """The lid goes on while the jar is off the pan."""
    hands.jar.mass += LID_G


def closed_key(journey: Journey) -> KeyHands:
    """A key whose jar was weighed closed."""
    hands = KeyHands(journey)
    hands.to_key()
    journey.tap("Save as jar A")
    journey.until_title("Jar A is kept.")
    journey.tap("Weigh it closed")
    journey.until_title("Take everything off.")
    hands.lift()
    close(hands)
    journey.until_title("Put jar A on, closed.")
    journey.bench.put(hands.jar)
    journey.until_title("Jar A is known closed.")
    return hands


def check(journey: Journey, hands: KeyHands) -> None:
    """From home to the jar that lies on the pan."""
    journey.tap("Make a count key")
    journey.tap("Check jars")
    journey.until_title("Which jar is on the scale?")
    journey.tap("Jar A")
    journey.until_title("Put jar A on, closed.")
    journey.bench.put(hands.jar)


def test_a_new_key_ends_with_its_jar_weighed_closed(journey: Journey) -> None:
    hands = closed_key(journey)
    ((role, grams),) = journey.kept(
        "SELECT role, grams FROM jars_weighed JOIN weighings ON weighings.id = weighing_id"
    )
    assert role == "closed"
    assert abs(Decimal(str(grams)) - Decimal(hands.jar.grams)) < Decimal("0.2")
    hands.lift()
    journey.until_screen("home")


def test_that_can_be_left_out(journey: Journey) -> None:
    KeyHands(journey).to_key()
    journey.tap("Save as jar A")
    journey.until_title("Jar A is kept.")
    journey.tap("Home")
    journey.until_screen("home")
    assert journey.rows("jars_weighed") == 0


def test_a_jar_that_nobody_touched_is_the_same_within_seconds(journey: Journey) -> None:
    hands = closed_key(journey)
    hands.lift()
    check(journey, hands)
    began = journey.kiosk.station.desk.world.now()
    journey.until_title("Jar A is the same.")
    assert journey.kiosk.station.desk.world.now() - began < 10
    hands.lift()
    journey.until_title("Which jar is on the scale?")
    assert "the same" in journey.seen


def test_a_jar_that_lost_pieces_is_found_out(journey: Journey) -> None:
    hands = closed_key(journey)
    hands.lift()
    each = hands.jar.filling / hands.jar.pieces
    hands.jar.filling -= 20 * each
    hands.jar.pieces -= 20
    check(journey, hands)
    journey.until_title("lighter.")
    (told,) = [text for text in journey.texts() if text.startswith("About")]
    words = told.split("\n")[0].replace(":", "").replace(".", "").split()
    low, high = int(words[3]), int(words[5])
    assert abs(int(words[1]) - 20) <= 1
    assert low <= 20 <= high
    assert journey.kept("SELECT role FROM jars_weighed") == [("closed",), ("checked",)]


def test_a_jar_never_weighed_closed_is_asked_about(journey: Journey) -> None:
    hands = KeyHands(journey)
    hands.to_key()
    journey.tap("Save as jar A")
    journey.until_title("Jar A is kept.")
    journey.tap("Home")
    hands.lift()
    close(hands)
    check(journey, hands)
    journey.until_title("Weigh jar A closed?")
    journey.tap("Yes, it is jar A")
    journey.until_title("Jar A is known closed.")


def test_jars_can_be_checked_while_a_key_waits_to_be_gone_on_with(journey: Journey) -> None:
    hands = closed_key(journey)
    hands.lift()
    half_made = KeyHands(journey)
    half_made.begin()
    half_made.weigh_tray()
    journey.tap("Home")
    journey.tap("Leave")
    journey.clear()
    check(journey, hands)
    journey.until_title("Jar A is the same.")
    journey.tap("Home")
    journey.tap("Make a count key")
    assert "Go on with" in journey.title
