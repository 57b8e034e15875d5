"""Labels for jars and boxes: a big letter or number, and nothing that helps to guess."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.reports.fonts import width
from kiosk.reports.page import MARGIN, Page
from kiosk.settings import Paper
from kiosk.texts import say

COLUMNS = ROWS = 2
WIDEST = "W"  # all letters are as large as this one can be; numbers of two digits are smaller
FILLED = 0.8  # of a label's width by the widest letter
CAPITAL = 0.711  # height of Roboto's capitals, in sizes of the type
SMALL = 12.0


def jar_labels(letters: Sequence[str], paper: Paper, *, simulated: bool) -> bytes:
    """A PDF with one label for each of ``letters``, four on a page."""
    page = Page(paper, title=say("paper.label.head"))
    wide = (page.width - 2 * MARGIN) / COLUMNS
    high = (page.height - 2 * MARGIN) / ROWS
    for place, letter in enumerate(letters):
        row, column = divmod(place % (COLUMNS * ROWS), COLUMNS)
        if place and (row, column) == (0, 0):
            page.turn()
        left, bottom = MARGIN + column * wide, page.height - MARGIN - (row + 1) * high
        page.dashed_box(left, bottom, wide, high)
        _letter(page, letter, left + wide / 2, bottom + high / 2, wide)
        if simulated:  # on each, since they are cut apart
            page.words(left + wide / 2, bottom + SMALL, say("paper.simulated"), SMALL, at=0.5)
    return page.finish()


def _letter(page: Page, letter: str, x: float, y: float, wide: float) -> None:
    size = FILLED * wide / max(width(text, 1, bold=True) for text in (WIDEST, letter))
    base = y - CAPITAL * size / 2
    page.words(x, base, letter, size, bold=True, at=0.5)
    # On a round jar M and W, or N and Z, are told apart by what is below.
    page.bar(x - size / 4, base - size / 4, size / 2, size / 18)
