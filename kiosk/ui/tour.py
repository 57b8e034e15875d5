"""The tour: one pass through both jobs by touch, a stop at each screen.

Each stop is the name of a picture and the way there from the stop before.
"""

from __future__ import annotations

from collections.abc import Callable

from kiosk.ui.walk import Walker

Way = Callable[[Walker], None]
PUT_AWAY, THINGS = "Put away", "Things"


def _things(walker: Walker, *tiles: str) -> None:
    """Lay the things out unless they are, and tap some."""
    if not walker.kiosk.controls.things_out:
        walker.tap(THINGS)
    for tile in tiles:
        walker.tap(tile)


def _put_away(walker: Walker) -> None:
    if walker.kiosk.controls.things_out:
        walker.tap(PUT_AWAY)
    walker.wait(0.5)


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
    _things(walker)
    walker.wait(0.3)


def _weighed(walker: Walker) -> None:
    _things(walker, "empty cup")
    walker.until(lambda: "weighs" in walker.title, "the weighed cup")
    _put_away(walker)


def _fill(walker: Walker) -> None:
    _things(walker, "empty cup")
    walker.until(lambda: walker.screen == "take cup", "the cup to be lifted")
    _put_away(walker)


def _hidden_cup(walker: Walker) -> None:
    walker.tap("Next pair")
    walker.tap("Wren")
    walker.until(lambda: walker.screen == "put on", "the second cup")


def _more_cups_out(walker: Walker) -> None:
    _things(walker, "solid cup")
    walker.until(lambda: walker.title == "This is cup 2.", "the second cup")
    _things(walker, "solid cup")
    walker.until(lambda: walker.screen == "take cup", "the second cup to be lifted")
    _put_away(walker)
    walker.tap("Home")
    walker.wait(0.3)


def _cups_at_home(walker: Walker) -> None:
    walker.tap("Leave")
    walker.wait(0.5)


def _hand_in(walker: Walker) -> None:
    walker.tap("2")
    walker.until(lambda: walker.screen == "hand in", "the hand-in")


def _unplugged(walker: Walker) -> None:
    _things(walker, "Zero, tare, cable", "unplug")
    walker.until(lambda: walker.screen == "trouble", "the trouble")
    _put_away(walker)


def _back_again(walker: Walker) -> None:
    _things(walker, "plug in")
    walker.until(lambda: walker.screen == "hand in", "the scale to be back")
    _things(walker, "Back to the things")
    _put_away(walker)


def _score(walker: Walker) -> None:
    _things(walker, "filled cup 2")
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


def _jar_material(walker: Walker) -> None:
    walker.tap("Keep cup")
    walker.tap("Back")
    walker.wait(0.5)
    walker.tap("Make a count key")
    walker.until(lambda: walker.screen == "choices", "the materials")


def _pan_not_empty(walker: Walker) -> None:
    walker.tap("pasta")
    walker.until(lambda: walker.screen == "put on", "the tray")


def _tray(walker: Walker) -> None:
    _things(walker, "clear pan")
    walker.until(lambda: "tray" in walker.title, "an empty pan")
    _put_away(walker)


def _sample(walker: Walker) -> None:
    _things(walker, "tray of 100")
    walker.until(lambda: _keeps(walker), "a sample at rest")


def _keeps(walker: Walker) -> bool:
    main = walker.kiosk.station.scene().sheet.main
    return main is not None and main.sign == "tick" and main.state == "ready"


def _keep(walker: Walker) -> None:
    main = walker.kiosk.station.scene().sheet.main
    assert main is not None
    walker.tap(main.text)
    walker.wait(0.3)


def _samples(walker: Walker) -> None:
    _things(walker, "empty tray")
    walker.until(lambda: "Count" in walker.title, "the tray")
    _sample(walker)
    _keep(walker)
    _things(walker, "tray of 100")
    walker.wait(2.0)
    _sample(walker)
    _put_away(walker)


def _spread(walker: Walker) -> None:
    _keep(walker)
    _things(walker, "tray of 100")
    walker.wait(2.0)
    _sample(walker)
    _keep(walker)
    _put_away(walker)


def _back_in(walker: Walker) -> None:
    walker.tap("Go on")
    walker.until(lambda: walker.screen == "question", "the question")


def _container(walker: Walker) -> None:
    walker.tap("No")
    _things(walker, "clear pan")
    walker.until(lambda: "jar" in walker.title, "an empty pan")
    _put_away(walker)


def _pour(walker: Walker) -> None:
    _things(walker, "jar")
    walker.until(lambda: walker.screen == "pour" or "Pour" in walker.title, "the jar")
    for _ in range(6):
        walker.tap("pour in")
        walker.wait(3.0)
    _put_away(walker)


def _key(walker: Walker) -> None:
    walker.tap("Stop here")
    walker.until(lambda: walker.screen == "key", "the key")


def _covered(walker: Walker) -> None:
    walker.tap("Cover the big number")
    walker.wait(0.3)


def _saved(walker: Walker) -> None:
    walker.tap("Save as jar A")
    walker.until(lambda: walker.screen == "message", "the saved key")


STATIONS: tuple[tuple[str, Way], ...] = (
    ("01-home", _home),
    ("02-which-pair", _pairs),
    ("03-material", _material),
    ("04-empty-cup", _empty_cup),
    ("05-bench", _bench),
    ("06-cup-weighed", _weighed),
    ("07-fill-the-cup", _fill),
    ("08-empty-cup-hidden", _hidden_cup),
    ("09-leave-the-try", _more_cups_out),
    ("10-cups-out", _cups_at_home),
    ("11-hand-in", _hand_in),
    ("12-unplugged", _unplugged),
    ("13-back-again", _back_again),
    ("14-score", _score),
    ("15-code", _code),
    ("16-throw-a-cup-away", _throw_away),
    ("17-jar-material", _jar_material),
    ("18-pan-not-empty", _pan_not_empty),
    ("19-tray", _tray),
    ("20-samples", _samples),
    ("21-spread", _spread),
    ("22-counted-pieces", _back_in),
    ("23-container", _container),
    ("24-pour", _pour),
    ("25-key", _key),
    ("26-key-covered", _covered),
    ("27-key-saved", _saved),
)
