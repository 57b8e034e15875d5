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
from kiosk.records.entries import AnswerShown, KeyDropped
from kiosk.records.kept import Guess, Guessed
from kiosk.records.kinds import JAR
from kiosk.records.volume_entries import VolumeDropped
from kiosk.settings import Rules


class ShowState(Enum):
    """Where the coach stands."""

    CHOOSE = "choose"
    SURE = "sure"
    SHOWN = "shown"
    RETIRE = "retire"
    RETIRE_SURE = "retire, sure"
    LEFT = "left"


S = ShowState
RETIRED = "retired by the coach"


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
    """Answers that can be shown, one after the other; asked about once before the first time.

    A key that is not right any more, as of a jar that was poured anew, is retired here too: nobody
    guesses against it by mistake, and its letter or number is free again.
    """

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

    def _choose_to_retire(self, event: PersonEvent) -> S:
        if event.value not in self.answers:
            raise NotOfferedError(f"there is no key of {event.value}")
        self.chosen = self.answers[event.value]
        return S.RETIRE_SURE

    def _retire(self, _event: PersonEvent) -> S:
        assert self.chosen is not None
        container = self.answers.pop(self.chosen.container.letter).container
        dropped = KeyDropped if container.kind == JAR else VolumeDropped
        self._do(dropped(key_id=container.key_id, reason=RETIRED, at=self._utc_now()))
        self.chosen = None
        return S.RETIRE if self.answers else S.LEFT

    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CHOOSE: {
            Person.CHOOSE: judge(_choose, S.SURE, S.SHOWN),
            Person.UNDO: go(S.RETIRE),
            Person.HOME: go(S.LEFT),
        },
        S.RETIRE: {
            Person.CHOOSE: judge(_choose_to_retire, S.RETIRE_SURE),
            Person.HOME: go(S.CHOOSE),
        },
        S.RETIRE_SURE: {
            Person.YES: judge(_retire, S.RETIRE, S.LEFT),
            Person.NO: go(S.RETIRE),
            Person.HOME: go(S.LEFT),
        },
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
        S.RETIRE: Ask(title="answer.retire.title", needs_pan=False),
        S.RETIRE_SURE: Ask(title="answer.retire.jar", needs_pan=False),
        S.SHOWN: Ask(title="answer.shown.jar", needs_pan=False),
    }
