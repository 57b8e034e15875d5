"""Throw a try away: the coach's way to take a spilled or lost cup off the list."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import Enum
from typing import ClassVar

from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Ask,
    NotOfferedError,
    Person,
    PersonEvent,
    Procedure,
    Rule,
    Signal,
    Surroundings,
    go,
    judge,
)
from kiosk.records.entries import CupOut, TryThrownAway


class ThrowState(Enum):
    """Where the coach stands."""

    CHOOSE = "choose"
    SURE = "sure"
    LEFT = "left"


S = ThrowState


class ThrowAway(Procedure):
    """Cups that are out, thrown away one by one; each is asked about."""

    def __init__(
        self, surroundings: Surroundings, *, cups: Sequence[CupOut], pan: PanMemory
    ) -> None:
        super().__init__(S.CHOOSE if cups else S.LEFT, surroundings, pan)
        self.cups = {cup.number: cup for cup in cups}
        self.number: int | None = None

    def values(self) -> dict[str, object]:
        """`number` of the chosen cup."""
        return {"number": self.number}

    def _choose(self, event: PersonEvent) -> S:
        if event.value not in self.cups:
            raise NotOfferedError(f"cup {event.value} is not out")
        self.number = event.value
        return S.SURE

    def _throw(self, _event: PersonEvent) -> S:
        assert self.number is not None
        cup = self.cups.pop(self.number)
        self._do(
            TryThrownAway(try_id=cup.id, reason="thrown away by the coach", at=self._utc_now())
        )
        return S.CHOOSE if self.cups else S.LEFT

    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CHOOSE: {Person.CHOOSE: judge(_choose, S.SURE), Person.HOME: go(S.LEFT)},
        S.SURE: {
            Person.YES: judge(_throw, S.CHOOSE, S.LEFT),
            Person.NO: go(S.CHOOSE),
            Person.HOME: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.CHOOSE: Ask(title="throw.choose.title", needs_pan=False),
        S.SURE: Ask(title="throw.sure.title", body="throw.sure.body", needs_pan=False),
    }
