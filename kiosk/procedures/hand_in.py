"""Hand a filled cup in by its number and score it: steps 3 and 4 of filling a cup.

Any cup that is out may come, in any order. The number is chosen, the cup is put on, its mass is
captured when it rests. Nothing of the mass is told before it is written down; what does not look
like this cup is asked about first.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.estimating.score import Score, Side, score
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
from kiosk.records.entries import CupHandedIn, CupOut
from kiosk.weighing.pan_events import PanEvent, PanKind

SAME_MASS_DIVISIONS = 2  # two readings of one mass differ by less
FAR_UNDER = Decimal("0.2")  # of the goal: hardly anything inside
FAR_OVER = Decimal(3)
OTHER_CUP_OFF = Decimal("0.5")  # so far off, and ...
OTHER_CUP_FITS = Decimal("0.2")  # ... another cup that is out would be this near


class HandInState(Enum):
    """Where the pair stands."""

    CHOOSE = "choose"
    WHOSE = "whose"
    CLEAR = "clear"
    PUT_ON = "put on"
    WEIGHING = "weighing"
    LIFTED_EARLY = "lifted early"
    LIGHTER = "lighter"
    NOTHING_INSIDE = "nothing inside"
    OTHER_CUP = "other cup"
    SCORED = "scored"
    LIFTED = "lifted"
    LEAVING = "leaving"
    LEFT = "left"
    NEXT = "next"
    SOMEBODY_ELSE = "somebody else"


S = HandInState
_JUDGED = (S.SCORED, S.LIGHTER, S.NOTHING_INSIDE, S.OTHER_CUP)


class HandIn(Procedure):
    """One filled cup. `cups` are the cups that are out; `number` the one chosen, if any."""

    def __init__(
        self,
        surroundings: Surroundings,
        *,
        cups: Sequence[CupOut],
        number: int | None,
        pan: PanMemory,
    ) -> None:
        super().__init__(S.CHOOSE, surroundings, pan)
        self.cups = {cup.number: cup for cup in cups}
        self.number = number
        self.result: CupHandedIn | None = None
        self.score: Score | None = None
        self._settled: PanEvent | None = None
        self._to_lift = False  # it was said that this is not what is to be weighed
        if pan.used:
            self.state = S.CLEAR
        elif pan.loaded:
            # The load may have come to rest before it was asked about: judge it afresh.
            self.state = S.WHOSE if number is None else self._weigh_again()
        elif number is not None:
            self.state = S.PUT_ON

    @property
    def cup(self) -> CupOut | None:
        """The chosen cup."""
        return None if self.number is None else self.cups[self.number]

    def values(self) -> dict[str, object]:
        """`number` (or an empty text) of the chosen cup."""
        return {"number": "" if self.number is None else self.number}

    def _choose(self, event: PersonEvent) -> S:
        if event.value not in self.cups:
            raise NotOfferedError(f"cup {event.value} is not out")
        self.number = event.value
        self._to_lift = False
        return S.PUT_ON

    def _choose_under_load(self, event: PersonEvent) -> S:
        self._choose(event)
        return self._weigh_again()

    def _choose_before_clear(self, event: PersonEvent) -> S:
        self._choose(event)
        return S.CLEAR

    def _weigh_again(self) -> S:
        self._do(WeighAgain())
        return S.WEIGHING

    def _pan_clear(self, _event: PanEvent) -> S:
        self._to_lift = False
        return S.CHOOSE if self.number is None else S.PUT_ON

    def _lifted(self, _event: PanEvent) -> S:
        told, self._to_lift = self._to_lift, False
        return S.PUT_ON if told else S.LIFTED_EARLY

    def _stay(self, _event: PersonEvent) -> S:
        if self.pan.hindrance or not self.pan.loaded:
            return S.PUT_ON
        return S.CLEAR if self.pan.used else self._weigh_again()

    def _not_mine(self, _event: PersonEvent) -> S:
        self.number = None
        return S.WHOSE

    def _leave(self, _event: PersonEvent) -> S:
        return S.LEFT if self.number is None else S.LEAVING

    def _judge_cup(self, event: PanEvent) -> S:
        self._settled = event
        cup = self.cup
        assert cup is not None
        net = (event.grams or Decimal(0)) - cup.empty.grams
        self._to_lift = True
        same = SAME_MASS_DIVISIONS * (event.readability or Decimal(0))
        if net < -same:
            return S.LIGHTER
        if net <= same:
            return S.NOTHING_INSIDE
        if self._far_off(net, event.grams or Decimal(0)):
            return S.OTHER_CUP
        return self._score(confirmed=False)

    def _far_off(self, net: Decimal, gross: Decimal) -> bool:
        goal = self.world.rules.cup_target_g
        if net < FAR_UNDER * goal or net > FAR_OVER * goal:
            return True
        others = (cup for number, cup in self.cups.items() if number != self.number)
        return abs(net - goal) > OTHER_CUP_OFF * goal and any(
            abs(gross - cup.empty.grams - goal) < OTHER_CUP_FITS * goal for cup in others
        )

    def _confirmed(self, _event: PersonEvent) -> S:
        return self._score(confirmed=True)

    def _score(self, *, confirmed: bool) -> S:
        cup = self.cup
        assert cup is not None
        assert self._settled is not None
        filled = self.weighing(self._settled)
        net = filled.grams - cup.empty.grams
        rules = self.world.rules
        self.score = score(rules.cup_target_g, net, rules)
        self.result = CupHandedIn(
            id=self.world.new_id(),
            try_id=cup.id,
            filled=filled,
            net=net,
            target=rules.cup_target_g,
            points=self.score.points,
            side=str(self.score.side),
            confirmed=confirmed,
            at=filled.at,
        )
        self._do(self.result)
        return S.SCORED

    @property
    def double_or_more(self) -> bool:
        """True when the cup holds at least twice the goal, which scores nothing."""
        return (
            self.result is not None
            and self.score is not None
            and self.score.side is Side.OVER
            and self.result.net >= 2 * self.result.target
        )

    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CHOOSE: {
            Person.CHOOSE: judge(_choose, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.WHOSE),
            PanKind.SETTLED: go(S.WHOSE),
            Person.HOME: go(S.LEFT),
        },
        S.WHOSE: {
            Person.CHOOSE: judge(_choose_under_load, S.WEIGHING),
            PanKind.PAN_EMPTY: go(S.CHOOSE),
            PanKind.SILENT: go(S.CHOOSE),
            PanKind.UNREADABLE: go(S.CHOOSE),
            Person.HOME: go(S.LEFT),
        },
        S.CLEAR: {
            PanKind.PAN_EMPTY: judge(_pan_clear, S.PUT_ON, S.CHOOSE),
            Person.CHOOSE: judge(_choose_before_clear, S.CLEAR),
            Person.HOME: judge(_leave, S.LEAVING, S.LEFT),
        },
        S.PUT_ON: {
            Person.CHOOSE: judge(_choose, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.SETTLED: judge(_judge_cup, *_JUDGED),
            Person.HOME: go(S.LEAVING),
        },
        S.WEIGHING: {
            Person.CHOOSE: judge(_choose_under_load, S.WEIGHING),
            PanKind.SETTLED: judge(_judge_cup, *_JUDGED),
            PanKind.LOAD_REMOVED: judge(_lifted, S.LIFTED_EARLY, S.PUT_ON),
            PanKind.PAN_EMPTY: judge(_lifted, S.LIFTED_EARLY, S.PUT_ON),
            PanKind.OVERLOADED: go(S.CLEAR),
            PanKind.UNREADABLE: go(S.CLEAR),
            PanKind.SILENT: go(S.CLEAR),
            Person.HOME: go(S.LEAVING),
        },
        S.LIFTED_EARLY: {
            Person.CHOOSE: judge(_choose, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.SETTLED: judge(_judge_cup, *_JUDGED),
            Person.HOME: go(S.LEAVING),
        },
        S.LIGHTER: {
            Person.CHOOSE: judge(_choose_under_load, S.WEIGHING),
            PanKind.PAN_EMPTY: judge(_lifted, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.DISTURBED: go(S.WEIGHING),
            PanKind.SILENT: go(S.CLEAR),
            Person.HOME: go(S.LEAVING),
        },
        S.NOTHING_INSIDE: {
            Person.CHOOSE: judge(_choose_under_load, S.WEIGHING),
            PanKind.PAN_EMPTY: judge(_lifted, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.DISTURBED: go(S.WEIGHING),
            PanKind.SILENT: go(S.CLEAR),
            Person.HOME: go(S.LEAVING),
        },
        S.OTHER_CUP: {
            Person.YES: judge(_confirmed, S.SCORED),
            Person.NO: judge(_not_mine, S.WHOSE),
            PanKind.PAN_EMPTY: judge(_lifted, S.PUT_ON),
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.DISTURBED: go(S.WEIGHING),
            PanKind.OVERLOADED: go(S.CLEAR),
            PanKind.UNREADABLE: go(S.CLEAR),
            PanKind.SILENT: go(S.CLEAR),
            Person.HOME: go(S.LEAVING),
        },
        S.SCORED: {
            PanKind.PAN_EMPTY: go(S.LIFTED),
            Person.GO_ON: go(S.NEXT),
            Person.HOME: go(S.LEFT),
        },
        S.LIFTED: {
            PanKind.LOAD_PLACED: go(S.SOMEBODY_ELSE),
            Person.GO_ON: go(S.NEXT),
            Person.HOME: go(S.LEFT),
        },
        S.LEAVING: {
            Person.STAY: judge(_stay, S.PUT_ON, S.WEIGHING, S.CLEAR),
            Person.LEAVE: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT, S.NEXT, S.SOMEBODY_ELSE})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.CHOOSE: Ask(title="hand_in.choose.title", body="hand_in.choose.body", step=3),
        S.WHOSE: Ask(title="hand_in.whose.title", body="hand_in.whose.body", step=3),
        S.CLEAR: Ask(title="cup.clear.title", body="hand_in.clear.body", step=3, art=Art.CLEAR_PAN),
        S.PUT_ON: Ask(title="hand_in.put_on.title", body="hand_in.put_on.body", step=3),
        S.WEIGHING: Ask(title="hand_in.weighing.title", body="hand_in.put_on.body", step=3),
        S.LIFTED_EARLY: Ask(title="hand_in.early.title", body="hand_in.early.body", step=3),
        S.LIGHTER: Ask(title="hand_in.lighter.title", body="hand_in.lighter.body", step=3),
        S.NOTHING_INSIDE: Ask(title="hand_in.nothing.title", body="hand_in.nothing.body", step=3),
        S.OTHER_CUP: Ask(
            title="hand_in.other.title", body="hand_in.other.body", step=3, art=Art.FILLED_CUP
        ),
        S.SCORED: Ask(title="hand_in.scored.title", step=4, needs_pan=False),
        S.LIFTED: Ask(title="hand_in.scored.title", step=4, needs_pan=False),
        S.LEAVING: Ask(title="cup.leave.title", body="cup.leave.body", step=3, needs_pan=False),
    }
