"""What a count key in the making consists of: the material, and each mass that was kept."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from decimal import Decimal

from kiosk.estimating.advice import Advice
from kiosk.estimating.before_counting import FirstAdvice, Guess, before_counting
from kiosk.estimating.count_key import CountInput, CountKey, Lot, Refused, count_key
from kiosk.estimating.counting_more import advise
from kiosk.estimating.exact import significant
from kiosk.estimating.live_count import LiveCount, live_count
from kiosk.estimating.old_samples import drift
from kiosk.estimating.pour_goal import Way, goal_named, way_to
from kiosk.estimating.samples import Samples
from kiosk.estimating.usual_pieces import USUAL_PIECE_GRAMS
from kiosk.evidence import Evidence
from kiosk.records import kept
from kiosk.records.entries import KeyMass, MassRole
from kiosk.settings import Rules

SAMPLES_FIRST_WANTED = 3
_NOTHING = Lot(filled=Decimal(0), empty=Decimal(0))
_DAY_S = 86_400
FEWEST_SAMPLES = 2  # without knowledge from before, one sample shows no scatter


@dataclass(frozen=True, slots=True)
class KeptLot:
    """A part of the fill that was weighed by itself: its container empty, then full."""

    empty: KeyMass
    filled: KeyMass

    @property
    def gross(self) -> Lot:
        """Both as grams."""
        return Lot(filled=self.filled.weighing.grams, empty=self.empty.weighing.grams)

    @property
    def net(self) -> Decimal:
        """What was in it, in grams."""
        return Evidence(gross=self.filled.weighing, tare=self.empty.weighing).net


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyDraft:
    """The masses of one key as far as they are there; replaced, never changed.

    ``goal`` says how full it shall be (see pour_goal), None until somebody said. Where the fill is
    weighed ``in_lots``, each becomes one of ``lots`` once it is full; ``empty`` and ``filled`` are
    those of the container on the pan. ``bits`` says whether broken ones count, None if not asked.
    """

    id: str
    material: str
    scatter_class: str
    piece_cv_percent: Decimal | None
    pieces: int
    wanted: int = SAMPLES_FIRST_WANTED
    tray: KeyMass | None = None
    samples: tuple[KeyMass, ...] = ()
    back_in: bool | None = None
    goal: str | None = None
    in_lots: bool = False
    bits: bool | None = None
    lots: tuple[KeptLot, ...] = ()
    empty: KeyMass | None = None
    filled: KeyMass | None = None

    @property
    def sample_nets(self) -> tuple[Decimal, ...]:
        """Net grams of the kept samples, in the order in which they were kept."""
        if self.tray is None:
            return ()
        tray = self.tray.weighing
        return tuple(
            Evidence(gross=mass.weighing, tare=mass.tare or tray).net for mass in self.samples
        )

    @property
    def chains(self) -> int:
        """In how many unbroken chains of readings the samples were weighed: see uncertainty."""
        under = {mass.tare.id for mass in self.samples if mass.tare}
        return sum(mass.weighing.id not in under for mass in self.samples)

    @property
    def readability(self) -> Decimal | None:
        """The coarsest step in grams at which any of the masses was weighed; None if unknown."""
        steps = [mass.weighing.readability for mass in self._masses if mass.weighing.readability]
        return max(steps, default=None)

    @property
    def _masses(self) -> tuple[KeyMass, ...]:
        in_lots = (mass for lot in self.lots for mass in (lot.empty, lot.filled))
        known = (self.tray, *self.samples, *in_lots, self.empty, self.filled)
        return tuple(mass for mass in known if mass is not None)

    @property
    def masses_kept(self) -> int:
        """How many masses are written down for this key."""
        return len(self._masses)

    @property
    def piece_mass(self) -> Decimal:
        """What a piece weighs by the samples, in grams, to three digits."""
        return significant(self.measured().piece_mass, 3)

    @property
    def sampled_at(self) -> datetime:
        """When the oldest sample was weighed. ValueError without a sample."""
        return min(mass.weighing.at for mass in self.samples)

    @property
    def drift(self) -> float:
        """What the pieces may have changed by between the samples and the fill: see old_samples."""
        in_lots = (mass for lot in self.lots for mass in (lot.empty, lot.filled))
        fill = [mass.weighing for mass in (*in_lots, self.empty, self.filled) if mass]
        if not self.samples or not fill:
            return 0.0
        balances = {mass.weighing.balance for mass in self.samples} | {one.balance for one in fill}
        return drift(
            self.scatter_class,
            days_between(self.sampled_at, max(one.at for one in fill)),
            other_balance=len(balances) > 1,
        )

    @property
    def samples_of_another_key(self) -> bool:
        """Whether the samples were weighed for an earlier key and written down again for this."""
        return any(mass.at > mass.weighing.at for mass in self.samples)

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
        if mass.role == "empty":
            return replace(self, empty=mass)
        if self.in_lots and self.empty is not None:
            return replace(self, lots=(*self.lots, KeptLot(self.empty, mass)), empty=None)
        return replace(self, filled=mass)

    def without(self, gone: Sequence[KeyMass]) -> KeyDraft:
        """The draft without some masses."""
        ids = {mass.id for mass in gone}

        def still(mass: KeyMass | None) -> KeyMass | None:
            return None if mass is None or mass.id in ids else mass

        return replace(
            self,
            tray=still(self.tray),
            samples=tuple(mass for mass in self.samples if mass.id not in ids),
            lots=tuple(lot for lot in self.lots if not ids & {lot.empty.id, lot.filled.id}),
            empty=still(self.empty),
            filled=still(self.filled),
        )

    @classmethod
    def from_records(cls, stored: kept.KeyDraft | None) -> KeyDraft | None:
        """A key that was left half made, as the records have it."""
        if stored is None:
            return None
        samples = tuple(mass for mass in stored.masses if mass.role == MassRole.SAMPLE)
        tray = next((mass for mass in stored.masses if mass.role == MassRole.TRAY), None)
        draft = cls(
            id=stored.id,
            material=stored.material,
            scatter_class=stored.scatter_class,
            piece_cv_percent=stored.piece_cv_percent,
            pieces=stored.pieces,
            wanted=max(SAMPLES_FIRST_WANTED, len(samples)),
            tray=tray,
            samples=samples,
            back_in=stored.back_in,
            goal=stored.goal,
            in_lots=stored.in_lots,
            bits=stored.bits,
        )
        for mass in stored.masses:
            if mass.role in (MassRole.EMPTY, MassRole.FILLED):
                draft = draft.with_mass(mass)
        return draft

    @property
    def fills(self) -> tuple[KeptLot, ...]:
        """What was weighed full, one after the other; without lots it is one."""
        if self.empty is None or self.filled is None:
            return self.lots
        return (*self.lots, KeptLot(self.empty, self.filled))

    def _given(self, fills: Sequence[KeptLot], *more: Decimal) -> CountInput:
        first, *others = [fill.gross for fill in fills] or [_NOTHING]
        return CountInput(
            pieces=self.pieces,
            samples=(*self.sample_nets, *more),
            filled=first.filled,
            empty=first.empty,
            more_lots=tuple(others),
            readability=self.readability,
            piece_cv_percent=self.piece_cv_percent,
            from_container=bool(self.back_in),
            drift=self.drift,
            whole_only=self.bits is False,
            chains=self.chains,
        )

    def key(self, rules: Rules) -> CountKey | Refused:
        """The key that these masses make; ValueError while the full container is missing."""
        if not self.fills:
            raise ValueError("a key needs an empty and a full container")
        return count_key(self._given(self.fills), rules)

    def measured(self, *more: Decimal) -> Samples:
        """The kept samples, with net masses that lie on the pan beside them."""
        return self._given((), *more).measured()

    def inside(self, gross: Decimal | None) -> Decimal:
        """Net grams of what is kept and, if ``gross`` lies on the pan, of what is in there."""
        if gross is None or self.empty is None:
            return sum((fill.net for fill in self.fills), Decimal(0))
        kept = sum((lot.net for lot in self.lots), Decimal(0))
        return kept + max(Decimal(0), gross - self.empty.weighing.grams)

    def live(self, gross: Decimal | None) -> LiveCount | None:
        """The count for the moment, with that gross mass on the pan or none."""
        return live_count(self.measured(), self.inside(gross), self._lots_with(gross))

    def way(self, gross: Decimal | None) -> Way | None:
        """How far it is to the goal, None without one."""
        goal = goal_named(self.goal)
        if goal is None:
            return None
        return way_to(goal, self.measured(), self.inside(gross), self._lots_with(gross))

    def _lots_with(self, gross: Decimal | None) -> int:
        on_pan = gross is not None and self.empty is not None
        return max(1, len(self.lots) + 1 if on_pan else len(self.fills))

    def advice(self, *more: Decimal) -> Advice | None:
        """What would be gained by counting more; None while nothing is counted."""
        if not self.samples and not more:
            return None
        return advise(self.measured(*more))

    def key_advice(self) -> Advice:
        """What limits the whole key, and what would be gained by counting more."""
        return advise(self.measured(), self.inside(None) or None)

    def first_advice(self) -> FirstAdvice | None:
        """How much to count; None once something is counted, or without a step of the balance."""
        if self.samples or not self.readability:
            return None
        guess = Guess(
            samples=max(self.wanted, FEWEST_SAMPLES),
            pieces=self.pieces,
            readability=self.readability,
            piece_mass=USUAL_PIECE_GRAMS.get(self.material),
            prior=self._given(()).prior(),
        )
        return before_counting(guess)


def days_between(earlier: datetime, later: datetime) -> float:
    """So many days; none if the clock went back."""
    return max(0.0, (later - earlier).total_seconds() / _DAY_S)
