"""Words that are too long for their place are cut in the middle, before they become too small."""

from __future__ import annotations

from functools import lru_cache

from kiosk.ui.theme import theme
from kiosk.ui.widgets.pencil import text_width

ELLIPSIS = "\u2026"
LINE, WRAPPED = 1.2, 0.85  # height of a line as multiple of its type; what wrapping leaves of it


@lru_cache(maxsize=1024)
def cut_words(words: str, smallest: float, room: float, *, bold: bool = True) -> str:
    """As much of ``words`` as fit ``room`` pixels in a type of ``smallest`` pixels.

    The end of a name tells it from others as much as its beginning: the middle goes.
    """
    smallest = round(smallest)
    if text_width(words, smallest, bold) <= room:
        return words
    for kept in range(len(words) - 1, 1, -1):
        tail = kept // 3
        cut = words[: kept - tail].rstrip() + ELLIPSIS + (words[-tail:] if tail else "")
        if text_width(cut, smallest, bold) <= room:
            return cut
    return ELLIPSIS


def cut_lines(words: str, width: float, height: float, *, bold: bool = True) -> str:
    """As much of ``words`` as fit a label of that size at the smallest legible type."""
    if width < 1 or height < 1:
        return words
    lines = max(1, int(height / (LINE * theme.text_floor)))
    room = width if lines == 1 else lines * width * WRAPPED
    return cut_words(words, theme.text_floor, round(room), bold=bold)
