"""Words that are too long for their place: set a little smaller, then cut in the middle."""

from __future__ import annotations

from functools import lru_cache

from kiosk.ui.widgets.pencil import text_width

SMALLEST_SHARE = 0.84  # of the size, before anything is cut
ELLIPSIS = "\u2026"


@lru_cache(maxsize=1024)
def cut_words(words: str, size: float, room: float, *, bold: bool = True) -> str:
    """As much of ``words`` as fit ``room`` pixels at a size a little below ``size``.

    The end of a name tells it from others as much as its beginning: the middle goes.
    """
    smallest = round(size * SMALLEST_SHARE)
    if text_width(words, smallest, bold) <= room:
        return words
    for kept in range(len(words) - 1, 1, -1):
        tail = kept // 3
        cut = words[: kept - tail].rstrip() + ELLIPSIS + (words[-tail:] if tail else "")
        if text_width(cut, smallest, bold) <= room:
            return cut
    return ELLIPSIS
