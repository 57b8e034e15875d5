"""Show the answer: the coach opens what a key says, and with it the scores of all who guessed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.estimating.score import Score, score
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
from kiosk.records.entries import AnswerShown
from kiosk.records.kept import Guess, Guessed
from kiosk.settings import Rules


class ShowState(Enum):
    """Where the coach stands."""

    CHOOSE = "choose"
    SURE = "sure"
    SHOWN = "shown"
    LEFT = "left"


S = ShowState


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A container, what its key says with the bounds of it, and who guessed what."""

    container: Guessed
    actual: Decimal
    low: Decimal
    high: Decimal
    guesses: tuple[Guess, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoredGuess:
    """A pair's guess beside the real number; ``points`` with the digits of the rules."""

    team: str
    guess: Decimal
    score: Score
    inside: bool  # within the bounds of the key


def scored(answer: Answer, rules: Rules) -> list[ScoredGuess]:
    """The guesses of pairs that count, best first; who was just trying is not shown to all."""
    counting = (guess for guess in answer.guesses if guess.team and not guess.seen)
    found = [
        ScoredGuess(
            team=guess.team,
            guess=guess.guess,
            score=score(answer.actual, guess.guess, rules),
            inside=answer.low <= guess.guess <= answer.high,
        )
        for guess in counting
    ]
    return sorted(found, key=lambda each: (-each.score.points, each.team))


class ShowAnswer(Procedure):
    """Answers that can be shown, one after the other; asked about once before the first time."""

    def __init__(
        self, surroundings: Surroundings, *, answers: Sequence[Answer], pan: PanMemory
    ) -> None:
        super().__init__(S.CHOOSE, surroundings, pan)
        self.answers = {each.container.letter: each for each in answers}
        self.chosen: Answer | None = None
        self._shown = {each.container.letter for each in answers if each.container.shown}

    def values(self) -> dict[str, object]:
        """`letter` of the chosen container."""
        return {"letter": self.chosen.container.letter if self.chosen else ""}

    def _choose(self, event: PersonEvent) -> S:
        if event.value not in self.answers:
            raise NotOfferedError(f"there is no {event.value} to show")
        self.chosen = self.answers[event.value]
        return S.SHOWN if event.value in self._shown else S.SURE

    def _show(self, _event: PersonEvent) -> S:
        assert self.chosen is not None
        self._do(AnswerShown(key_id=self.chosen.container.key_id, at=self._utc_now()))
        self._shown.add(self.chosen.container.letter)
        return S.SHOWN

    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CHOOSE: {Person.CHOOSE: judge(_choose, S.SURE, S.SHOWN), Person.HOME: go(S.LEFT)},
        S.SURE: {
            Person.YES: judge(_show, S.SHOWN),
            Person.NO: go(S.CHOOSE),
            Person.HOME: go(S.LEFT),
        },
        S.SHOWN: {Person.MORE: go(S.CHOOSE), Person.HOME: go(S.LEFT)},
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.CHOOSE: Ask(title="answer.choose.title", needs_pan=False),
        S.SURE: Ask(title="answer.sure.jar", body="answer.sure.body", needs_pan=False),
        S.SHOWN: Ask(title="answer.shown.jar", needs_pan=False),
    }
