"""Where words stand on a printed page, as rectangles; whether any two of them touch."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import Any

from pypdf import PageObject

from kiosk.reports.fonts import width

CAPITAL, BELOW = 0.71, 0.21  # of the size, above and below the baseline


@dataclass(frozen=True, slots=True)
class Words:
    """A run of upright text and the rectangle that it covers, in points."""

    text: str
    left: float
    bottom: float
    right: float
    top: float

    def touches(self, other: Words) -> bool:
        return (
            self.left < other.right
            and other.left < self.right
            and self.bottom < other.top
            and other.bottom < self.top
        )


def words_of(page: PageObject) -> list[Words]:
    """All upright runs of text on a page."""
    found = []

    def visit(text: str, page_place: Any, text_place: Any, font: Any, size: float) -> None:
        if not text.strip() or page_place[1] != 0:
            return
        x, y = text_place[4] + page_place[4], text_place[5] + page_place[5]
        wide = width(text.strip("\n"), size, bold="Bold" in font["/BaseFont"])
        found.append(Words(text.strip(), x, y - BELOW * size, x + wide, y + CAPITAL * size))

    page.extract_text(visitor_text=visit)
    return found


def touching(page: PageObject) -> list[tuple[str, str]]:
    """Each two runs of text that lie over one another."""
    return [(a.text, b.text) for a, b in combinations(words_of(page), 2) if a.touches(b)]
