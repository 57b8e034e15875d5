"""A coach's card: one page with a value, its interval and its evidence, hidden when folded.

The upper strip is seen from outside and tells what the card is for. The rest folds in its middle,
its printed side inward.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from kiosk.reports.page import MARGIN, Page
from kiosk.settings import Paper
from kiosk.texts import say

STRIP = 120.0  # what stays outside when the card is folded
SMALL, PLAIN, LARGE = 10.0, 13.0, 54.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """The words of a card. Only ``title`` and the day of ``at`` (UTC) are seen from outside.

    ``columns`` say where each column of ``rows`` begins, as parts of the width between the
    margins; ``heads`` stand over them.
    """

    title: str
    at: datetime
    simulated: bool
    value: str
    sure: str
    facts: tuple[str, ...]
    warnings: tuple[str, ...]
    columns: tuple[float, ...]
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]


def card_page(card: Card, paper: Paper) -> bytes:
    """A PDF of one page."""
    across = say("paper.simulated") if card.simulated else ""
    page = Page(paper, title=card.title, across=across)
    line = page.height - STRIP
    fold = line / 2
    _outside(page, card)
    page.rule(line)
    page.rule(fold, dashed=True)
    _value(page, card, line - MARGIN)
    _evidence(page, card, fold - 2 * PLAIN)
    return page.finish()


def moment(at: datetime) -> str:
    """A time in UTC, to the minute."""
    return f"{at:%Y-%m-%d %H:%M} UTC"


def _outside(page: Page, card: Card) -> None:
    y = page.height - MARGIN - PLAIN
    page.words(MARGIN, y, card.title, 2 * PLAIN, bold=True)
    page.words(page.right, y, f"{card.at:%Y-%m-%d}", PLAIN, at=1)
    y = page.prose(y - 2 * PLAIN, say("paper.card.hide"), PLAIN)
    if card.simulated:
        page.prose(y, say("paper.card.simulated"), PLAIN, bold=True)
    page.words(MARGIN, page.height - STRIP + 5, say("paper.card.fold"), SMALL)


def _value(page: Page, card: Card, y: float) -> None:
    page.words(MARGIN, y - PLAIN, card.value, LARGE)
    y = page.prose(y - 4 * PLAIN, card.sure, PLAIN, bold=True)
    for fact in card.facts:
        y = page.prose(y, fact, PLAIN)
    y -= SMALL
    for warning in card.warnings:
        y = page.prose(y, say("paper.card.warning", warning=warning), SMALL)


def _evidence(page: Page, card: Card, y: float) -> None:
    page.words(MARGIN, y, say("paper.card.evidence"), PLAIN, bold=True)
    y -= 1.6 * PLAIN
    for row in (card.heads, *card.rows):
        for part, text in zip(card.columns, row, strict=True):
            x = MARGIN + part * (page.right - MARGIN)
            page.words(x, y, text, SMALL, bold=row is card.heads)
        y -= 1.4 * SMALL
    y -= SMALL / 2
    for note in card.notes:
        y = page.prose(y, note, SMALL)
