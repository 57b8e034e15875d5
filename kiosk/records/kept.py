"""What the store gives back: frozen values put together from the entries that were kept."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from kiosk.evidence import Evidence, Source, Weighing
from kiosk.records.entries import KeyMade, KeyMass, MassRole
from kiosk.records.volume_entries import SizeRead, VolumeMade
from kiosk.records.water_entries import WaterWeighed


@dataclass(frozen=True, slots=True, kw_only=True)
class Try:
    """A cup that was handed in and counts; masses in grams, ``at`` its hand-in in UTC."""

    id: str
    number: int
    team: str
    material: str
    evidence: Evidence
    net: Decimal
    target: Decimal
    points: Decimal
    side: str
    confirmed: bool
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyDraft:
    """A key with the answers as they stand now and the masses that count, in order of keeping.

    ``back_in`` is None until somebody said whether the counted pieces went back, ``goal`` until
    somebody said how full it shall be, ``bits`` until somebody said whether broken ones count.
    """

    id: str
    material: str
    scatter_class: str
    piece_cv_percent: Decimal | None
    pieces: int
    back_in: bool | None
    goal: str | None = None
    in_lots: bool = False
    bits: bool | None = None
    simulated: bool
    since: datetime
    masses: tuple[KeyMass, ...]

    def of(self, role: MassRole) -> tuple[Weighing, ...]:
        """The weighings that were kept in that role."""
        return tuple(mass.weighing for mass in self.masses if mass.role == role)


@dataclass(frozen=True, slots=True, kw_only=True)
class Guess:
    """What a team guessed; ``seen`` if it does not count. ``team`` is "" for just trying."""

    team: str
    guess: Decimal
    seen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Guessed:
    """A container that can be guessed: a jar by its letter, or a box by its number.

    ``guesses`` counts those that count; ``shown`` says that the answer was shown.
    """

    kind: str
    key_id: str
    letter: str
    guesses: int
    shown: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class StoredKey:
    """A key that was made and counts, with everything that stands behind it."""

    draft: KeyDraft
    made: KeyMade


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeDraft:
    """A volume key with the sizes or masses that count, in order of keeping."""

    id: str
    shape: str
    since: datetime
    sizes: tuple[SizeRead, ...] = ()
    waters: tuple[WaterWeighed, ...] = ()

    @property
    def simulated(self) -> bool:
        """Whether the simulated balance weighed it; sizes come from a ruler, which is real."""
        return any(mass.weighing.source is Source.SIMULATED for mass in self.waters)


@dataclass(frozen=True, slots=True, kw_only=True)
class StoredVolume:
    """A volume key that was made and counts, with what stands behind it."""

    draft: VolumeDraft
    made: VolumeMade
