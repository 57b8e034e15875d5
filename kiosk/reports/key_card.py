"""The coach's card of a count key: every mass that counts, with what was taken off it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
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

ROWS = 11  # of samples and lots, as many as half a page holds

Row = tuple[str, str, str, str, str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """A full container and the same one empty."""

    gross: Weighing
    tare: Weighing

    @property
    def net(self) -> Decimal:
        """What was in it, in grams."""
        return Evidence(gross=self.gross, tare=self.tare).net


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
        notes=(*_in_lots(draft), _steps(weighings), _balances(weighings), _made(made)),
    )
    return card_page(card, paper)


def _facts(draft: KeyDraft, made: KeyMade) -> Iterator[str]:
    yield say("paper.card.score", points=number(made.score_effect, 1))
    yield say("paper.card.material", material=_material(draft.material))
    yield say("paper.card.piece", mass=grams(made.piece_mass_g))
    yield say("paper.card.back_in" if made.from_container else "paper.card.back_out")
    if draft.bits is not None:
        yield say("paper.card.bits" if draft.bits else "paper.card.whole")


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
    if tray is not None:
        yield _row(say("paper.card.tray"), tray)
    samples = [mass for mass in draft.masses if mass.role == MassRole.SAMPLE]
    for place, sample in enumerate(samples, start=1):
        net_of = sample.tare or tray
        words = say("paper.card.sample", place=place)
        yield _row(words, sample.weighing, net_of, pieces=str(draft.pieces))
    yield from _lots(draft) if draft.in_lots else _fill(draft)


def _fill(draft: KeyDraft) -> Iterator[Row]:
    for fill in _fills(draft):
        yield _row(say("paper.card.empty"), fill.tare)
        yield _row(say("paper.card.filled"), fill.gross, fill.tare)


def _lots(draft: KeyDraft) -> Iterator[Row]:
    """A row for each of the first lots, and their sum for those that have no room."""
    fills, room = _fills(draft), max(1, ROWS - len(draft.of(MassRole.SAMPLE)))
    listed = len(fills) if len(fills) <= room else room - 1
    for place, fill in enumerate(fills[:listed], start=1):
        yield _row(say("paper.card.lot", place=place), fill.gross, fill.tare)
    others = fills[listed:]
    if others:
        net = sum((fill.net for fill in others), Decimal(0))
        names = say("paper.card.lot.others", first=listed + 1, last=len(fills))
        yield (names, "", "", grams(net, others[0].gross.readability), "", "")


def _fills(draft: KeyDraft) -> list[Fill]:
    """Each full mass with the empty one that was weighed before it."""
    fills, empty = [], None
    for mass in draft.masses:
        if mass.role == MassRole.EMPTY:
            empty = mass.weighing
        elif mass.role == MassRole.FILLED and empty is not None:
            fills.append(Fill(gross=mass.weighing, tare=empty))
    return fills


def _in_lots(draft: KeyDraft) -> tuple[str, ...]:
    return (say("paper.card.in_lots"),) if draft.in_lots else ()


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
