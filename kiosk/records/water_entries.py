"""Entries of a volume key by water: the container weighed empty, and filled to the brim.

VolumeStarted (shape "water") -> WaterWeighed, WaterVoided, in any order -> VolumeMade, or
VolumeDropped. A balance stands behind it, so that such a key is simulated or real as its masses.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from kiosk.evidence import Weighing
from kiosk.records.entries import Entry


class WaterRole(StrEnum):
    """What was on the pan."""

    EMPTY = "empty"
    FILLED = "filled"


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterWeighed(Entry):
    """The container was weighed; ``celsius`` is how warm its water was, None while it is empty."""

    key_id: str
    role: WaterRole
    celsius: Decimal | None
    weighing: Weighing

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        if (self.celsius is None) is not (WaterRole(self.role) is WaterRole.EMPTY):
            raise ValueError("water has a temperature, an empty container has none")


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterVoided(Entry):
    """A mass of a volume key in the making does not count."""

    water_id: str
    reason: str
