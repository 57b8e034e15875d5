"""Weigh the empty container, pour, stop, and get the key: the second half (steps 3 to 5)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.estimating.count_key import CountKey, Refused
from kiosk.procedures.fill_goal import ContainerState, FillGoal, S
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.key_procedure import TRAY_DIVISIONS
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Art,
    Ask,
    Person,
    PersonEvent,
    Rule,
    Signal,
    Surroundings,
    WeighAgain,
    go,
    judge,
)
from kiosk.records.entries import KeyMade
from kiosk.weighing.pan_events import PanEvent, PanKind

__all__ = ["ContainerState", "FillContainer"]


class FillContainer(FillGoal):
    """From enough samples to the letter on the jar; takes a draft up wherever it was left.

    `too_heavy`: the fill was seen to be more than the balance can weigh.
    """

    def __init__(self, surroundings: Surroundings, *, pan: PanMemory, draft: KeyDraft) -> None:
        super().__init__(S.BACK_IN, surroundings, pan=pan, draft=draft)
        self.key: CountKey | Refused | None = None
        self.letter: str | None = None
        self.too_heavy = False
        if draft.filled is not None:
            self.state = self._judge_key()
        elif draft.back_in is not None:
            self.state = self._where_left()

    def values(self) -> dict[str, object]:
        """`material`, `pieces` and the `letter` given to the jar."""
        return {**super().values(), "letter": self.letter or ""}

    def _empty(self, event: PanEvent) -> S:
        self._keep("empty", event)
        return S.POUR

    def _empty_again(self, _event: PersonEvent) -> S:
        self._void(self.kept.empty, reason="weighed again")
        return self._container_next()

    def _emptied(self, event: PanEvent) -> S:
        """The container of the last lot, without anything worth a lot in it, is empty again."""
        last = self.kept.lots[-1].empty.weighing.grams
        off = abs((event.grams or Decimal(0)) - last)
        if off > TRAY_DIVISIONS * (event.readability or Decimal(0)):
            return S.EMPTIED
        return self._empty(event)

    def _still(self, event: PanEvent) -> S:
        self._settled = event
        return S.STILL if self._holds_something(event) else S.POUR

    def _holds_something(self, event: PanEvent) -> bool:
        assert self.kept.empty is not None
        inside = (event.grams or Decimal(0)) - self.kept.empty.weighing.grams
        return inside > TRAY_DIVISIONS * (event.readability or Decimal(0))

    def _overloaded(self, _event: PanEvent) -> S:
        self.too_heavy = True
        return S.POUR

    def _stop_still(self, _event: PersonEvent) -> S:
        assert self._settled is not None
        self._keep("filled", self._settled)
        return self._after_stop()

    def _stop_moving(self, _event: PersonEvent) -> S:
        self._do(WeighAgain())
        return S.STOPPING

    def _stopped(self, event: PanEvent) -> S:
        if self.kept.in_lots and not self._holds_something(event):
            return S.POUR
        self._keep("filled", event)
        return self._after_stop()

    def _after_stop(self) -> S:
        return S.LOT if self.kept.in_lots else self._judge_key()

    def _all_lots(self, _event: PersonEvent) -> S:
        return self._judge_key()

    def _next_lot(self, _event: PersonEvent) -> S:
        return self._container_next()

    def _undo_lot(self, event: PersonEvent) -> S:
        lot = self.kept.lots[event.value]
        self._void(lot.empty, lot.filled, reason="lot undone")
        return self._where_left()

    def _judge_key(self) -> S:
        self.key = self.kept.key(self.world.rules)
        if isinstance(self.key, Refused):
            return S.REFUSED
        return S.BAGS if self.more_than_a_bag else S.KEY

    def _pour_on(self, _event: PersonEvent) -> S:
        self.key = None
        if self.kept.lots:
            return S.LOT
        self._void(self.kept.filled, reason="poured on")
        return S.POUR

    def _more_samples(self, _event: PersonEvent) -> S:
        draft = self.kept
        self._void(draft.filled, draft.empty, reason="more samples first")
        self.draft = replace(self.kept, wanted=len(draft.samples) + 1, back_in=None)
        return S.SAMPLES

    def _save(self, event: PersonEvent) -> S:
        assert isinstance(self.key, CountKey)
        key = self.key
        self.letter = event.value
        self._do(
            KeyMade(
                key_id=self.kept.id,
                letter=event.value,
                count=key.count,
                low=key.low,
                high=key.high,
                half_width_percent=key.half_width_percent,
                piece_mass_g=key.piece_mass_g,
                score_effect=key.score_effect,
                warnings=tuple(key.warnings),
                from_container=bool(self.kept.back_in),
                at=self._utc_now(),
            )
        )
        return S.SAVED

    def _ask_leave(self, _event: PersonEvent) -> S:
        self._left_from = self.state
        return S.LEAVING

    def _stay(self, _event: PersonEvent) -> S:
        if self._left_from in (S.STILL, S.STOPPING):
            # The pan may have moved while the question stood: look at it afresh.
            self._do(WeighAgain())
            return S.POUR
        if self._left_from in (S.PAN_CLEAR, S.EMPTY_ON, S.EMPTIED):
            return self._container_next()
        return S(self._left_from)

    _ASK_LEAVE: ClassVar[Rule] = judge(_ask_leave, S.LEAVING)
    _GONE: ClassVar[Mapping[Signal, Rule]] = {
        PanKind.LOAD_REMOVED: go(S.POUR),
        PanKind.PAN_EMPTY: go(S.POUR),
        PanKind.OVERLOADED: judge(_overloaded, S.POUR),
        PanKind.UNREADABLE: go(S.POUR),
        PanKind.SILENT: go(S.POUR),
    }
    _POURING: ClassVar[Mapping[Signal, Rule]] = {
        Person.UNDO: judge(_empty_again, S.PAN_CLEAR, S.EMPTY_ON, S.EMPTIED),
        Person.CHOOSE: go(S.GOAL),
        Person.MORE: judge(FillGoal._in_lots, S.POUR),
        Person.HOME: _ASK_LEAVE,
    }
    _ANSWERED: ClassVar[tuple[S, ...]] = (S.PAN_CLEAR, S.EMPTY_ON, S.EMPTIED, S.POUR, S.LOT)
    _JUDGED: ClassVar[tuple[S, ...]] = (S.BAGS, S.KEY, S.REFUSED)
    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.BACK_IN: {
            Person.YES: judge(FillGoal._answer, S.GOAL, *_ANSWERED),
            Person.NO: judge(FillGoal._answer, S.GOAL, *_ANSWERED),
            Person.HOME: _ASK_LEAVE,
        },
        S.GOAL: {
            Person.CHOOSE: judge(FillGoal._choose_goal, S.GOAL, S.NUMBER, *_ANSWERED),
            Person.HOME: _ASK_LEAVE,
        },
        S.NUMBER: {
            Person.TYPE: judge(FillGoal._type, S.NUMBER),
            Person.RUB_OUT: judge(FillGoal._rub_out, S.NUMBER),
            Person.ENTER: judge(FillGoal._enter, *_ANSWERED),
            Person.MORE: go(S.GOAL),
            Person.HOME: _ASK_LEAVE,
        },
        S.PAN_CLEAR: {PanKind.PAN_EMPTY: go(S.EMPTY_ON), Person.HOME: _ASK_LEAVE},
        S.EMPTY_ON: {PanKind.SETTLED: judge(_empty, S.POUR), Person.HOME: _ASK_LEAVE},
        S.EMPTIED: {
            PanKind.PAN_EMPTY: go(S.EMPTY_ON),
            PanKind.SETTLED: judge(_emptied, S.POUR, S.EMPTIED),
            Person.HOME: _ASK_LEAVE,
        },
        S.POUR: {
            PanKind.OVERLOADED: judge(_overloaded, S.POUR),
            PanKind.SETTLED: judge(_still, S.STILL, S.POUR),
            Person.STOP: judge(_stop_moving, S.STOPPING),
            **_POURING,
        },
        S.STILL: {
            **_GONE,
            PanKind.LOAD_PLACED: go(S.POUR),
            PanKind.DISTURBED: go(S.POUR),
            Person.STOP: judge(_stop_still, S.LOT, *_JUDGED),
            **_POURING,
        },
        S.STOPPING: {
            **_GONE,
            PanKind.SETTLED: judge(_stopped, S.POUR, S.LOT, *_JUDGED),
            Person.HOME: _ASK_LEAVE,
        },
        S.LOT: {
            Person.GO_ON: judge(_next_lot, S.PAN_CLEAR, S.EMPTY_ON, S.EMPTIED),
            Person.STOP: judge(_all_lots, *_JUDGED),
            Person.UNDO: judge(_undo_lot, S.GOAL, *_ANSWERED),
            Person.HOME: _ASK_LEAVE,
        },
        S.BAGS: {
            Person.YES: go(S.KEY),
            Person.NO: judge(FillGoal._count_anew, S.SAMPLES),
            Person.HOME: _ASK_LEAVE,
        },
        S.KEY: {
            Person.KEEP: judge(_save, S.SAVED),
            Person.UNDO: judge(_pour_on, S.POUR, S.LOT),
            Person.MORE: judge(_more_samples, S.SAMPLES),
            Person.HOME: _ASK_LEAVE,
        },
        S.REFUSED: {
            Person.UNDO: judge(_pour_on, S.POUR, S.LOT),
            Person.MORE: judge(_more_samples, S.SAMPLES),
            Person.HOME: _ASK_LEAVE,
        },
        S.SAVED: {Person.GO_ON: go(S.CLOSING), Person.HOME: go(S.LEFT)},
        S.LEAVING: {
            Person.STAY: judge(_stay, S.BACK_IN, S.GOAL, S.NUMBER, *_ANSWERED, *_JUDGED),
            Person.LEAVE: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT, S.SAMPLES, S.CLOSING})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.BACK_IN: Ask(
            title="key.back_in.title", body="key.back_in.body", step=3, art=Art.JAR, needs_pan=False
        ),
        S.GOAL: Ask(title="key.goal.title", step=3, needs_pan=False),
        S.NUMBER: Ask(title="key.goal.number.title", step=3, needs_pan=False),
        S.PAN_CLEAR: Ask(
            title="cup.clear.title", body="key.pan_clear.body", step=3, art=Art.CLEAR_PAN
        ),
        S.EMPTY_ON: Ask(title="key.empty_on.title", body="key.empty_on.body", step=3, art=Art.JAR),
        S.EMPTIED: Ask(title="key.emptied.title", body="key.emptied.body", step=4, art=Art.JAR),
        S.POUR: Ask(title="key.pour.title", step=4),
        S.STILL: Ask(title="key.pour.title", step=4),
        S.STOPPING: Ask(title="key.stopping.title", step=4),
        S.LOT: Ask(title="key.lot.title", step=4, needs_pan=False),
        S.BAGS: Ask(title="key.bags.title", body="key.bags.body", step=4, needs_pan=False),
        S.KEY: Ask(title="key.done.title", step=5, needs_pan=False),
        S.REFUSED: Ask(title="key.refused.title", step=5, needs_pan=False),
        S.SAVED: Ask(
            title="key.saved.title", body="key.saved.body", step=5, art=Art.JAR, needs_pan=False
        ),
        S.LEAVING: Ask(
            title="key.leave.title", body="key.leave.body", step=3, art=Art.TRAY, needs_pan=False
        ),
    }
