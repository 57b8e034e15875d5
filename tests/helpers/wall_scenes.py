"""The clock for the class as scenes: on every kind of scale, with the longest sentences."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from kiosk.ui.presenters.scene import Scene
from kiosk.ui.presenters.views import PanView, SheetView, StripView
from kiosk.ui.presenters.wall_views import WallView

RUNNING = WallView(
    time="18:42",
    beads=18,
    part=0.7,
    of=30,
    legend="one bead, one minute",
    corner="Larch Hill Middle School, Grades 4 to 6, sitting 12",
    sentence="19 of 20 cups are in",
    cup=True,
)
SIGN = replace(RUNNING, time="9:48", beads=9, sentence="10 minutes left", cup=False, sign=True)
PAUSED = replace(
    RUNNING,
    time="119:59",
    beads=119,
    of=120,
    sentence="Paused: somebody of the Great Crested Grebes is ill, they wait",
    cup=False,
    quiet=True,
)
OVER = replace(RUNNING, time="0:00", beads=0, part=0.0, sentence="12 teams have more time")


def shown(sheet: SheetView, *, simulated: bool = False) -> Scene:
    """With the strip that goes away where nothing is simulated."""
    words = ("Scale connected", "Round")
    strip = StripView(words=words, simulated=simulated, plate="SIMULATED SCALE")
    return Scene(sheet=sheet, pan=PanView(), strip=strip)


def scenes() -> dict[str, Callable[[], Scene]]:
    """By name, made when they are wanted."""
    return {
        "wall": lambda: shown(RUNNING),
        "wall, simulated": lambda: shown(RUNNING, simulated=True),
        "wall, a sign": lambda: shown(SIGN),
        "wall, paused": lambda: shown(PAUSED, simulated=True),
        "wall, over": lambda: shown(OVER),
    }
