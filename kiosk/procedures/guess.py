"""Guess a jar or a box: which one, one number, written down. Nothing of the key is known here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
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
from kiosk.records.entries import GuessMade
from kiosk.records.kept import Guessed
from kiosk.records.kinds import JAR

MOST_DIGITS = 6


class GuessState(Enum):
    """Where the pair stands."""

    CHOOSE = "choose"
    TYPE = "type"
    WRITTEN = "written"
    NEXT = "next"
    LEFT = "left"


S = GuessState


class Guess(Procedure):
    """One pair and the containers of one kind; ``limit`` is the public one of the rules."""

    def __init__(
        self,
        surroundings: Surroundings,
        *,
        team: str,
        containers: Sequence[Guessed],
        limit: int,
        pan: PanMemory,
        kind: str = JAR,
    ) -> None:
        super().__init__(S.CHOOSE, surroundings, pan)
        self.kind = kind
        self.team = team
        self.containers = {each.letter: each for each in containers}
        self.limit = limit
        self.chosen: Guessed | None = None
        self.typed = ""
        self.done: set[str] = set()  # letters that this pair guessed just now

    @property
    def guess(self) -> int | None:
        """What is typed, None while nothing is."""
        return int(self.typed) if self.typed else None

    @property
    def too_many(self) -> bool:
        """Whether no container may hold that."""
        return self.guess is not None and self.guess > self.limit

    def values(self) -> dict[str, object]:
        """`letter` of the chosen container and the `limit` of the rules."""
        return {"letter": self.chosen.letter if self.chosen else "", "limit": self.limit}

    def offers(self, person: Person) -> bool:
        """As the table says; a guess is taken when it is one."""
        if person is Person.ENTER:
            return super().offers(person) and bool(self.guess) and not self.too_many
        return super().offers(person)

    def _choose(self, event: PersonEvent) -> S:
        if event.value not in self.containers:
            raise NotOfferedError(f"there is no {event.value} to guess")
        self.chosen, self.typed = self.containers[event.value], ""
        return S.TYPE

    def _type(self, event: PersonEvent) -> S:
        typed = (self.typed + event.value).lstrip("0")
        if len(typed) <= MOST_DIGITS:
            self.typed = typed
        return S.TYPE

    def _rub_out(self, _event: PersonEvent) -> S:
        self.typed = self.typed[:-1]
        return S.TYPE

    def _enter(self, _event: PersonEvent) -> S:
        assert self.chosen is not None
        assert self.guess is not None
        self._do(
            GuessMade(
                key_id=self.chosen.key_id,
                team=self.team,
                guess=Decimal(self.guess),
                at=self._utc_now(),
            )
        )
        self.done.add(self.chosen.letter)
        return S.WRITTEN

    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CHOOSE: {Person.CHOOSE: judge(_choose, S.TYPE), Person.HOME: go(S.LEFT)},
        S.TYPE: {
            Person.TYPE: judge(_type, S.TYPE),
            Person.RUB_OUT: judge(_rub_out, S.TYPE),
            Person.ENTER: judge(_enter, S.WRITTEN),
            Person.MORE: go(S.CHOOSE),
            Person.HOME: go(S.LEFT),
        },
        S.WRITTEN: {
            Person.GO_ON: go(S.NEXT),
            Person.MORE: go(S.CHOOSE),
            Person.HOME: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.NEXT, S.LEFT})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.CHOOSE: Ask(title="guess.jar.choose", needs_pan=False),
        S.TYPE: Ask(title="guess.jar.title", needs_pan=False),
        S.WRITTEN: Ask(title="guess.written.title", step=2, needs_pan=False),
    }
