"""The tour of the scale: what it is, which others there are, and whether it is right."""

from __future__ import annotations

from kiosk.ui.tour_hands import Stops, put_away, things
from kiosk.ui.walk import Walker


def _scale(walker: Walker) -> None:
    _nothing_on(walker)
    walker.tap("The scale")
    walker.wait(3.0)


def _nothing_on(walker: Walker) -> None:
    """Whatever still lies on the pan goes."""
    assert walker.kiosk.table is not None
    walker.kiosk.table.bench.lift()
    walker.wait(2.0)


def _scales(walker: Walker) -> None:
    walker.tap("Another scale")
    walker.wait(0.5)


def _kit(walker: Walker) -> None:
    walker.tap("Back")
    walker.wait(0.5)
    walker.tap("Check the scale")
    walker.wait(0.5)


def _loads(walker: Walker) -> None:
    walker.tap("Weights M1")
    walker.wait(0.5)


def _load(walker: Walker) -> None:
    walker.tap("100 g weight")
    walker.until(lambda: "Put the" in walker.title, "the first load")
    things(walker, "100 g weight")
    walker.until(lambda: walker.title == "Take it off.", "the weighed load")
    put_away(walker)


STOPS: Stops = (
    ("scale", _scale),
    ("which-scale", _scales),
    ("check-with-what", _kit),
    ("check-which-load", _loads),
    ("check-weighed", _load),
)
