"""The coach's card of a count key: every mass that counts, with what was taken off it."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from kiosk.evidence import Evidence, Weighing
from kiosk.records.entries import KeyMade, MassRole
from kiosk.records.kept import KeyDraft, StoredKey
from kiosk.reports.card import Card, card_page, moment
from kiosk.settings import Paper
from kiosk.texts import say
from kiosk.texts.catalogue import ENGLISH
from kiosk.texts.numbers import grams, number, percent

COLUMNS = (0.0, 0.2, 0.32, 0.48, 0.64, 0.86)

Row = tuple[str, str, str, str, str, str]


def key_card(key: StoredKey, paper: Paper) -> bytes:
    """A PDF of one page for a key that was made."""
    draft, made = key.draft, key.made
    weighings = [mass.weighing for mass in draft.masses]
    card = Card(
        title=say("paper.card.head", letter=made.letter),
        at=made.at,
        simulated=draft.simulated,
        value=say("paper.card.count", count=number(made.count)),
        sure=say(
            "paper.card.sure",
            low=number(made.low),
            high=number(made.high),
            percent=percent(made.half_width_percent),
        ),
        facts=tuple(_facts(draft, made)),
        warnings=made.warnings,
        columns=COLUMNS,
        heads=_heads(),
        rows=tuple(_rows(draft)),
        notes=(_steps(weighings), _balances(weighings), _made(made)),
    )
    return card_page(card, paper)


def _facts(draft: KeyDraft, made: KeyMade) -> Iterator[str]:
    yield say("paper.card.score", points=number(made.score_effect, 1))
    yield say("paper.card.material", material=_material(draft.material))
    yield say("paper.card.piece", mass=grams(made.piece_mass_g))
    yield say("paper.card.back_in" if made.from_container else "paper.card.back_out")


def _material(name: str) -> str:
    """The word for a material; one that another kiosk was told stands for itself."""
    key = f"key.material.{name.replace(' ', '_')}"
    return say(key) if key in ENGLISH else name


def _heads() -> Row:
    return (
        say("paper.card.column.what"),
        say("paper.card.column.pieces"),
        say("paper.card.column.shown"),
        say("paper.card.column.net"),
        say("paper.card.column.at"),
        say("paper.card.column.source"),
    )


def _rows(draft: KeyDraft) -> Iterator[Row]:
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
    return name, pieces, mass, net, moment(shown.at), say(f"paper.source.{shown.source}")


def _steps(weighings: list[Weighing]) -> str:
    steps: list[Decimal] = sorted({each.readability for each in weighings if each.readability})
    if not steps:
        return say("paper.card.no_steps")
    return say("paper.card.steps", steps=", ".join(grams(step) for step in steps))


def _balances(weighings: list[Weighing]) -> str:
    names = dict.fromkeys(each.balance for each in weighings)
    return say("paper.card.balance", balance=", ".join(names))


def _made(made: KeyMade) -> str:
    return say("paper.card.made", at=moment(made.at), id=made.key_id)
