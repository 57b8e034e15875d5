"""The volume of any container: weighed empty, then filled with water to the brim.

It is filled beside the scale: what was on the pan has to leave it before it counts as filled. Both
masses are captured when they rest, and written down at once; a key that was left goes on later.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.estimating.count_key import score_effect
from kiosk.estimating.volume import Volume
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Art,
    Ask,
    Person,
    PersonEvent,
    Rule,
    Signal,
    Surroundings,
    go,
    judge,
)
from kiosk.procedures.water_draft import WaterDraft
from kiosk.procedures.water_warmth import S, WaterState, WaterWarmth
from kiosk.records.volume_entries import Shape, VolumeDropped, VolumeMade, VolumeStarted
from kiosk.records.water_entries import WaterRole, WaterVoided, WaterWeighed
from kiosk.weighing.pan_events import PanEvent, PanKind

__all__ = ["MeasureWater", "WaterState"]

LEAST_DIVISIONS = 20  # of water: less may be drops that were left behind


class MeasureWater(WaterWarmth):
    """From the caution to a number for the box; ``draft`` resumes a key that was left.

    SHAPES leads to the choice of another shape.
    """

    def __init__(
        self, surroundings: Surroundings, *, pan: PanMemory, draft: WaterDraft | None = None
    ) -> None:
        super().__init__(surroundings, pan=pan, draft=draft)
        self.number: int | None = None
        self._left_from: Enum = self.state

    def score_effect(self, volume: Volume) -> Decimal:
        """Points that a 90-point answer can lose by what is unknown of the volume."""
        return score_effect(volume.cm3, volume.low, volume.high, self.world.rules)

    def offers(self, person: Person) -> bool:
        """As the table says; there has to be something to keep, to undo or to go on to."""
        if not super().offers(person):
            return False
        match self.state, person:
            case S.WARMTH, Person.KEEP | Person.RUB_OUT:
                return bool(self.text)
            case S.WARMTH, Person.GO_ON:
                return bool(self.kept.fillings)
            case S.RESULT, Person.MORE:
                return not self.kept.full
        return True

    def _begin(self, _event: PersonEvent) -> S:
        started = VolumeStarted(id=self.world.new_id(), shape=Shape.WATER, at=self._utc_now())
        self.draft = WaterDraft(id=started.id)
        self._do(started)
        return S.WARMTH

    def _resume(self, _event: PersonEvent) -> S:
        return S.RESULT if self.kept.fillings else S.WARMTH

    def _drop(self, _event: PersonEvent) -> S:
        self._do(VolumeDropped(key_id=self.kept.id, reason="started over", at=self._utc_now()))
        return S.SHAPES

    def _weigh(self, role: WaterRole, event: PanEvent) -> None:
        weighing = self.weighing(event)
        mass = WaterWeighed(
            id=self.world.new_id(),
            key_id=self.kept.id,
            role=role,
            celsius=self.celsius if role is WaterRole.FILLED else None,
            weighing=weighing,
            at=weighing.at,
        )
        self._do(mass)
        self.draft = self.kept.with_mass(mass)

    def _weigh_empty(self, event: PanEvent) -> S:
        self._weigh(WaterRole.EMPTY, event)
        return S.LIFT

    def _weigh_filled(self, event: PanEvent) -> S:
        assert self.kept.empty is not None
        water = (event.grams or Decimal(0)) - self.kept.empty.weighing.grams
        if water <= 0 or water < LEAST_DIVISIONS * (event.readability or Decimal(0)):
            return S.NOT_FULL
        self._weigh(WaterRole.FILLED, event)
        return S.RESULT

    def _undo(self, _event: PersonEvent) -> S:
        """The last mass is to be weighed again."""
        gone = self.kept.masses[-1]
        self._do(WaterVoided(water_id=gone.id, reason="weighed again", at=self._utc_now()))
        self.draft = self.kept.without(gone)
        return self._to_pan()

    def _more(self, _event: PersonEvent) -> S:
        return self._ask_warmth()

    def _again(self, _event: PersonEvent) -> S:
        return self._to_pan()

    def _save(self, event: PersonEvent) -> S:
        volume = self.kept.volume()
        assert volume is not None
        self.number = event.value
        self._do(
            VolumeMade(
                id=self.world.new_id(),
                key_id=self.kept.id,
                number=event.value,
                cm3=volume.cm3,
                low=volume.low,
                high=volume.high,
                score_effect=self.score_effect(volume),
                at=self._utc_now(),
            )
        )
        return S.SAVED

    def _ask_leave(self, _event: PersonEvent) -> S:
        if not self.kept.masses:
            return S.LEFT
        self._left_from = self.state
        return S.LEAVING

    def _stay(self, _event: PersonEvent) -> Enum:
        typed = self._left_from in (S.WARMTH, S.SURE, S.RESULT)
        return self._left_from if typed else self._to_pan()  # the pan may have changed meanwhile

    _ON_PAN: ClassVar[tuple[S, ...]] = (S.CLEAR, S.EMPTY, S.LIFT, S.FILLED)
    _NEXT: ClassVar[tuple[S, ...]] = (S.WARMTH, *_ON_PAN)
    _ASK_LEAVE: ClassVar[Rule] = judge(_ask_leave, S.LEAVING, S.LEFT)
    _UNDO: ClassVar[Rule] = judge(_undo, *_NEXT)
    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.RESUME: {
            Person.YES: judge(_resume, S.WARMTH, S.RESULT),
            Person.NO: judge(_drop, S.SHAPES),
            Person.HOME: go(S.LEFT),
        },
        S.CAUTION: {
            Person.GO_ON: judge(_begin, S.WARMTH),
            Person.NO: go(S.SHAPES),
            Person.HOME: go(S.LEFT),
        },
        S.WARMTH: {
            Person.TYPE: judge(WaterWarmth._type, S.WARMTH),
            Person.RUB_OUT: judge(WaterWarmth._rub_out, S.WARMTH),
            Person.KEEP: judge(WaterWarmth._judge_warmth, S.SURE, *_NEXT),
            Person.GO_ON: go(S.RESULT),
            Person.HOME: _ASK_LEAVE,
        },
        S.SURE: {
            Person.YES: judge(WaterWarmth._warm, *_NEXT),
            Person.NO: judge(WaterWarmth._not_so, S.WARMTH),
            Person.HOME: _ASK_LEAVE,
        },
        S.CLEAR: {PanKind.PAN_EMPTY: go(S.EMPTY), Person.HOME: _ASK_LEAVE},
        S.EMPTY: {
            PanKind.SETTLED: judge(_weigh_empty, S.LIFT),
            PanKind.OVERLOADED: go(S.TOO_HEAVY),
            Person.HOME: _ASK_LEAVE,
        },
        S.LIFT: {PanKind.PAN_EMPTY: go(S.FILLED), Person.UNDO: _UNDO, Person.HOME: _ASK_LEAVE},
        S.FILLED: {
            PanKind.SETTLED: judge(_weigh_filled, S.RESULT, S.NOT_FULL),
            PanKind.OVERLOADED: go(S.TOO_HEAVY),
            Person.UNDO: _UNDO,
            Person.HOME: _ASK_LEAVE,
        },
        S.NOT_FULL: {
            PanKind.PAN_EMPTY: go(S.FILLED),
            Person.UNDO: _UNDO,
            Person.HOME: _ASK_LEAVE,
        },
        S.TOO_HEAVY: {
            Person.YES: judge(_again, *_NEXT),
            Person.NO: judge(_drop, S.SHAPES),
            Person.HOME: _ASK_LEAVE,
        },
        S.RESULT: {
            Person.KEEP: judge(_save, S.SAVED),
            Person.MORE: judge(_more, S.WARMTH),
            Person.UNDO: _UNDO,
            Person.HOME: _ASK_LEAVE,
        },
        S.SAVED: {Person.HOME: go(S.LEFT)},
        S.LEAVING: {
            Person.STAY: judge(_stay, S.SURE, S.RESULT, *_NEXT),
            Person.LEAVE: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT, S.SHAPES})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.RESUME: Ask(title="water.resume.title", body="water.resume.body", needs_pan=False),
        S.CAUTION: Ask(title="water.caution.title", needs_pan=False),
        S.WARMTH: Ask(title="water.warmth.title", needs_pan=False),
        S.SURE: Ask(title="water.sure.title", needs_pan=False),
        S.CLEAR: Ask(title="cup.clear.title", body="water.clear.body", step=2, art=Art.CLEAR_PAN),
        S.EMPTY: Ask(title="water.empty.title", body="water.empty.body", step=2, art=Art.VASE),
        S.LIFT: Ask(title="water.lift.title", body="water.lift.body", step=3, art=Art.VASE),
        S.FILLED: Ask(
            title="water.filled.title", body="water.filled.body", step=3, art=Art.FULL_VASE
        ),
        S.NOT_FULL: Ask(
            title="water.not_full.title", body="water.not_full.body", step=3, art=Art.VASE
        ),
        S.TOO_HEAVY: Ask(title="water.too_heavy.title", step=3, needs_pan=False),
        S.RESULT: Ask(title="measure.result.volume", step=4, needs_pan=False),
        S.SAVED: Ask(
            title="measure.saved.title", body="measure.saved.body", step=4, needs_pan=False
        ),
        S.LEAVING: Ask(title="measure.leave.title", body="water.leave.body", needs_pan=False),
    }
