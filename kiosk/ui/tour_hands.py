"""What hands do at every stop of the tour."""

from __future__ import annotations

from collections.abc import Callable

from kiosk.ui.walk import Walker

Way = Callable[[Walker], None]
Stops = tuple[tuple[str, Way], ...]
PUT_AWAY, THINGS = "Put away", "Things"


def things(walker: Walker, *tiles: str) -> None:
    """Lay the things out unless they are, and tap some."""
    if not walker.kiosk.controls.things_out:
        walker.tap(THINGS)
    for tile in tiles:
        walker.tap(tile)


def put_away(walker: Walker) -> None:
    """Put the things away, if they are out."""
    if walker.kiosk.controls.things_out:
        walker.tap(PUT_AWAY)
    walker.wait(0.5)
