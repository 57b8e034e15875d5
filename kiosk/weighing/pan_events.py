"""PanEvent: what happened on the pan, whoever says so (a balance, a typing person, a replay)."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from drivers.reading import Reading
from kiosk.evidence import Source


class PanKind(StrEnum):
    """The eight things that can happen on a pan."""

    LOAD_PLACED = "load placed"
    SETTLED = "settled"
    DISTURBED = "disturbed"
    LOAD_REMOVED = "load removed"
    PAN_EMPTY = "pan empty"
    OVERLOADED = "overloaded"
    UNREADABLE = "unreadable"
    SILENT = "silent"


class Trouble(StrEnum):
    """Why a pan is unreadable, or silent."""

    NO_MASS = "no mass"  # the balance sends frames without a usable number
    UNIT = "unit"  # ... in no unit, or in one that is not known
    CALIBRATION = "calibration"  # ... because it needs to be calibrated
    NO_ZERO = "no zero"  # ... because it woke with more than it can set to zero
    ERROR = "error"  # ... with a word of its own for an error
    GARBLED = "garbled"  # bytes come that are no frames: other port settings, another language
    BELOW_ZERO = "below zero"  # something was on the pan when the balance zeroed itself
    TARED = "tared"  # the balance was tared by its own key
    ASLEEP = "asleep"  # the port is open, nothing comes
    LATE = "late"  # what comes is older than a second
    QUIET = "quiet"  # a balance that prints at its key has not printed an empty pan lately
    LOST = "lost"  # the port is gone


@dataclass(frozen=True, slots=True, kw_only=True)
class PanEvent:
    """One thing that happened on the pan at monotonic second ``at``.

    ``reading`` is given with SETTLED, and with PAN_EMPTY where the zero was seen to rest: the
    reading that the balance showed, nearest to the mean of the resting window, with its frame.
    ``readability`` is in grams, None while unknown.
    ``trouble`` is given with UNREADABLE and SILENT.
    """

    kind: PanKind
    at: float
    reading: Reading | None = None
    readability: Decimal | None = None
    source: Source = Source.BALANCE
    trouble: Trouble | None = None

    @property
    def grams(self) -> Decimal | None:
        """The settled mass in grams as shown, None for every other event."""
        if self.kind is not PanKind.SETTLED or self.reading is None:
            return None
        return self.reading.grams
