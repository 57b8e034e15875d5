"""The coach's card of a count key: the value with its interval, and the evidence for it.

The upper strip is seen from outside and tells which jar it is. The rest folds in its middle, its
printed side inward, so that the value is hidden.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from decimal import Decimal

from kiosk.evidence import Evidence, Weighing
from kiosk.records.entries import KeyMade, MassRole
from kiosk.records.kept import KeyDraft, StoredKey
from kiosk.reports.page import MARGIN, Page
from kiosk.settings import Paper
from kiosk.texts import say
from kiosk.texts.catalogue import ENGLISH
from kiosk.texts.numbers import grams, number, percent

STRIP = 120.0  # what stays outside when the card is folded
SMALL, PLAIN, LARGE = 10.0, 13.0, 54.0
# Left ends of the columns of the evidence, as parts of the width between the margins.
COLUMNS = (0.0, 0.2, 0.32, 0.48, 0.64, 0.86)

Row = tuple[str, str, str, str, str, str]


def key_card(key: StoredKey, paper: Paper) -> bytes:
    """A PDF of one page for a key that was made."""
    draft, made = key.draft, key.made
    title = say("paper.card.title", letter=made.letter)
    page = Page(paper, title=title, across=say("paper.simulated") if draft.simulated else "")
    line = page.height - STRIP
    fold = line / 2
    _outside(page, draft, made)
    page.rule(line)
    page.rule(fold, dashed=True)
    _value(page, draft, made, line - MARGIN)
    _evidence(page, draft, made, fold - 2 * PLAIN)
    return page.finish()


def _outside(page: Page, draft: KeyDraft, made: KeyMade) -> None:
    y = page.height - MARGIN - PLAIN
    page.words(MARGIN, y, say("paper.card.title", letter=made.letter), 2 * PLAIN, bold=True)
    page.words(page.right, y, _day(made.at), PLAIN, at=1)
    y = page.prose(y - 2 * PLAIN, say("paper.card.hide"), PLAIN)
    if draft.simulated:
        page.prose(y, say("paper.card.simulated"), PLAIN, bold=True)
    page.words(MARGIN, page.height - STRIP + 5, say("paper.card.fold"), SMALL)


def _value(page: Page, draft: KeyDraft, made: KeyMade, y: float) -> None:
    page.words(MARGIN, y - PLAIN, say("paper.card.count", count=number(made.count)), LARGE)
    y = page.prose(
        y - 4 * PLAIN,
        say("paper.card.sure", low=number(made.low), high=number(made.high),
            percent=percent(made.half_width_percent)),
        PLAIN,
        bold=True,
    )  # fmt: skip
    for sentence in _facts(draft, made):
        y = page.prose(y, sentence, PLAIN)
    y -= SMALL
    for warning in made.warnings:
        y = page.prose(y, say("paper.card.warning", warning=warning), SMALL)


def _facts(draft: KeyDraft, made: KeyMade) -> Iterator[str]:
    yield say("paper.card.score", points=number(made.score_effect, 1))
    yield say("paper.card.material", material=_material(draft.material))
    yield say("paper.card.piece", mass=grams(made.piece_mass_g))
    yield say("paper.card.back_in" if made.from_container else "paper.card.back_out")


def _material(name: str) -> str:
    """The word for a material; one that another kiosk was told stands for itself."""
    key = f"key.material.{name.replace(' ', '_')}"
    return say(key) if key in ENGLISH else name


def _evidence(page: Page, draft: KeyDraft, made: KeyMade, y: float) -> None:
    page.words(MARGIN, y, say("paper.card.evidence"), PLAIN, bold=True)
    y -= 1.6 * PLAIN
    heads = tuple(
        say(f"paper.card.column.{name}")
        for name in ("what", "pieces", "shown", "net", "at", "source")
    )
    for row in (heads, *_rows(draft)):
        for part, text in zip(COLUMNS, row, strict=True):
            page.words(MARGIN + part * (page.right - MARGIN), y, text, SMALL, bold=row is heads)
        y -= 1.4 * SMALL
    y -= SMALL / 2
    weighings = [mass.weighing for mass in draft.masses]
    for sentence in (_steps(weighings), _balances(weighings), _made(made)):
        y = page.prose(y, sentence, SMALL)


def _rows(draft: KeyDraft) -> Iterator[Row]:
    """The masses that count, each with what was taken off it."""
    tray = next(iter(draft.of(MassRole.TRAY)), None)
    empty = next(iter(draft.of(MassRole.EMPTY)), None)
    if tray is not None:
        yield _row(say("paper.card.tray"), tray)
    for place, sample in enumerate(draft.of(MassRole.SAMPLE), start=1):
        yield _row(say("paper.card.sample", place=place), sample, tray, pieces=str(draft.pieces))
    if empty is not None:
        yield _row(say("paper.card.empty"), empty)
    for filled in draft.of(MassRole.FILLED):
        yield _row(say("paper.card.filled"), filled, empty)


def _row(name: str, shown: Weighing, tare: Weighing | None = None, *, pieces: str = "") -> Row:
    net = grams(Evidence(gross=shown, tare=tare).net, shown.readability) if tare else ""
    mass = grams(shown.grams, shown.readability)
    return name, pieces, mass, net, _moment(shown.at), say(f"paper.source.{shown.source}")


def _steps(weighings: list[Weighing]) -> str:
    steps: list[Decimal] = sorted({each.readability for each in weighings if each.readability})
    if not steps:
        return say("paper.card.no_steps")
    return say("paper.card.steps", steps=", ".join(grams(step) for step in steps))


def _balances(weighings: list[Weighing]) -> str:
    names = dict.fromkeys(each.balance for each in weighings)
    return say("paper.card.balance", balance=", ".join(names))


def _made(made: KeyMade) -> str:
    return say("paper.card.made", at=_moment(made.at), id=made.key_id)


def _day(at: datetime) -> str:
    return f"{at:%Y-%m-%d}"


def _moment(at: datetime) -> str:
    return f"{at:%Y-%m-%d %H:%M} UTC"
