"""Entries of a volume key: what was measured with a ruler, and what came of it.

VolumeStarted -> SizeRead, SizeVoided, in any order -> VolumeMade, or VolumeDropped. No balance
stands behind any of it, so that such a key is real even beside the simulated balance. A container
measured with water has masses instead of sizes: see water_entries.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from kiosk.records.entries import Entry

LAST_BOX = 26  # boxes are numbered from 1


class Shape(StrEnum):
    """What kind of container was measured."""

    BOX = "box"
    CYLINDER = "cylinder"
    TAPERED = "tapered"
    TAPERED_BOX = "tapered box"
    WATER = "water"  # any shape, filled with water


class LengthUnit(StrEnum):
    """What the ruler shows."""

    CM = "cm"
    MM = "mm"
    INCH = "in"


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeStarted(Entry):
    """A volume key was begun; its id is the key's id. ``shape`` is one of Shape."""

    shape: str

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        Shape(self.shape)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRead(Entry):
    """An edge was measured at one place: the digits as typed, in ``unit`` (one of LengthUnit)."""

    key_id: str
    edge: str
    typed: str
    unit: str

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        LengthUnit(self.unit)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeVoided(Entry):
    """A size of a volume key in the making does not count."""

    size_id: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeMade(Entry):
    """A volume key was finished and given to the box with that number.

    ``low`` and ``high`` bound 95 %, all in cm³; ``score_effect`` is in points.
    """

    key_id: str
    number: int
    cm3: Decimal
    low: Decimal
    high: Decimal
    score_effect: Decimal

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        if not 1 <= self.number <= LAST_BOX:
            raise ValueError(f"boxes are numbered 1 to {LAST_BOX}, not {self.number}")


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeDropped(Entry):
    """A volume key does not count; the number of its box is free again."""

    key_id: str
    reason: str
