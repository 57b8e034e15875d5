"""Evidence: what stands behind a captured mass. Frozen; appended to the records, never edited."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from enum import StrEnum


class Source(StrEnum):
    """Where a mass came from."""

    BALANCE = "balance"
    SIMULATED = "simulated"
    TYPED = "typed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighing:
    """One captured reading: the mass in grams as shown, and how we know.

    ``value`` and ``unit`` are the digits and unit as sent, ``raw`` the frame, ``readability`` the
    step of the balance in grams (None if unknown), ``at`` the moment in UTC, ``balance`` its name.
    """

    id: str
    grams: Decimal
    value: Decimal
    unit: str
    raw: bytes
    readability: Decimal | None
    at: datetime
    balance: str
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """A mass and what was taken off it: net = gross - tare, all in grams as shown."""

    gross: Weighing
    tare: Weighing | None = None

    @property
    def net(self) -> Decimal:
        """Gross less tare, in grams."""
        return self.gross.grams - (self.tare.grams if self.tare else Decimal(0))

    @property
    def simulated(self) -> bool:
        """True if either part came from the simulated balance."""
        parts = (self.gross, self.tare) if self.tare else (self.gross,)
        return any(part.source is Source.SIMULATED for part in parts)
