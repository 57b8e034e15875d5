"""The tour of a cup: the name of each picture, and the way there from the one before."""

from __future__ import annotations

from kiosk.ui.tour_hands import Stops, put_away, things
from kiosk.ui.walk import Walker


def _home(walker: Walker) -> None:
    walker.wait(1.5)


def _pairs(walker: Walker) -> None:
    walker.tap("Fill a cup")
    walker.until(lambda: walker.screen == "choices", "the pairs")


def _material(walker: Walker) -> None:
    walker.tap("Cups of rice")
    walker.wait(0.3)


def _empty_cup(walker: Walker) -> None:
    walker.tap("lentils")
    walker.tap("Heron")
    walker.until(lambda: walker.screen == "put on", "the empty cup")


def _bench(walker: Walker) -> None:
    things(walker)
    walker.wait(0.3)


def _weighed(walker: Walker) -> None:
    things(walker, "empty cup")
    walker.until(lambda: "weighs" in walker.title, "the weighed cup")
    put_away(walker)


def _fill(walker: Walker) -> None:
    things(walker, "empty cup")
    walker.until(lambda: walker.screen == "take cup", "the cup to be lifted")
    put_away(walker)


def _hidden_cup(walker: Walker) -> None:
    walker.tap("Next pair")
    walker.tap("Wren")
    walker.until(lambda: walker.screen == "put on", "the second cup")


def _more_cups_out(walker: Walker) -> None:
    things(walker, "solid cup")
    walker.until(lambda: walker.title == "This is cup 2.", "the second cup")
    things(walker, "solid cup")
    walker.until(lambda: walker.screen == "take cup", "the second cup to be lifted")
    put_away(walker)
    walker.tap("Home")
    walker.wait(0.3)


def _cups_at_home(walker: Walker) -> None:
    walker.tap("Leave")
    walker.wait(0.5)


def _hand_in(walker: Walker) -> None:
    walker.tap("2")
    walker.until(lambda: walker.screen == "hand in", "the hand-in")


def _unplugged(walker: Walker) -> None:
    things(walker, "Zero, tare, cable", "unplug")
    walker.until(lambda: walker.screen == "trouble", "the trouble")
    put_away(walker)


def _back_again(walker: Walker) -> None:
    things(walker, "plug in")
    walker.until(lambda: walker.screen == "hand in", "the scale to be back")
    things(walker, "Back to the things")
    put_away(walker)


def _score(walker: Walker) -> None:
    things(walker, "filled cup 2")
    walker.until(lambda: walker.screen == "score", "the score")
    walker.wait(0.5)


def _code(walker: Walker) -> None:
    walker.tap("Home")
    walker.wait(0.5)
    walker.tap("Throw a cup away")
    walker.until(lambda: walker.screen == "code", "the coach's code")
    for digit in "2718":
        walker.tap(digit)


def _throw_away(walker: Walker) -> None:
    walker.tap("No code yet")
    walker.tap("1")
    walker.until(lambda: walker.screen == "question", "the question")


STOPS: Stops = (
    ("home", _home),
    ("which-pair", _pairs),
    ("material", _material),
    ("empty-cup", _empty_cup),
    ("bench", _bench),
    ("cup-weighed", _weighed),
    ("fill-the-cup", _fill),
    ("empty-cup-hidden", _hidden_cup),
    ("leave-the-try", _more_cups_out),
    ("cups-out", _cups_at_home),
    ("hand-in", _hand_in),
    ("unplugged", _unplugged),
    ("back-again", _back_again),
    ("score", _score),
    ("code", _code),
    ("throw-a-cup-away", _throw_away),
)
