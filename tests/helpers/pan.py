"""Pan events written by hand, for tests that need no balance."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from itertools import count

from drivers.reading import Basis, Range, Reading
from kiosk.evidence import Source
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, Person, PersonEvent, Procedure, Surroundings
from kiosk.settings import Rules
from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble

STEP = Decimal("0.1")
STARTED = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


def shown(grams: str, at: float = 1.0) -> Reading:
    """A steady gross reading in grams."""
    mass = Decimal(grams)
    return Reading(
        value=mass, unit="g", grams=mass, stable=True, basis=Basis.GROSS, range=Range.IN_RANGE,
        reason=None, raw=f"\n 1G {grams} g \r".encode(), at=at, balance="test balance",
    )  # fmt: skip


def settled(grams: str, step: Decimal = STEP) -> PanEvent:
    """The load rests at so many grams."""
    return PanEvent(
        kind=PanKind.SETTLED, at=1.0, reading=shown(grams), readability=step,
        source=Source.SIMULATED,
    )  # fmt: skip


def pan(kind: PanKind, trouble: Trouble | None = None) -> PanEvent:
    """Any other thing that can happen on a pan."""
    return PanEvent(kind=kind, at=1.0, trouble=trouble)


PLACED = pan(PanKind.LOAD_PLACED)
REMOVED = pan(PanKind.LOAD_REMOVED)
EMPTY = pan(PanKind.PAN_EMPTY)
DISTURBED = pan(PanKind.DISTURBED)
LOST = pan(PanKind.SILENT, Trouble.LOST)
TOO_HEAVY = pan(PanKind.OVERLOADED)
BELOW_ZERO = pan(PanKind.UNREADABLE, Trouble.BELOW_ZERO)


def surroundings(rules: Rules | None = None) -> Surroundings:
    """A world with a clock that stands still and names that count up."""
    names: Iterator[int] = count(1)
    return Surroundings(
        rules=rules or Rules(),
        utc=lambda at: STARTED + timedelta(seconds=at),
        new_id=lambda: f"{next(names):032x}",
        now=lambda: 1.0,
    )


def feed(procedure: Procedure, *events: PanEvent | PersonEvent) -> list[Effect]:
    """Let these happen in order, the pan's memory first; all effects."""
    effects: list[Effect] = []
    for event in events:
        if isinstance(event, PanEvent):
            procedure.pan.note(event)
        effects += procedure.step(event)
    return effects


def press(person: Person, value: object = None) -> PersonEvent:
    """A key."""
    return PersonEvent(person, value)


def memory(*events: PanEvent) -> PanMemory:
    """The memory of a pan on which these things happened."""
    known = PanMemory()
    for event in events:
        known.note(event)
    return known
