"""The tour of guesses: which jar, the number, written down, and the answer for all."""

from __future__ import annotations

from kiosk.ui.tour_hands import Stops
from kiosk.ui.walk import Walker

PAIRS = {"Avocet": 700, "Curlew": 1210, "Dunlin": 1850, "Heron": 1400, "Wren": 2600}


def _which_jar(walker: Walker) -> None:
    walker.tap("Home")
    walker.wait(0.5)
    walker.tap("Guess a jar")
    walker.tap("Avocet")
    walker.wait(0.5)


def _number(walker: Walker) -> None:
    _type(walker, PAIRS["Avocet"])


def _written(walker: Walker) -> None:
    walker.tap("That is our guess")
    walker.wait(0.5)


def _sure(walker: Walker) -> None:
    for team in list(PAIRS)[1:]:
        walker.tap("Next pair")
        walker.tap(team)
        _type(walker, PAIRS[team])
        walker.tap("That is our guess")
    walker.tap("Next pair")
    walker.tap("Show answers")
    walker.tap("Jar A")
    walker.wait(0.5)


def _answer(walker: Walker) -> None:
    walker.tap("Show it to all")
    walker.until(lambda: walker.screen == "answer", "the answer")
    walker.wait(0.5)


def _table(walker: Walker) -> None:
    walker.tap("Home")
    walker.wait(0.5)


def _type(walker: Walker, guess: int) -> None:
    walker.tap("Jar A")
    for digit in str(guess):
        walker.tap(digit)


STOPS: Stops = (
    ("guess-which-jar", _which_jar),
    ("guess", _number),
    ("guess-written-down", _written),
    ("answer-sure", _sure),
    ("answer", _answer),
    ("table", _table),
)
