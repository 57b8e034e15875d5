"""What hangs at the table: what to see to on the day, and what a new helper does."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kiosk.reports.day_points import DayList, groups
from kiosk.reports.fonts import width
from kiosk.reports.page import LEADING, MARGIN, Page, numbered
from kiosk.settings import Paper
from kiosk.texts import say

TITLE, HEAD, PLAIN, SMALL = 26.0, 13.0, 11.0, 8.5
TICK = 10.0
INDENT = 20.0
BETWEEN = 5.0  # points of a list
SIGNED = 60.0  # for the last sentence and the signature
LARGER = 14.0  # what a helper reads while standing


def day_list(day: DayList, paper: Paper) -> bytes:
    """A PDF with a box to tick for each point; one page on a usual day."""
    return numbered(lambda pages: _day_list(day, paper, pages))


def _day_list(day: DayList, paper: Paper, pages: int) -> Page:
    where = ", ".join(part for part in (day.round_name, day.place, day.day) if part)
    page = Page(paper, title=say("paper.day.head"), foot=where, of=pages)
    y = _title(page, say("paper.day.head"), where)
    for name, points in groups(day):
        y = _room(page, y, 3 * HEAD)
        page.words(MARGIN, y, name, HEAD, bold=True)
        y -= 1.6 * HEAD
        for point in points:
            y = _point(page, y, point.text)
            y = _labels(page, y, [words for _, words in point.parts])
        y -= 0.5 * HEAD
    _signed(page, _room(page, y, SIGNED))
    return page


def _point(page: Page, y: float, point: str) -> float:
    y = _room(page, y, len(page.lines(point, PLAIN, indent=INDENT)) * LEADING * PLAIN)
    page.box(MARGIN, y - 1, TICK, TICK)
    return page.prose(y, point, PLAIN, indent=INDENT) - BETWEEN


def _labels(page: Page, y: float, labels: Sequence[str]) -> float:
    """Boxes to tick beside one another, in as many lines as they need."""
    x = MARGIN + INDENT
    for place, label in enumerate(labels):
        room = page.right - MARGIN - INDENT - 1.5 * TICK
        size = page.room(label, PLAIN, room)
        wide = 1.5 * TICK + width(label, size) + 1.6 * TICK
        if place and x + wide - 1.6 * TICK > page.right:
            x, y = MARGIN + INDENT, _room(page, y - LEADING * PLAIN - BETWEEN, PLAIN)
        page.box(x, y - 1, TICK, TICK)
        page.words(x + 1.5 * TICK, y, label, size)
        x += wide
    return y - LEADING * PLAIN - BETWEEN if labels else y


def _signed(page: Page, y: float) -> None:
    y = page.prose(y, say("paper.day.local"), PLAIN) - 2 * PLAIN
    middle = MARGIN + 0.64 * (page.right - MARGIN)
    page.stroke((MARGIN, y), (middle - INDENT, y))
    page.words(MARGIN, y - PLAIN, say("paper.day.signature"), SMALL)
    page.stroke((middle, y), (page.right, y))
    page.words(middle, y - PLAIN, say("paper.day.when"), SMALL)


def _room(page: Page, y: float, high: float) -> float:
    """``y``, or the top of the next page if there is not so much room below."""
    if y - high + LEADING * PLAIN >= MARGIN:
        return y
    page.turn()
    return page.top - PLAIN


def helpers_card(paper: Paper) -> bytes:
    """A PDF of one page for somebody who has never seen the kiosk."""
    page = Page(paper, title=say("paper.helper.head"))
    y = _title(page, say("paper.helper.head"), "")
    y = page.prose(y, say("paper.helper.begin"), LARGER) - LARGER
    for name, steps in _duties():
        page.words(MARGIN, y, name, 1.2 * LARGER, bold=True)
        y -= 1.8 * LARGER
        for place, sentence in enumerate(steps, start=1):
            page.words(MARGIN, y, f"{place}", LARGER, bold=True)
            y = page.prose(y, sentence, LARGER, indent=INDENT) - BETWEEN
        y -= LARGER
    return page.finish()


def _duties() -> Iterator[tuple[str, tuple[str, ...]]]:
    yield say("paper.helper.cups"), (
        say("paper.helper.cup_on"), say("paper.helper.cup_off"), say("paper.helper.cup_next"),
        say("paper.helper.cup_brush"), say("paper.helper.cup_wrong"),
        say("paper.helper.cup_trouble"),
    )  # fmt: skip
    yield say("paper.helper.sheets"), (
        say("paper.helper.sheet_type"), say("paper.helper.sheet_blank"),
        say("paper.helper.sheet_unreadable"), say("paper.helper.sheet_again"),
        say("paper.helper.sheet_pile"),
    )  # fmt: skip
    yield say("paper.helper.always"), (
        say("paper.helper.no_numbers"), say("paper.helper.no_help"), say("paper.helper.ask"),
    )  # fmt: skip


def _title(page: Page, title: str, below: str) -> float:
    """The baseline below it."""
    y = page.top - TITLE
    page.words(MARGIN, y, title, TITLE, bold=True)
    y -= 1.9 * PLAIN
    if below:
        page.name(MARGIN, y, below, PLAIN, page.right - MARGIN)
    return y - 2.2 * PLAIN
