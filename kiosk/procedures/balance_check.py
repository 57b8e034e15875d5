"""Check the balance: known loads, five weighings of one of them, the places of the pan, the zero.

Each weighing is captured when it rests, and the pan is emptied after each, so that its zero is
seen as often. A load that is not fine is asked for once more: dirt on the pan and a thing that
touches the wall are the usual reasons.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.estimating.balance_check import Verdict
from kiosk.procedures.check_plan import (
    ANY_COINS,
    MOST_LOADS,
    Task,
    further_tests,
    heaviest,
    loads_of,
)
from kiosk.procedures.check_procedure import CheckProcedure
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Ask,
    Person,
    PersonEvent,
    Rule,
    Signal,
    Surroundings,
    go,
    judge,
)
from kiosk.records.entries import CheckRole
from kiosk.weighing.pan_events import PanEvent, PanKind

# Farther off than this share, it is another thing (or another unit) rather than a poor balance.
OTHER_THING_SHARE = Decimal("0.2")


class CheckState(Enum):
    """Where the coach stands."""

    KIT = "kit"
    COINS = "coins"
    LOADS = "loads"
    CLEAR = "clear"
    PUT_ON = "put on"
    SETTLING = "settling"
    SHOWN = "shown"
    DOUBT = "doubt"
    OTHER_THING = "other thing"
    RESULTS = "results"
    LEFT = "left"
    CHECKED = "checked"


S = CheckState


class BalanceCheck(CheckProcedure):
    """One check of the balance in use, from the choice of what is at hand to the verdicts."""

    def __init__(self, surroundings: Surroundings, *, pan: PanMemory) -> None:
        super().__init__(S.KIT, surroundings, pan)
        self._asked_again: set[Task] = set()
        self._at_end = False  # results were seen: what is weighed again leads back to them

    # The choice of things --------------------------------------------------------------------

    def _choose_kit(self, event: PersonEvent) -> S:
        self.kit = event.value
        if self.kit == ANY_COINS:
            return S.COINS
        return S.LOADS if loads_of(self.kit) else self._begin_tests()

    def _choose_coins(self, event: PersonEvent) -> S:
        self.kit = event.value
        return S.LOADS

    def _choose_load(self, event: PersonEvent) -> S:
        if event.value is None:  # no more of them
            return self._begin_tests()
        self._to_do = [Task(role=CheckRole.LOAD, thing=event.value)]
        return self._ask()

    def _begin_tests(self) -> S:
        loads = tuple(each.task.thing for each in self.log.of(CheckRole.LOAD))
        self._to_do = list(further_tests(heaviest(loads)))
        return self._ask()

    def _ask(self) -> S:
        return S.CLEAR if self.pan.loaded else S.PUT_ON

    # A weighing ------------------------------------------------------------------------------

    def _capture(self, event: PanEvent) -> S:
        task = self._to_do[0]
        self.log.readability = event.readability
        self._zero_unseen = False
        expected = self.log.expected(task)
        self.now = self._keep(task, event)
        shown = self.now.grams
        if expected is not None and abs(shown - expected) > OTHER_THING_SHARE * expected:
            return S.OTHER_THING
        self.log.replace(self.now)
        if task.role is not CheckRole.LOAD or task in self._asked_again:
            return S.SHOWN
        found = self.log.finding(self.now)
        return S.DOUBT if found and found.verdict is Verdict.NOT_FINE else S.SHOWN

    def _emptied(self, event: PanEvent) -> S:
        self._note_zero(event)
        self.now = None
        task = self._to_do.pop(0)
        if self._to_do:
            return S.PUT_ON
        return self._after(task.role)

    def _after(self, role: CheckRole) -> S:
        if self._at_end or role is not CheckRole.LOAD:
            return self._end()
        if self.loads_left and len(self.log.of(CheckRole.LOAD)) < MOST_LOADS:
            return S.LOADS
        return self._begin_tests()

    def _end(self) -> S:
        self._at_end = True
        return S.RESULTS

    # Again, or not at all --------------------------------------------------------------------

    def _lose_zero(self, _event: PanEvent) -> S:
        self._zero_unseen = True
        return self.state  # type: ignore[return-value]  # one of those that offer it

    def _emptied_to_repeat(self, event: PanEvent) -> S:
        self._note_zero(event)
        return self._once_more()

    def _once_more(self) -> S:
        self._asked_again.add(self._to_do[0])
        self.now = None
        return self._ask()

    def _weigh_again(self, _event: PersonEvent) -> S:
        return self._once_more()

    def _leave_so(self, _event: PersonEvent) -> S:
        assert self.now is not None
        self.log.replace(self.now)
        return S.SHOWN

    def _skip(self, _event: PersonEvent) -> S:
        role = self._to_do[0].role
        self.now = None
        self._to_do = [task for task in self._to_do if task.role is not role]
        if self._to_do:
            return self._ask()
        return S.LOADS if role is CheckRole.LOAD and not self._at_end else self._end()

    def _weigh_worst(self, _event: PersonEvent) -> S:
        worst = self.worst
        assert worst is not None
        self._to_do = [worst]
        self._asked_again.add(worst)
        return self._ask()

    def offers(self, person: Person) -> bool:
        """As the table says; only a load that was not fine is weighed again at the end."""
        if person is Person.UNDO and self.state is S.RESULTS:
            return self.worst is not None
        return super().offers(person)

    # The end ---------------------------------------------------------------------------------

    def _finish(self, _event: PersonEvent) -> S:
        self._write_verdicts()
        return S.CHECKED

    def _leave(self, _event: PersonEvent) -> S:
        self._write_verdicts()
        return S.LEFT

    _HOME: ClassVar[Rule] = judge(_leave, S.LEFT)
    _SKIP: ClassVar[Rule] = judge(_skip, S.LOADS, S.PUT_ON, S.CLEAR, S.RESULTS)
    _CAPTURE: ClassVar[Rule] = judge(_capture, S.SHOWN, S.DOUBT, S.OTHER_THING)
    _AGAIN: ClassVar[Rule] = judge(_weigh_again, S.CLEAR, S.PUT_ON)
    _DOUBTED: ClassVar[Mapping[Signal, Rule]] = {
        PanKind.PAN_EMPTY: judge(_emptied_to_repeat, S.PUT_ON, S.CLEAR),
        PanKind.SILENT: judge(_lose_zero, S.DOUBT, S.OTHER_THING),
        PanKind.UNREADABLE: judge(_lose_zero, S.DOUBT, S.OTHER_THING),
        Person.UNDO: _AGAIN,
        Person.KEEP: judge(_leave_so, S.SHOWN),
        Person.HOME: _HOME,
    }
    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.KIT: {
            Person.CHOOSE: judge(_choose_kit, S.COINS, S.LOADS, S.PUT_ON, S.CLEAR),
            Person.HOME: _HOME,
        },
        S.COINS: {Person.CHOOSE: judge(_choose_coins, S.LOADS), Person.HOME: _HOME},
        S.LOADS: {
            Person.CHOOSE: judge(_choose_load, S.PUT_ON, S.CLEAR),
            Person.HOME: _HOME,
        },
        S.CLEAR: {PanKind.PAN_EMPTY: go(S.PUT_ON), Person.GO_ON: _SKIP, Person.HOME: _HOME},
        S.PUT_ON: {
            PanKind.LOAD_PLACED: go(S.SETTLING),
            PanKind.SETTLED: _CAPTURE,
            Person.GO_ON: _SKIP,
            Person.HOME: _HOME,
        },
        S.SETTLING: {
            PanKind.SETTLED: _CAPTURE,
            PanKind.LOAD_REMOVED: go(S.PUT_ON),
            PanKind.PAN_EMPTY: go(S.PUT_ON),
            PanKind.OVERLOADED: go(S.CLEAR),
            PanKind.UNREADABLE: go(S.CLEAR),
            PanKind.SILENT: go(S.CLEAR),
            Person.GO_ON: _SKIP,
            Person.HOME: _HOME,
        },
        S.SHOWN: {
            PanKind.PAN_EMPTY: judge(_emptied, S.PUT_ON, S.CLEAR, S.LOADS, S.RESULTS),
            PanKind.SILENT: judge(_lose_zero, S.SHOWN),
            PanKind.UNREADABLE: judge(_lose_zero, S.SHOWN),
            Person.UNDO: _AGAIN,
            Person.HOME: _HOME,
        },
        S.DOUBT: _DOUBTED,
        S.OTHER_THING: _DOUBTED,
        S.RESULTS: {
            Person.KEEP: judge(_finish, S.CHECKED),
            Person.UNDO: judge(_weigh_worst, S.PUT_ON, S.CLEAR),
            Person.HOME: _HOME,
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT, S.CHECKED})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.KIT: Ask(title="check.kit.title", needs_pan=False),
        S.COINS: Ask(title="check.coins.title", needs_pan=False),
        S.LOADS: Ask(title="check.loads.title", needs_pan=False),
        S.CLEAR: Ask(title="check.clear.title"),
        S.PUT_ON: Ask(title="check.put_on.title"),
        S.SETTLING: Ask(title="check.settling.title"),
        S.SHOWN: Ask(title="check.shown.title"),
        S.DOUBT: Ask(title="check.doubt.title"),
        S.OTHER_THING: Ask(title="check.other.title"),
        S.RESULTS: Ask(title="check.results.nothing", needs_pan=False),
    }
