"""What the two halves of making a count key share: the draft, keeping a mass, voiding one."""

from __future__ import annotations

from enum import Enum

from kiosk.evidence import Weighing
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Procedure, Surroundings
from kiosk.records.entries import KeyMass, MassVoided
from kiosk.weighing.pan_events import PanEvent

TRAY_DIVISIONS = 3  # by which an emptied tray may differ from what it weighed first


class KeyProcedure(Procedure):
    """A procedure that adds masses to a draft; each is written down the moment it is kept."""

    def __init__(
        self,
        state: Enum,
        surroundings: Surroundings,
        *,
        pan: PanMemory,
        draft: KeyDraft | None,
    ) -> None:
        super().__init__(state, surroundings, pan)
        self.draft = draft
        self._settled: PanEvent | None = None
        self._left_from: Enum = state

    @property
    def kept(self) -> KeyDraft:
        """The draft, in all states that have one."""
        if self.draft is None:
            raise AssertionError(f"{self.state} has no draft")
        return self.draft

    def values(self) -> dict[str, object]:
        """`material` and `pieces` of a sample, once there is a draft."""
        draft = self.draft
        return {"material": draft.material, "pieces": draft.pieces} if draft else {}

    def _keep(self, role: str, event: PanEvent, tare: Weighing | None = None) -> None:
        weighing = self.weighing(event)
        mass = KeyMass(
            id=self.world.new_id(),
            key_id=self.kept.id,
            role=role,
            weighing=weighing,
            tare=tare,
            at=weighing.at,
        )
        self.draft = self.kept.with_mass(mass)
        self._do(mass)

    def _void(self, *masses: KeyMass | None, reason: str) -> None:
        gone = [mass for mass in masses if mass is not None]
        for mass in gone:
            self._do(MassVoided(mass_id=mass.id, reason=reason, at=self._utc_now()))
        self.draft = self.kept.without(gone)
