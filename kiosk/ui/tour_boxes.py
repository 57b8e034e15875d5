"""The tour of a volume key: the shape, the ruler, each edge at two places, the volume."""

from __future__ import annotations

from kiosk.ui.tour_hands import Stops
from kiosk.ui.walk import Walker


def _shape(walker: Walker) -> None:
    walker.tap("Home")
    walker.wait(0.5)
    walker.tap("Measure a box")
    walker.until(lambda: walker.screen == "choices", "the shapes")


def _ruler(walker: Walker) -> None:
    walker.tap("box")
    walker.wait(0.3)


def _edges(walker: Walker) -> None:
    walker.tap("centimetres")
    for size in ("18.4", "18.5", "12.6", "12.6", "9.2"):
        _keep(walker, size)
    _type(walker, "9.3")


def _unlikely(walker: Walker) -> None:
    walker.tap("Keep 9.3 cm")
    walker.tap("Measure more")
    _keep(walker, "92")


def _volume(walker: Walker) -> None:
    walker.tap("Type it again")
    _keep(walker, "9.25")
    walker.until(lambda: walker.screen == "key", "the volume")


def _saved(walker: Walker) -> None:
    walker.tap("Save as box 1")
    walker.until(lambda: walker.screen == "message", "the saved key")


def _type(walker: Walker, size: str) -> None:
    for sign in size:
        walker.tap(sign)


def _keep(walker: Walker, size: str) -> None:
    _type(walker, size)
    main = walker.kiosk.station.scene().sheet.main
    assert main is not None
    walker.tap(main.text)
    walker.wait(0.3)


STOPS: Stops = (
    ("box-shape", _shape),
    ("box-ruler", _ruler),
    ("box-edges", _edges),
    ("box-unlikely", _unlikely),
    ("box-volume", _volume),
    ("box-saved", _saved),
)
