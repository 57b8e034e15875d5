"""Guided procedures as tables: state and signal say what may come next, and nothing else may.

A procedure sees two kinds of event: what happened on the pan (`PanEvent`) and what a person did
(`PersonEvent`). For each state its TABLE lists the signals that matter there; a rule names every
state to which it can lead, so that a test can walk the table without running it. What a state
asks of a person stands in ASKS, by text keys only.

A person's event that the table lacks is a fault of the screen that offered it and raises; a pan
event that the table lacks is simply no news for that state, since the pan asks nobody.

Beside the state stands the memory of the pan: whether it is loaded, and what keeps it from being
used at all. It changes with pan events alone, so that every procedure is interrupted and taken up
again in one way.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import Enum, StrEnum
from typing import Any, ClassVar

from kiosk.evidence import Weighing
from kiosk.procedures.pan_memory import PanMemory
from kiosk.records.entries import Entry
from kiosk.settings import Rules
from kiosk.weighing.pan_events import PanEvent, PanKind


class Person(StrEnum):
    """What a person can do, whatever the button is called."""

    CHOOSE = "choose"  # value: a number, a letter, a material ...
    GO_ON = "go on"
    KEEP = "keep"
    UNDO = "undo"  # value: which one
    YES = "yes"
    NO = "no"
    MORE = "more"
    STOP = "stop"
    HOME = "home"
    STAY = "stay"
    LEAVE = "leave"
    PIECES = "pieces"  # value: how many pieces a sample has from now on
    TENS = "tens"  # count the sample in tens
    AGAIN = "again"  # write down what could not be written down; no procedure hears of it
    COVER = "cover"  # cover or show the big number; no procedure hears of it
    TYPE = "type"  # value: a digit of the code; no procedure hears of it
    RUB_OUT = "rub out"  # the last digit; no procedure hears of it
    ENTER = "enter"  # the digits are typed; no procedure hears of it
    LATER = "later"  # no code for now; no procedure hears of it
    MATERIAL = "material"  # choose what goes into the cups; no procedure hears of it
    ANSWERS = "answers"  # show what was guessed; no procedure hears of it
    PRINT = "print"  # save the papers of what was kept; no procedure hears of it
    CHECK = "check"  # check the scale; no procedure hears of it
    JARS = "jars"  # check the jars that have a key; no procedure hears of it
    OTHER_SCALE = "other scale"  # choose another one; no procedure hears of it
    TEACH = "teach"  # learn how the scale speaks; no procedure hears of it
    MISHAP = "mishap"  # something happened to a cup; which thing, is asked
    THINGS = "things"  # lay the things of the simulated table out; no procedure hears of it


@dataclass(frozen=True, slots=True)
class PersonEvent:
    """A key pressed, with the thing that it chose."""

    kind: Person
    value: Any = None


Event = PanEvent | PersonEvent
Signal = PanKind | Person


class Art(StrEnum):
    """The picture that goes with an instruction."""

    NONE = "none"
    EMPTY_CUP = "empty cup"
    FILLED_CUP = "filled cup"
    CLEAR_PAN = "clear pan"
    TRAY = "tray"
    JAR = "jar"
    VASE = "vase"
    FULL_VASE = "full vase"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """What a state asks of a person: text keys, the step of the trail, a picture.

    `needs_pan` is False where the person can go on whatever the balance does.
    """

    title: str
    body: str | None = None
    step: int = 1
    art: Art = Art.NONE
    needs_pan: bool = True


@dataclass(frozen=True, slots=True)
class WeighAgain:
    """An order to the pan: judge the present load once more, from fresh readings only."""


Effect = Entry | WeighAgain


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """What a procedure may ask of the world: the rules, the time of day, a new name."""

    rules: Rules = field(default_factory=Rules)
    utc: Callable[[float], datetime]
    new_id: Callable[[], str]
    now: Callable[[], float]


@dataclass(frozen=True, slots=True)
class Rule:
    """Where a signal leads: to the one state, or to the one of several that `decide` names."""

    to: tuple[Enum, ...]
    decide: Callable[[Any, Any], Enum] | None = None


def go(state: Enum) -> Rule:
    """A signal that always leads to one state."""
    return Rule((state,))


def judge(decide: Callable[[Any, Any], Enum], *states: Enum) -> Rule:
    """A signal whose outcome depends on the event; `states` names every outcome."""
    return Rule(states, decide)


class NotOfferedError(Exception):
    """A person's event reached a state that does not offer it."""


class Procedure:
    """The engine: holds the state, looks rules up, collects what has to be done outside."""

    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]]
    ASKS: ClassVar[Mapping[Enum, Ask]]
    FINAL: ClassVar[frozenset[Enum]]

    def __init__(self, state: Enum, surroundings: Surroundings, pan: PanMemory) -> None:
        self.state = state
        self.world = surroundings
        self.pan = pan
        self._effects: list[Effect] = []

    @property
    def ended(self) -> bool:
        """True once a final state is reached."""
        return self.state in self.FINAL

    @property
    def ask(self) -> Ask:
        """What the present state asks of a person."""
        return self.ASKS[self.state]

    def values(self) -> dict[str, object]:
        """What the texts of this procedure may name, by place name."""
        return {}

    def offers(self, person: Person) -> bool:
        """Whether the present state knows what to do with that event."""
        return person in self.TABLE.get(self.state, {})

    def step(self, event: Event) -> list[Effect]:
        """Take one event, of which the pan's memory knows already.

        Returns what has to be written down or ordered, in order.
        Raises NotOfferedError for a person's event that the state does not offer.
        """
        rule = self.TABLE.get(self.state, {}).get(event.kind)
        if rule is None:
            if isinstance(event, PersonEvent):
                raise NotOfferedError(f"{event.kind} is not offered in {self.state}")
            return []
        target = rule.to[0] if rule.decide is None else rule.decide(self, event)
        if target not in rule.to:
            raise AssertionError(f"{self.state} led to {target}, which its table does not name")
        self.state = target
        return self.take_effects()

    def take_effects(self) -> list[Effect]:
        """What has to be done outside since the last call; the very first state may order too."""
        effects, self._effects = self._effects, []
        return effects

    def _do(self, effect: Effect) -> None:
        self._effects.append(effect)

    def _utc_now(self) -> datetime:
        return self.world.utc(self.world.now())

    def weighing(self, event: PanEvent) -> Weighing:
        """The evidence for a settled mass, which is written down: see `shown`."""
        self.pan.used = True
        return self.shown(event)

    def shown(self, event: PanEvent) -> Weighing:
        """What the balance showed at rest, with its frame and moment."""
        reading = event.reading
        if reading is None or reading.grams is None or reading.value is None:
            raise AssertionError("only a settled mass can be written down")
        return Weighing(
            id=self.world.new_id(),
            grams=reading.grams,
            value=reading.value,
            unit=reading.unit or "g",
            raw=reading.raw,
            readability=event.readability,
            at=self.world.utc(reading.at),
            balance=reading.balance,
            source=event.source,
        )
