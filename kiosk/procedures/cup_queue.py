"""The cup table of a round: cup after cup, weighed empty before the sitting or handed in after it.

Nothing is pressed between cups. A cup is recorded when it rests; when it is lifted and the pan has
been seen empty, the next one of the list is asked for. What lies on the empty pan is written down
with the cup; more than two divisions of it are brushed away first. Nothing here tells a mass.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from typing import ClassVar

from kiosk.procedures.procedure import Ask, Person, Rule, Signal, go, judge
from kiosk.procedures.queue_steps import QueueState, QueueSteps
from kiosk.weighing.pan_events import PanKind

S = QueueState
Q = QueueSteps
_READY = (S.ALL_DONE, S.NO_EMPTY, S.CLEAR, S.WEIGHING, S.LIFTED, S.DIRTY, S.PUT_ON)
_JUDGED = (S.RECORDED, S.ODD, S.DIRTY)


class CupQueue(QueueSteps):
    """One pass of one sitting."""

    _SEEN: ClassVar[Rule] = judge(Q.pan_seen, *_READY)
    _LIFTED: ClassVar[Rule] = judge(Q.lift, S.LIFTED, S.ALL_DONE)
    _LOSS: ClassVar[Rule] = judge(Q.lose_pan, S.CLEAR, S.ALL_DONE)
    _LOST: ClassVar[Mapping[Signal, Rule]] = {
        PanKind.SILENT: _LOSS,
        PanKind.UNREADABLE: _LOSS,
        PanKind.OVERLOADED: _LOSS,
    }
    _LEFT_BEHIND: ClassVar[Rule] = judge(Q.find_left, S.DIRTY, S.CLEAR)
    _HOME: ClassVar[Mapping[Signal, Rule]] = {Person.HOME: go(S.LEFT)}
    _UNDO: ClassVar[Mapping[Signal, Rule]] = {Person.UNDO: judge(Q.undo, *_READY)}
    _ELSE: ClassVar[Mapping[Signal, Rule]] = {
        Person.CHOOSE: judge(Q.happen, *_READY),
        Person.MISHAP: go(S.MISHAP),
        Person.MORE: go(S.CHOOSING),
        **_UNDO,
        **_HOME,
    }
    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.CLEAR: {PanKind.PAN_EMPTY: _SEEN, PanKind.SETTLED: _LEFT_BEHIND, **_ELSE},
        S.LIFTED: {
            PanKind.PAN_EMPTY: _SEEN,
            PanKind.SETTLED: _LEFT_BEHIND,
            PanKind.LOAD_PLACED: go(S.CLEAR),  # before the pan was seen empty
            **_LOST,
            **_ELSE,
        },
        S.DIRTY: {PanKind.PAN_EMPTY: _SEEN, PanKind.SETTLED: _LEFT_BEHIND, **_LOST, **_ELSE},
        S.PUT_ON: {
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.SETTLED: judge(Q.judge_cup, *_JUDGED),
            PanKind.PAN_EMPTY: _SEEN,
            **_LOST,
            **_ELSE,
        },
        S.WEIGHING: {
            PanKind.SETTLED: judge(Q.judge_cup, *_JUDGED),
            PanKind.LOAD_REMOVED: _LIFTED,
            PanKind.PAN_EMPTY: _SEEN,
            **_LOST,
            **_ELSE,
        },
        S.ODD: {
            Person.YES: judge(Q.record, S.RECORDED),
            Person.NO: judge(Q.refuse, S.CHOOSING, S.CLEAR),
            PanKind.LOAD_PLACED: go(S.WEIGHING),
            PanKind.DISTURBED: go(S.WEIGHING),
            PanKind.LOAD_REMOVED: _LIFTED,
            PanKind.PAN_EMPTY: _SEEN,
            **_LOST,
            **_HOME,
        },
        S.RECORDED: {
            PanKind.PAN_EMPTY: _SEEN,
            PanKind.LOAD_REMOVED: _LIFTED,
            PanKind.SETTLED: judge(Q.find_beside, S.RECORDED, S.DIRTY, S.ALL_DONE),
            Person.MORE: go(S.CHOOSING),
            **_LOST,
            **_UNDO,
            **_HOME,
        },
        S.CHOOSING: {
            Person.CHOOSE: judge(Q.choose, *_READY, S.RECORDED, S.ODD),
            Person.NO: judge(Q.go_back, *_READY, S.RECORDED),
            **_HOME,
        },
        S.MISHAP: {
            Person.CHOOSE: judge(Q.happen, *_READY),
            Person.NO: judge(Q.go_back, *_READY),
            **_HOME,
        },
        S.NO_EMPTY: {Person.GO_ON: judge(Q.weigh_empty, *_READY), **_ELSE},
        S.ALL_DONE: {Person.MORE: go(S.CHOOSING), **_UNDO, **_HOME},
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.CLEAR: Ask(title="queue.clear"),
        S.LIFTED: Ask(title="queue.lifted"),
        S.DIRTY: Ask(title="queue.dirty"),
        S.PUT_ON: Ask(title="queue.put_on"),
        S.WEIGHING: Ask(title="queue.weighing"),
        S.ODD: Ask(title="queue.odd.filled.title"),
        S.RECORDED: Ask(title="queue.recorded"),
        S.CHOOSING: Ask(title="queue.choosing", needs_pan=False),
        S.MISHAP: Ask(title="queue.mishap", needs_pan=False),
        S.NO_EMPTY: Ask(title="queue.no_empty", needs_pan=False),
        S.ALL_DONE: Ask(title="queue.all_done", needs_pan=False),
    }
