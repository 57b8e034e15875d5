"""What is known of the pan between events: loaded or not, used or not, hindered or not.

One memory serves all procedures of a kiosk, so that the next one knows what the last one left on
the pan. It is told of each pan event before the running procedure is.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble


class Hindrance(StrEnum):
    """Why the pan cannot be used just now."""

    UNPLUGGED = "unplugged"
    ASLEEP = "asleep"
    BELOW_ZERO = "below zero"
    TARED = "tared"
    NO_MASS = "no mass"
    UNIT = "unit"
    CALIBRATION = "calibration"
    NO_ZERO = "no zero"
    ERROR = "error"
    GARBLED = "garbled"
    LATE = "late"
    QUIET = "quiet"
    TOO_HEAVY = "too heavy"


_HINDRANCES = {
    Trouble.LOST: Hindrance.UNPLUGGED,
    Trouble.ASLEEP: Hindrance.ASLEEP,
    Trouble.BELOW_ZERO: Hindrance.BELOW_ZERO,
    Trouble.TARED: Hindrance.TARED,
    Trouble.NO_MASS: Hindrance.NO_MASS,
    Trouble.UNIT: Hindrance.UNIT,
    Trouble.CALIBRATION: Hindrance.CALIBRATION,
    Trouble.NO_ZERO: Hindrance.NO_ZERO,
    Trouble.ERROR: Hindrance.ERROR,
    Trouble.GARBLED: Hindrance.GARBLED,
    Trouble.LATE: Hindrance.LATE,
    Trouble.QUIET: Hindrance.QUIET,
}
# These pass as soon as readings make sense again; all others want an empty pan at zero.
_PASSING = frozenset({Hindrance.NO_MASS, Hindrance.UNIT, Hindrance.ERROR, Hindrance.TOO_HEAVY})


@dataclass(slots=True)
class PanMemory:
    """`used` means that the mass of what lies there is already written down."""

    loaded: bool = False
    used: bool = False
    hindrance: Hindrance | None = None

    def note(self, event: PanEvent) -> None:
        """Take one event in."""
        if event.kind in (PanKind.SILENT, PanKind.UNREADABLE):
            self.hindrance = _HINDRANCES[event.trouble or Trouble.NO_MASS]
        elif event.kind is PanKind.OVERLOADED:
            self.loaded = True
            self.hindrance = Hindrance.TOO_HEAVY
        elif event.kind is PanKind.PAN_EMPTY:
            self.loaded = self.used = False
            self.hindrance = None
        else:
            self._note_load(event)

    def forget(self) -> None:
        """It is another pan from now on, also for the procedure that is under way."""
        self.loaded = self.used = False
        self.hindrance = None

    def _note_load(self, event: PanEvent) -> None:
        if self.hindrance in _PASSING:
            self.hindrance = None
        if event.kind is not PanKind.LOAD_REMOVED:
            self.loaded = True
