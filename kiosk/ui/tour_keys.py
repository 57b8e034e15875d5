"""The tour of a count key: the name of each picture, and the way there from the one before."""

from __future__ import annotations

from kiosk.ui.tour_hands import Stops, put_away, things
from kiosk.ui.walk import Walker


def _jar_material(walker: Walker) -> None:
    walker.tap("Keep cup")
    walker.tap("Back")
    walker.wait(0.5)
    walker.tap("Make a count key")
    walker.until(lambda: walker.screen == "choices", "the materials")


def _broken_bits(walker: Walker) -> None:
    walker.tap("pasta")
    walker.until(lambda: walker.screen == "question", "the question about bits")


def _pan_not_empty(walker: Walker) -> None:
    walker.tap("No, whole only")
    walker.until(lambda: walker.screen == "put on", "the tray")


def _tray(walker: Walker) -> None:
    things(walker, "clear pan")
    walker.until(lambda: "tray" in walker.title, "an empty pan")
    put_away(walker)


def _sample(walker: Walker, thing: str = "100 more") -> None:
    things(walker, thing)
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
    things(walker, "empty tray")
    walker.until(lambda: "Count" in walker.title, "the tray")
    _sample(walker, "tray of 100")
    _keep(walker)
    _sample(walker)
    put_away(walker)


def _spread(walker: Walker) -> None:
    _keep(walker)
    _sample(walker)
    _keep(walker)
    put_away(walker)


def _back_in(walker: Walker) -> None:
    walker.tap("Go on")
    walker.until(lambda: walker.screen == "question", "the question")


def _how_full(walker: Walker) -> None:
    walker.tap("No")
    walker.until(lambda: walker.screen == "choices", "the goals")


def _container(walker: Walker) -> None:
    walker.tap("thousands")
    things(walker, "clear pan")
    walker.until(lambda: "jar" in walker.title, "an empty pan")
    put_away(walker)


def _pour(walker: Walker) -> None:
    things(walker, "jar")
    walker.until(lambda: walker.screen == "pour" or "Pour" in walker.title, "the jar")
    for _ in range(6):
        walker.tap("pour in")
        walker.wait(3.0)
    put_away(walker)


def _bags(walker: Walker) -> None:
    walker.tap("Stop here")
    walker.until(lambda: walker.screen == "question", "the question about bags")


def _key(walker: Walker) -> None:
    walker.tap("Yes, all of it")
    walker.until(lambda: walker.screen == "key", "the key")


def _covered(walker: Walker) -> None:
    walker.tap("Cover the big number")
    walker.wait(0.3)


def _saved(walker: Walker) -> None:
    walker.tap("Save as jar A")
    walker.until(lambda: walker.screen == "message", "the saved key")


STOPS: Stops = (
    ("jar-material", _jar_material),
    ("broken-bits", _broken_bits),
    ("pan-not-empty", _pan_not_empty),
    ("tray", _tray),
    ("samples", _samples),
    ("spread", _spread),
    ("counted-pieces", _back_in),
    ("how-full", _how_full),
    ("container", _container),
    ("pour", _pour),
    ("bags", _bags),
    ("key", _key),
    ("key-covered", _covered),
    ("key-saved", _saved),
)
