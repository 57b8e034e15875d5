"""The coach's card of a volume key: every size that counts, or every mass of a water key."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal

from kiosk.records.kept import StoredVolume
from kiosk.records.volume_entries import SizeRead
from kiosk.records.water_entries import WaterWeighed
from kiosk.reports.card import Card, card_page, moment
from kiosk.settings import Paper
from kiosk.texts import say
from kiosk.texts.numbers import at_most, number, percent

WHOLE_FROM = 100  # cm³
COLUMNS = (0.0, 0.3, 0.64)


def volume_card(key: StoredVolume, paper: Paper) -> bytes:
    """A PDF of one page for a key that was made.

    Simulated as its masses are; sizes come from a ruler, which is real.
    """
    draft, made = key.draft, key.made
    by_water = bool(draft.waters)
    half_width = 50 * (made.high - made.low) / made.cm3
    card = Card(
        title=say("paper.volume.head", number=made.number),
        at=made.at,
        simulated=draft.simulated,
        value=say("paper.volume.value", volume=_cubic(made.cm3)),
        sure=say(
            "paper.volume.sure",
            low=_cubic(made.low, ROUND_FLOOR),
            high=_cubic(made.high, ROUND_CEILING),
            percent=percent(half_width),
        ),
        facts=(
            say("paper.card.score", points=at_most(made.score_effect, 1)),
            *(_of_water(draft.waters) if by_water else (_of_sizes(draft.shape),)),
        ),
        warnings=(),
        columns=COLUMNS,
        heads=(
            say("paper.card.column.what" if by_water else "paper.volume.column.edge"),
            say("paper.card.column.shown" if by_water else "paper.volume.column.read"),
            say("paper.card.column.at"),
        ),
        rows=tuple(_masses(draft.waters) if by_water else _rows(draft.sizes)),
        notes=(say("paper.card.made", at=moment(made.at), id=made.key_id),),
    )
    return card_page(card, paper)


def _cubic(cm3: Decimal, rounding: str = ROUND_HALF_UP) -> str:
    """A volume as the screen has it: whole cm³ of anything but a small thing."""
    step = Decimal(1) if cm3 >= WHOLE_FROM else Decimal("0.1")
    return number(cm3.quantize(step, rounding=rounding))


def _of_sizes(shape: str) -> str:
    return say("paper.volume.shape", shape=say(f"measure.shape.{_key(shape)}"))


def _of_water(masses: tuple[WaterWeighed, ...]) -> tuple[str, ...]:
    balances = dict.fromkeys(mass.weighing.balance for mass in masses)
    return (
        say("paper.water.brim"),
        *(say("paper.card.balance", balance=balance) for balance in balances),
    )


def _masses(masses: tuple[WaterWeighed, ...]) -> Iterator[tuple[str, str, str]]:
    """In the order in which they were weighed, each with the digits that were shown."""
    for mass in masses:
        warm = mass.celsius
        what = say("paper.water.empty") if warm is None else _full(warm)
        yield what, f"{mass.weighing.value} {mass.weighing.unit}", moment(mass.at)


def _full(celsius: Decimal) -> str:
    return say("paper.water.filled", celsius=number(celsius))


def _rows(sizes: tuple[SizeRead, ...]) -> Iterator[tuple[str, str, str]]:
    """In the order of the edges, each at all its places."""
    edges = dict.fromkeys(size.edge for size in sizes)
    for edge in edges:
        for size in (each for each in sizes if each.edge == edge):
            yield say(f"measure.edge.{_key(edge)}"), f"{size.typed} {size.unit}", moment(size.at)


def _key(name: str) -> str:
    return name.replace(" ", "_")
