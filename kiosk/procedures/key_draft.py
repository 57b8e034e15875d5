"""What a count key in the making consists of: the material, and each mass that was kept."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from kiosk.estimating.advice import Advice
from kiosk.estimating.count_key import CountInput, CountKey, Refused, count_key
from kiosk.estimating.counting_more import advise
from kiosk.estimating.live_count import LiveCount, live_count
from kiosk.estimating.samples import Samples
from kiosk.evidence import Evidence
from kiosk.records import kept
from kiosk.records.entries import KeyMass, MassRole
from kiosk.settings import Rules

SAMPLES_FIRST_WANTED = 3
FEWEST_SAMPLES = 2  # without knowledge from before, one sample shows no scatter


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyDraft:
    """The masses of one key as far as they are there; replaced, never changed."""

    id: str
    material: str
    scatter_class: str
    piece_cv_percent: Decimal | None
    pieces: int
    wanted: int = SAMPLES_FIRST_WANTED
    tray: KeyMass | None = None
    samples: tuple[KeyMass, ...] = ()
    back_in: bool | None = None
    empty: KeyMass | None = None
    filled: KeyMass | None = None

    @property
    def sample_nets(self) -> tuple[Decimal, ...]:
        """Net grams of the kept samples, in the order in which they were kept."""
        if self.tray is None:
            return ()
        return tuple(
            Evidence(gross=mass.weighing, tare=self.tray.weighing).net for mass in self.samples
        )

    @property
    def readability(self) -> Decimal | None:
        """The coarsest step in grams at which any of the masses was weighed; None if unknown."""
        steps = [mass.weighing.readability for mass in self._masses if mass.weighing.readability]
        return max(steps, default=None)

    @property
    def _masses(self) -> tuple[KeyMass, ...]:
        known = (self.tray, *self.samples, self.empty, self.filled)
        return tuple(mass for mass in known if mass is not None)

    @property
    def masses_kept(self) -> int:
        """How many masses are written down for this key."""
        return len(self._masses)

    @property
    def enough(self) -> bool:
        """Whether the kept samples can make a key: two, or one with prior knowledge."""
        return len(self.samples) >= (1 if self.piece_cv_percent else FEWEST_SAMPLES)

    def with_mass(self, mass: KeyMass) -> KeyDraft:
        """The draft with one more kept mass in its place."""
        if mass.role == "sample":
            return replace(self, samples=(*self.samples, mass))
        if mass.role == "tray":
            return replace(self, tray=mass)
        return replace(self, empty=mass) if mass.role == "empty" else replace(self, filled=mass)

    def without(self, gone: Sequence[KeyMass]) -> KeyDraft:
        """The draft without some masses."""
        ids = {mass.id for mass in gone}

        def still(mass: KeyMass | None) -> KeyMass | None:
            return None if mass is None or mass.id in ids else mass

        return replace(
            self,
            tray=still(self.tray),
            samples=tuple(mass for mass in self.samples if mass.id not in ids),
            empty=still(self.empty),
            filled=still(self.filled),
        )

    @classmethod
    def from_records(cls, stored: kept.KeyDraft | None) -> KeyDraft | None:
        """A key that was left half made, as the records have it."""
        if stored is None:
            return None
        samples = tuple(mass for mass in stored.masses if mass.role == MassRole.SAMPLE)

        def one(role: MassRole) -> KeyMass | None:
            return next((mass for mass in stored.masses if mass.role == role), None)

        return cls(
            id=stored.id,
            material=stored.material,
            scatter_class=stored.scatter_class,
            piece_cv_percent=stored.piece_cv_percent,
            pieces=stored.pieces,
            wanted=max(SAMPLES_FIRST_WANTED, len(samples)),
            tray=one(MassRole.TRAY),
            samples=samples,
            back_in=stored.back_in,
            empty=one(MassRole.EMPTY),
            filled=one(MassRole.FILLED),
        )

    def _given(self, filled_gross: Decimal, *more: Decimal) -> CountInput:
        return CountInput(
            pieces=self.pieces,
            samples=(*self.sample_nets, *more),
            filled=filled_gross,
            empty=self.empty.weighing.grams if self.empty else Decimal(0),
            readability=self.readability,
            piece_cv_percent=self.piece_cv_percent,
            from_container=bool(self.back_in),
        )

    def key(self, rules: Rules) -> CountKey | Refused:
        """The key that these masses make; ValueError while the full container is missing."""
        if self.filled is None or self.empty is None:
            raise ValueError("a key needs an empty and a full container")
        return count_key(self._given(self.filled.weighing.grams), rules)

    def measured(self, *more: Decimal) -> Samples:
        """The kept samples, with net masses that lie on the pan beside them."""
        return self._given(Decimal(0), *more).measured()

    def live(self, gross: Decimal) -> LiveCount | None:
        """The count for the moment, with that gross mass on the pan."""
        if self.empty is None:
            return None
        return live_count(self.measured(), gross - self.empty.weighing.grams)

    def advice(self, *more: Decimal) -> Advice | None:
        """What would be gained by counting more; None while nothing is counted."""
        if not self.samples and not more:
            return None
        return advise(self.measured(*more))
