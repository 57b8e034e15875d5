"""Weigh an empty cup, give it a number, free the pan: steps 1 and 2 of filling a cup.

The cup's own mass is kept under its number; the pair takes the cup away and fills it in the hand.
Nothing needs to be pressed: the cup is captured when it rests and let go when it is lifted.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Art,
    Ask,
    Person,
    PersonEvent,
    Procedure,
    Rule,
    Signal,
    Surroundings,
    WeighAgain,
    go,
    judge,
)
from kiosk.records.entries import CupTaken
from kiosk.weighing.pan_events import PanEvent, PanKind

LIGHTEST_CUP_G = Decimal(2)  # what stays behind on a pan is lighter, a paper cup is heavier
HEAVIEST_CUP_G = Decimal(150)  # solid cups reach 120 g; above it, rather ask


class WeighEmptyState(Enum):
    """Where the pair stands."""

    CLEAR = "clear"
    PUT_ON = "put on"
    SETTLING = "settling"
    LIFTED_EARLY = "lifted early"
    TOO_LIGHT = "too light"
    REALLY_EMPTY = "really empty"
    WEIGHED = "weighed"
    FILL = "fill"
    LEAVING = "leaving"
    LEFT = "left"
    NEXT = "next"
    SOMEBODY_ELSE = "somebody else"


S = WeighEmptyState


class WeighEmpty(Procedure):
    """One pair, one empty cup. `number` is what the cup will be called."""

    def __init__(
        self,
        surroundings: Surroundings,
        *,
        number: int,
        team: str,
        material: str,
        others_out: bool,
        pan: PanMemory,
    ) -> None:
        super().__init__(S.PUT_ON, surroundings, pan)
        self.number = number
        self.team = team
        self.material = material
        self.others_out = others_out
        self.cup: CupTaken | None = None
        self._settled: PanEvent | None = None
        self._to_lift = False  # it was said that this is not what is to be weighed
        if pan.loaded:
            self.state = self._loaded_at_start()

    def _loaded_at_start(self) -> S:
        # With cups out, what lies there may be one of them, filled: then nobody may weigh it as
        # an empty one. With none out it is this pair's cup, put on a little early.
        if self.pan.used or self.others_out:
            return S.CLEAR
        self._do(WeighAgain())
        return S.SETTLING

    def values(self) -> dict[str, object]:
        """`number` and, once weighed, `mass` (Decimal grams)."""
        return {"number": self.number, "mass": self.cup.empty.grams if self.cup else None}

    def _pan_clear(self, _event: PanEvent) -> S:
        self._to_lift = False
        return S.PUT_ON

    def _lifted(self, _event: PanEvent) -> S:
        told, self._to_lift = self._to_lift, False
        return S.PUT_ON if told else S.LIFTED_EARLY

    def _judge_cup(self, event: PanEvent) -> S:
        self._settled = event
        self._to_lift = True
        grams = event.grams or Decimal(0)
        if grams < LIGHTEST_CUP_G:
            return S.TOO_LIGHT
        if grams > HEAVIEST_CUP_G:
            return S.REALLY_EMPTY
        return self._capture()

    def _capture(self, _event: PersonEvent | None = None) -> S:
        assert self._settled is not None
        empty = self.weighing(self._settled)
        self.cup = CupTaken(
            id=self.world.new_id(),
            number=self.number,
            team=self.team,
            material=self.material,
            empty=empty,
            at=empty.at,
        )
        self._do(self.cup)
        return S.WEIGHED

    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CLEAR: {
            PanKind.PAN_EMPTY: judge(_pan_clear, S.PUT_ON),
            Person.HOME: go(S.LEFT),
        },
        S.PUT_ON: {
            PanKind.LOAD_PLACED: go(S.SETTLING),
            PanKind.SETTLED: judge(_judge_cup, S.WEIGHED, S.TOO_LIGHT, S.REALLY_EMPTY),
            Person.HOME: go(S.LEFT),
        },
        S.SETTLING: {
            PanKind.SETTLED: judge(_judge_cup, S.WEIGHED, S.TOO_LIGHT, S.REALLY_EMPTY),
            PanKind.LOAD_REMOVED: judge(_lifted, S.LIFTED_EARLY, S.PUT_ON),
            PanKind.PAN_EMPTY: judge(_lifted, S.LIFTED_EARLY, S.PUT_ON),
            PanKind.OVERLOADED: go(S.CLEAR),
            PanKind.UNREADABLE: go(S.CLEAR),
            PanKind.SILENT: go(S.CLEAR),
            Person.HOME: go(S.LEFT),
        },
        S.LIFTED_EARLY: {
            PanKind.LOAD_PLACED: go(S.SETTLING),
            PanKind.SETTLED: judge(_judge_cup, S.WEIGHED, S.TOO_LIGHT, S.REALLY_EMPTY),
            Person.HOME: go(S.LEFT),
        },
        S.TOO_LIGHT: {
            PanKind.PAN_EMPTY: judge(_lifted, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.SETTLING),
            PanKind.DISTURBED: go(S.SETTLING),
            PanKind.SILENT: go(S.CLEAR),
            Person.HOME: go(S.LEFT),
        },
        S.REALLY_EMPTY: {
            Person.YES: judge(_capture, S.WEIGHED),
            Person.NO: go(S.CLEAR),
            PanKind.PAN_EMPTY: judge(_lifted, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.SETTLING),
            PanKind.DISTURBED: go(S.SETTLING),
            PanKind.OVERLOADED: go(S.CLEAR),
            PanKind.UNREADABLE: go(S.CLEAR),
            PanKind.SILENT: go(S.CLEAR),
            Person.HOME: go(S.LEFT),
        },
        S.WEIGHED: {
            PanKind.PAN_EMPTY: go(S.FILL),
            Person.HOME: go(S.LEAVING),
        },
        S.FILL: {
            Person.GO_ON: go(S.NEXT),
            Person.HOME: go(S.LEAVING),
            # The next cup is already on the pan: nobody may hold the pan while they think.
            PanKind.LOAD_PLACED: go(S.SOMEBODY_ELSE),
        },
        S.LEAVING: {
            Person.STAY: go(S.FILL),
            Person.LEAVE: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT, S.NEXT, S.SOMEBODY_ELSE})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.CLEAR: Ask(title="cup.clear.title", body="cup.clear.body", art=Art.CLEAR_PAN),
        S.PUT_ON: Ask(title="cup.put_on.title", body="cup.put_on.body", art=Art.EMPTY_CUP),
        S.SETTLING: Ask(title="cup.put_on.title", body="cup.put_on.body", art=Art.EMPTY_CUP),
        S.LIFTED_EARLY: Ask(title="cup.early.title", body="cup.early.body", art=Art.EMPTY_CUP),
        S.TOO_LIGHT: Ask(title="cup.too_light.title", body="cup.too_light.body", art=Art.CLEAR_PAN),
        S.REALLY_EMPTY: Ask(
            title="cup.really_empty.title", body="cup.really_empty.body", art=Art.FILLED_CUP
        ),
        S.WEIGHED: Ask(title="cup.weighed.title", body="cup.weighed.body", art=Art.EMPTY_CUP),
        S.FILL: Ask(title="cup.fill.title", body="cup.fill.body", step=2, needs_pan=False),
        S.LEAVING: Ask(title="cup.leave.title", body="cup.leave.body", step=2, needs_pan=False),
    }
