"""Begin a count key: what is in the jar, whether bits count, and whether old samples are used.

A material remembers the samples of its newest key. Used again they are written down for the new
key too, by the same weighings, so that it stands on evidence of its own; whether bits were counted
goes with them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from enum import Enum

from kiosk.estimating.old_samples import moisture
from kiosk.estimating.scatter import ScatterClass, with_bits
from kiosk.procedures.key_draft import KeyDraft, days_between
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person, PersonEvent, Surroundings
from kiosk.records.entries import KeyChanged, KeyDropped, KeyMass, KeyStarted

FIRST_PIECES = 100


class SamplesState(Enum):
    """Where the coach stands."""

    RESUME = "resume"
    MATERIAL = "material"
    OLD_SAMPLES = "old samples"
    SAME_BAG = "same bag"
    BITS = "bits"
    TRAY_CLEAR = "tray clear"
    TRAY_ON = "tray on"
    COUNT = "count"
    READY = "ready"
    ADD = "add"
    SAME = "same"
    TOO_FEW = "too few"
    TOO_MANY = "too many"
    LIGHT_TRAY = "light tray"
    TENS = "tens"
    ODD_TEN = "odd ten"
    EMPTY_TRAY = "empty tray"
    SPREAD = "spread"
    LEAVING = "leaving"
    LEFT = "left"
    SAMPLED = "sampled"


S = SamplesState


class BeginKey(KeyProcedure):
    """Asks what is needed before the first sample.

    `known` are the drafts whose samples a material remembers, by material.
    """

    def __init__(
        self,
        state: Enum,
        surroundings: Surroundings,
        *,
        pan: PanMemory,
        draft: KeyDraft | None,
        known: Mapping[str, KeyDraft],
    ) -> None:
        super().__init__(state, surroundings, pan=pan, draft=draft)
        self.known = known
        self._chosen: tuple[str, str, Decimal | None] | None = None

    @property
    def remembered(self) -> KeyDraft | None:
        """The key whose samples the chosen material remembers."""
        return self.known.get(self._chosen[0]) if self._chosen else None

    @property
    def days_old(self) -> float:
        """How many days ago the remembered samples were weighed."""
        assert self.remembered is not None
        return days_between(self.remembered.sampled_at, self._utc_now())

    @property
    def moisture_percent(self) -> float:
        """By how much those days widen a key, in per cent of its count."""
        assert self.remembered is not None
        return 100 * moisture(self.remembered.scatter_class, self.days_old)

    def _choose(self, event: PersonEvent) -> S:
        self._chosen = event.value
        return S.OLD_SAMPLES if self.remembered else self._anew(event)

    def _anew(self, _event: PersonEvent) -> S:
        """Beads and hardware do not break; of anything else it is asked whether bits count."""
        assert self._chosen is not None
        return self._begin(None) if self._chosen[1] == ScatterClass.BEADS else S.BITS

    def _answer_bits(self, event: PersonEvent) -> S:
        return self._begin(event.kind is Person.YES)

    def _begin(self, bits: bool | None) -> S:
        assert self._chosen is not None
        material, scatter_class, cv = self._chosen
        self._start(
            KeyDraft(
                id=self.world.new_id(),
                material=material,
                scatter_class=scatter_class,
                piece_cv_percent=with_bits(cv) if bits else cv,
                pieces=FIRST_PIECES,
                bits=bits,
            )
        )
        if bits is not None:
            self._do(KeyChanged(key_id=self.kept.id, bits=bits, at=self._utc_now()))
        return self._tray_next()

    def _start(self, draft: KeyDraft) -> None:
        self.draft = draft
        self._do(
            KeyStarted(
                id=draft.id,
                material=draft.material,
                scatter_class=draft.scatter_class,
                piece_cv_percent=draft.piece_cv_percent,
                pieces=draft.pieces,
                at=self._utc_now(),
            )
        )

    def _tray_next(self) -> S:
        return S.TRAY_CLEAR if self.pan.loaded else S.TRAY_ON

    def _use_again(self, _event: PersonEvent) -> S:
        """The same weighings for a key of their own; those pieces are not in the new fill."""
        old = self.remembered
        assert old is not None
        assert old.tray is not None
        new = replace(
            old, id=self.world.new_id(), wanted=len(old.samples), tray=None, samples=(),
            back_in=False, goal=None, in_lots=False, lots=(), empty=None, filled=None,
        )  # fmt: skip
        self._start(new)
        for mass in (old.tray, *old.samples):
            self._add(mass)
        self._do(KeyChanged(key_id=new.id, back_in=False, bits=new.bits, at=self._utc_now()))
        return S.SAMPLED

    def _add(self, mass: KeyMass) -> None:
        again = replace(mass, id=self.world.new_id(), key_id=self.kept.id, at=self._utc_now())
        self.draft = self.kept.with_mass(again)
        self._do(again)

    def _start_over(self, _event: PersonEvent) -> S:
        self._do(KeyDropped(key_id=self.kept.id, reason="started over", at=self._utc_now()))
        self.draft = None
        return S.MATERIAL
