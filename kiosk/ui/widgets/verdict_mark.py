"""The three verdicts of a check, in ink alone and told apart by their shape."""

from __future__ import annotations

from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.pencil import Pencil


def draw_verdict(pencil: Pencil, verdict: str, x: float, y: float, radius: float) -> None:
    """A round tick for fine, a square cross for not fine, an open ring for cannot tell."""
    if verdict == "fine":
        mark.badge(pencil, "tick", x, y, radius)
    elif verdict == "not fine":
        pencil.box(x - radius, y - radius, 2 * radius, 2 * radius, radius / 5, theme.ink)
        mark.SIGNS["cross"](pencil, x, y, radius, theme.sheet)
    elif verdict == "cannot tell":
        pencil.ring(x, y, radius - 1.5, 3, theme.ink)
        mark.SIGNS["level"](pencil, x, y, radius, theme.ink)
