"""A tent as small as a cell of a table: no numbers, the mark on its plumb line."""

from __future__ import annotations

from kiosk.ui.presenters.result_words import ScoreMark
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tent_shape import TentShape

MARKER = 6.4


def draw_small_tent(
    pencil: Pencil, tent: TentShape, shown: ScoreMark, *, marker: float = MARKER
) -> None:
    """Draw it; without an answer the tent is empty."""
    peak, foot = tent.at(1), (tent.x(1), tent.base)
    pencil.fill([tent.at(0), peak, foot], theme.under_t)
    pencil.fill([tent.at(2), peak, foot], theme.over_t)
    pencil.stroke([tent.at(0), peak, tent.at(2)], 2, theme.line)
    pencil.stroke([(tent.x(0), tent.base), (tent.x(2), tent.base)], 2, theme.ink)
    if shown.share is None or not shown.side:
        return
    x, y = tent.at(shown.share)
    y = min(y, tent.base - marker * 0.4)  # a mark on the peg stays to be seen
    colour = mark.DATA_COLOURS[shown.side]
    if y + marker < tent.base:
        pencil.stroke([(x, y), (x, tent.base)], 3, colour)
    pencil.disc(x, y, marker + 1.6, theme.sheet)
    mark.SIGNS[shown.side](pencil, x, y, marker, colour)
