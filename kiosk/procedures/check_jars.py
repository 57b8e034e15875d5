"""Is this still jar C? Closed jars put on one after the other, each compared with what it weighed.

Nothing needs to be pressed: a jar is weighed when it rests, and when it is lifted the next one is
asked for. A jar that nobody weighed closed so far is weighed so for the first time; that is also
how a new key ends (`sealing`).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.estimating.same_jar import JarChange, jar_change
from kiosk.evidence import Weighing
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Art,
    Ask,
    NotOfferedError,
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
from kiosk.records.jar_entries import ClosedJar, JarRole, JarWeighed
from kiosk.weighing.pan_events import PanEvent, PanKind


class JarState(Enum):
    """Where the coach stands."""

    CHOOSE = "choose"
    CLEAR = "clear"
    PUT_ON = "put on"
    WEIGHING = "weighing"
    FIRST_TIME = "first time"
    KEPT = "kept"
    SAME = "same"
    CHANGED = "changed"
    LEFT = "left"


S = JarState


class CheckJars(Procedure):
    """All `jars` that have a key; `sealing` names the one whose key was made a moment ago."""

    def __init__(
        self,
        surroundings: Surroundings,
        *,
        jars: Sequence[ClosedJar],
        pan: PanMemory,
        sealing: str | None = None,
    ) -> None:
        super().__init__(S.CHOOSE, surroundings, pan)
        self.jars = {jar.letter: jar for jar in jars}
        self.letter = sealing
        self.sealing = sealing is not None
        self.changes: dict[str, JarChange | None] = {}  # None: weighed closed for the first time
        self.now: Weighing | None = None
        if sealing is not None:
            self.state = S.CLEAR if pan.loaded else S.PUT_ON

    @property
    def jar(self) -> ClosedJar:
        """The chosen jar, in all states that have one."""
        if self.letter is None:
            raise AssertionError(f"{self.state} has no jar")
        return self.jars[self.letter]

    @property
    def following(self) -> str | None:
        """The letter of the next jar to look at, after the chosen one; None when all are done."""
        left = [letter for letter in self.jars if letter not in self.changes]
        later = [letter for letter in left if letter > (self.letter or "")]
        return next(iter([*later, *left]), None)

    def values(self) -> dict[str, object]:
        """`letter` of the chosen jar."""
        return {"letter": self.letter or ""}

    def twin(self) -> str | None:
        """Another jar that weighs what lies on the pan; None if there is none."""
        if self.now is None:
            return None
        others = [jar for jar in self.jars.values() if jar.letter != self.letter]
        same = [jar.letter for jar in others if jar.closed and self._change(jar, jar.closed).same]
        return next(iter(same), None)

    def _choose(self, event: PersonEvent) -> S:
        if event.value not in self.jars:
            raise NotOfferedError(f"there is no jar {event.value}")
        self.letter = event.value
        if self.pan.loaded and not self.pan.used:
            self._do(WeighAgain())
            return S.WEIGHING
        return S.CLEAR if self.pan.loaded else S.PUT_ON

    def _weigh(self, event: PanEvent) -> S:
        self.now = self.weighing(event)
        jar = self.jar
        change = None if jar.closed is None else self._change(jar, jar.closed)
        if change is None:
            lost = self._lost(jar)
            if lost is None:
                return self._keep() if self.sealing else S.FIRST_TIME
            change = lost
        self.changes[jar.letter] = change
        self._write(JarRole.CHECKED)
        return S.SAME if change.same else S.CHANGED

    def _lost(self, jar: ClosedJar) -> JarChange | None:
        """What is missing since the jar was filled, if it weighs less than without its lid."""
        change = None if jar.filled is None else self._change(jar, jar.filled)
        return change if change and change.grams < 0 and not change.same else None

    def _change(self, jar: ClosedJar, before: Weighing) -> JarChange:
        assert self.now is not None
        return change_between(jar, before, self.now)

    def _keep(self, _event: PersonEvent | None = None) -> S:
        self.changes[self.jar.letter] = None
        self._write(JarRole.CLOSED)
        return S.KEPT

    def _write(self, role: JarRole) -> None:
        assert self.now is not None
        self._do(
            JarWeighed(
                id=self.world.new_id(),
                key_id=self.jar.key_id,
                role=role,
                weighing=self.now,
                at=self.now.at,
            )
        )

    def _next(self, _event: PanEvent | PersonEvent) -> S:
        if self.sealing:
            return S.LEFT
        letter = self.following
        if letter is None:
            return S.CHOOSE
        self.letter = letter
        return S.CLEAR if self.pan.loaded else S.PUT_ON

    def _again(self, _event: PersonEvent) -> S:
        if not self.pan.loaded:
            return S.PUT_ON
        self._do(WeighAgain())
        return S.WEIGHING

    _WEIGHED: ClassVar[Rule] = judge(_weigh, S.FIRST_TIME, S.KEPT, S.SAME, S.CHANGED)
    _OUT: ClassVar[Mapping[Signal, Rule]] = {Person.NO: go(S.CHOOSE), Person.HOME: go(S.LEFT)}
    _DONE: ClassVar[Mapping[Signal, Rule]] = {
        PanKind.PAN_EMPTY: judge(_next, S.PUT_ON, S.CLEAR, S.CHOOSE, S.LEFT),
        Person.MORE: judge(_next, S.PUT_ON, S.CLEAR, S.CHOOSE, S.LEFT),
        Person.HOME: go(S.LEFT),
    }
    _GONE: ClassVar[Mapping[Signal, Rule]] = {
        PanKind.LOAD_REMOVED: go(S.PUT_ON),
        PanKind.PAN_EMPTY: go(S.PUT_ON),
        PanKind.OVERLOADED: go(S.CLEAR),
        PanKind.UNREADABLE: go(S.CLEAR),
        PanKind.SILENT: go(S.CLEAR),
    }
    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CHOOSE: {
            Person.CHOOSE: judge(_choose, S.CLEAR, S.PUT_ON, S.WEIGHING),
            Person.HOME: go(S.LEFT),
        },
        S.CLEAR: {PanKind.PAN_EMPTY: go(S.PUT_ON), **_OUT},
        S.PUT_ON: {PanKind.LOAD_PLACED: go(S.WEIGHING), PanKind.SETTLED: _WEIGHED, **_OUT},
        S.WEIGHING: {PanKind.SETTLED: _WEIGHED, **_GONE, **_OUT},
        S.FIRST_TIME: {
            Person.YES: judge(_keep, S.KEPT),
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.DISTURBED: go(S.WEIGHING),
            **_GONE,
            **_OUT,
        },
        S.KEPT: _DONE,
        S.SAME: _DONE,
        S.CHANGED: {
            # What changed is to be read first: lifting the jar does not take it away.
            Person.MORE: judge(_next, S.PUT_ON, S.CLEAR, S.CHOOSE, S.LEFT),
            Person.UNDO: judge(_again, S.WEIGHING, S.PUT_ON),
            Person.HOME: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.CHOOSE: Ask(title="jars.choose.title", needs_pan=False),
        S.CLEAR: Ask(title="jars.clear.title", body="jars.clear.body", art=Art.CLEAR_PAN),
        S.PUT_ON: Ask(title="jars.put_on.title", body="jars.put_on.body", art=Art.JAR),
        S.WEIGHING: Ask(title="jars.put_on.title", body="jars.put_on.body", art=Art.JAR),
        S.FIRST_TIME: Ask(title="jars.first.title", body="jars.first.body", art=Art.JAR),
        S.KEPT: Ask(title="jars.kept.title", needs_pan=False),
        S.SAME: Ask(title="jars.same.title", needs_pan=False),
        S.CHANGED: Ask(title="jars.lighter.title", needs_pan=False),
    }


def change_between(jar: ClosedJar, before: Weighing, now: Weighing) -> JarChange:
    """Whether a jar weighs what it did, and if not, by how much."""
    return jar_change(
        before.grams,
        now.grams,
        step=max(_step(before), _step(now)),
        piece_mass=jar.piece_mass_g,
        other_balance=now.balance != before.balance,
    )


def _step(weighing: Weighing) -> Decimal:
    """The step of the balance in grams, or what its last digit counts."""
    return weighing.readability or Decimal(1).scaleb(int(weighing.grams.as_tuple().exponent))
