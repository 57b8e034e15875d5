"""The kinds of trouble: which one a reading tells of, and what each asks for."""

from __future__ import annotations

from types import MappingProxyType

from drivers.reading import Fault, Range, Reading
from kiosk.weighing.pan_events import Trouble

NO_LOAD = frozenset(  # what is shown is no load's mass
    {
        Trouble.NO_MASS, Trouble.UNIT, Trouble.CALIBRATION, Trouble.NO_ZERO, Trouble.ERROR,
        Trouble.BELOW_ZERO, Trouble.TARED, Trouble.GARBLED,
    }
)  # fmt: skip
# These pass as soon as masses come again; all others want an empty pan at zero.
PASSING = frozenset({Trouble.NO_MASS, Trouble.UNIT, Trouble.ERROR})
SILENCES = frozenset({Trouble.ASLEEP, Trouble.LATE, Trouble.QUIET, Trouble.LOST})
_OF_FAULT = MappingProxyType(
    {
        Fault.UNIT: Trouble.UNIT,
        Fault.CALIBRATION: Trouble.CALIBRATION,
        Fault.ZERO: Trouble.NO_ZERO,
        Fault.REPORTED: Trouble.ERROR,
    }
)


def trouble_of(reading: Reading) -> Trouble:
    """What a reading without a mass tells of."""
    if reading.range is Range.UNDER:
        return Trouble.BELOW_ZERO
    return Trouble.NO_MASS if reading.fault is None else _OF_FAULT[reading.fault]
