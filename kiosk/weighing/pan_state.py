"""PanState: the pan at one moment, for a screen."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from kiosk.weighing.pan_events import Trouble


class PanPhase(StrEnum):
    """What the pan looks like at this moment."""

    EMPTY = "empty"
    MOVING = "moving"
    SETTLING = "settling"
    STABLE = "stable"
    TOO_HEAVY = "too heavy"
    UNREADABLE = "unreadable"
    SILENT = "silent"


class Press(StrEnum):
    """What is to be printed next on a balance that prints at its key."""

    NOTHING = ""
    LOAD = "load"  # put it on, print it twice
    ONCE_MORE = "once more"
    EMPTY = "empty"  # take it off, print the empty pan


@dataclass(frozen=True, slots=True, kw_only=True)
class PanState:
    """The pan for a screen.

    ``grams`` is the newest mass as shown, None without one; ``loaded`` says that it is more than
    an empty pan's; ``progress`` 0 to 1 closes the ring; ``restless_for`` counts seconds without
    rest. ``trouble`` says what is in the way, or was in the way and wants an empty pan:
    ``must_empty`` asks for one at zero. ``readings_flow`` is False while no usable mass comes.
    ``readability`` is in grams, None while unknown; ``unit`` is the one that the balance shows.

    ``taken_off`` says that the balance shows less than nothing: what hindered it was taken off.
    ``look`` says that after a silence something may lie there that the balance counts as nothing.
    ``creeping`` says that the reading moves on and on in one direction.
    """

    phase: PanPhase = PanPhase.SILENT
    trouble: Trouble | None = None
    grams: Decimal | None = None
    loaded: bool = False
    progress: float = 0.0
    restless_for: float = 0.0
    must_empty: bool = False
    readings_flow: bool = False
    readability: Decimal | None = None
    unit: str | None = None
    press: Press = Press.NOTHING
    taken_off: bool = False
    look: bool = False
    creeping: bool = False
