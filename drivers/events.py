"""What a balance tells the rest of the house, one frozen value for each thing."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from drivers.errors import Reason
from drivers.reading import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingReceived:
    """A frame came; its mass may be unusable (see Reading)."""

    reading: Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Identified:
    """What the balance says of itself, asked once; masses in grams, None where it does not say."""

    name: str | None
    capacity: Decimal | None
    readability: Decimal | None
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LineUnreadable:
    """Bytes came that are no frame of this dialect: a torn frame, start-up text, garbage."""

    raw: bytes
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CommandDone:
    """The balance did what it was asked to do (``zero``)."""

    command: str
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CommandRefused:
    """The balance did not do it; ``reason`` says why in a few plain words."""

    command: str
    reason: str
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Lost:
    """The port is gone, whatever the way in which it failed; it is being looked for."""

    reason: Reason
    detail: str
    at: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Back:
    """The port is open (again); stale bytes were thrown away. ``where`` is its present address."""

    where: str
    at: float


BalanceEvent = (
    ReadingReceived | Identified | LineUnreadable | CommandDone | CommandRefused | Lost | Back
)
