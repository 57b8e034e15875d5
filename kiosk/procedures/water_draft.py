"""What a volume key by water consists of: the empty container, and one filling or several."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

from kiosk.estimating.volume import Readings, Volume
from kiosk.estimating.water import by_water
from kiosk.records import kept
from kiosk.records.water_entries import WaterRole, WaterWeighed

MOST_FILLINGS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterDraft:
    """The masses of one container that count, in order of keeping; replaced, never changed."""

    id: str
    masses: tuple[WaterWeighed, ...] = ()

    @property
    def empty(self) -> WaterWeighed | None:
        """The empty container, once it is weighed."""
        return next((mass for mass in self.masses if mass.role == WaterRole.EMPTY), None)

    @property
    def fillings(self) -> tuple[WaterWeighed, ...]:
        """The container full of water, each time it was weighed so."""
        return tuple(mass for mass in self.masses if mass.role == WaterRole.FILLED)

    @property
    def full(self) -> bool:
        """Whether it was filled as often as can be kept."""
        return len(self.fillings) >= MOST_FILLINGS

    @property
    def readability(self) -> Decimal | None:
        """The coarsest step in grams of the balances that weighed it, None if nobody knows."""
        steps = [mass.weighing.readability for mass in self.masses]
        return max((step for step in steps if step is not None), default=None)

    @property
    def nets(self) -> tuple[Decimal, ...]:
        """Grams of water in each filling."""
        if self.empty is None:
            return ()
        tare = self.empty.weighing.grams
        return tuple(mass.weighing.grams - tare for mass in self.fillings)

    @property
    def celsius(self) -> Decimal | None:
        """How warm the water was, on the average of the fillings; None without any."""
        warm = [mass.celsius for mass in self.fillings if mass.celsius is not None]
        return sum(warm, Decimal(0)) / len(warm) if warm else None

    def volume(self) -> Volume | None:
        """The volume with its interval; None while a mass is missing."""
        if self.celsius is None or not self.nets:
            return None
        return by_water(Readings(self.nets), self.celsius, self.readability)

    def with_mass(self, mass: WaterWeighed) -> WaterDraft:
        """The draft with one more mass."""
        return replace(self, masses=(*self.masses, mass))

    def without(self, gone: WaterWeighed) -> WaterDraft:
        """The draft without that mass."""
        return replace(self, masses=tuple(mass for mass in self.masses if mass.id != gone.id))

    @classmethod
    def from_records(cls, stored: kept.VolumeDraft) -> WaterDraft:
        """A volume key that was left half made, as the records have it."""
        return cls(id=stored.id, masses=stored.waters)
