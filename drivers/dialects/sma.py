"""SMA SCP-0499, levels 1 and 2: the conversation with one balance.

The displayed weight is asked for again and again (``W``), at most ten times a second; a balance
that sends on its own is heard just as well. After the first reading the balance is asked about
itself, one question between two weights, once for each opening of the port. ``Z`` goes out only
when nobody else waits for an answer, because its answer looks like that to ``W``.
"""

from __future__ import annotations

from drivers.dialects.sma_introduction import Introduction
from drivers.dialects.sma_replies import (
    Information,
    NotUnderstood,
    Reply,
    SayAgain,
    Weight,
    decode,
)
from drivers.dialects.sma_weight import reading_of
from drivers.dialects.sma_zeroing import Zeroing
from drivers.events import BalanceEvent, CommandRefused, LineUnreadable, ReadingReceived
from drivers.framing import Frame, Framer
from drivers.packet import Packet

WEIGH_EVERY = 0.1  # seconds, at the fastest
PATIENCE = 1.0  # seconds until an unanswered request is given up
HEAD_START = 0.3  # seconds that a question has for itself before weighing goes on
_SLACK = 1e-6  # clocks that are advanced in steps miss the mark by a rounding


class Sma:
    """A dialect (see drivers.dialects) that polls."""

    name = "sma"

    def __init__(self, balance_name: str) -> None:
        self._balance = balance_name
        self._framer = Framer()
        self._begin()

    def _begin(self) -> None:
        self._framer.clear()
        self._introduction = Introduction()
        self._introduced = False
        self._zeroing = Zeroing()
        self._weighed_at: float | None = None  # the last W went out
        self._weighing = False  # it has no answer yet
        self._questioned_at: float | None = None  # a question is out since
        self._may_question = False  # a weight came since the last question

    def reset(self, now: float) -> None:
        """Begin anew at ``now``; the first request is due at once."""
        self._begin()

    def zero(self) -> None:
        """Ask for zero; CommandDone or CommandRefused will tell."""
        self._zeroing.want()

    def feed(self, packet: Packet) -> list[BalanceEvent]:
        """What the packet tells, and which waiting is over by its time."""
        events: list[BalanceEvent] = []
        for piece in self._framer.feed(packet.data):
            reply = decode(piece.body) if isinstance(piece, Frame) else None
            events += self._heard(reply, piece.raw, packet.at)
        return events + self._given_up(packet.at)

    def due(self, now: float) -> bytes:
        """The request to send at ``now``."""
        if self._zeroing.wanted:
            return self._ask_zero(now)
        question = self._introduction.question
        if question is not None and self._may_question and not self._waiting():
            self._questioned_at, self._may_question = now, False
            return _request(question)
        if self._weight_is_due(now):
            self._weighed_at, self._weighing = now, True
            return _request(b"W")
        return b""

    def _ask_zero(self, now: float) -> bytes:
        if self._waiting() and not self._answer_is_late(now):
            return b""
        self._zeroing.sent(now)
        return _request(b"Z")

    def _weight_is_due(self, now: float) -> bool:
        if self._weighed_at is None:
            return True
        if self._zeroing.awaits_answer:
            return False
        if self._questioned_at is not None and not _passed(self._questioned_at, HEAD_START, now):
            return False
        return _passed(self._weighed_at, PATIENCE if self._weighing else WEIGH_EVERY, now)

    def _waiting(self) -> bool:
        return self._weighing or self._questioned_at is not None or self._zeroing.awaits_answer

    def _answer_is_late(self, now: float) -> bool:
        asked = (self._weighed_at if self._weighing else None, self._questioned_at)
        return all(_passed(at, PATIENCE, now) for at in asked if at is not None)

    def _heard(self, reply: Reply | None, raw: bytes, now: float) -> list[BalanceEvent]:
        match reply:
            case Weight():
                return self._weight(reply, raw, now)
            case Information():
                self._introduction.told(reply)
                self._questioned_at = None
                return []
            case NotUnderstood():
                return self._not_understood(now)
            case SayAgain():
                return self._damaged(now)
            case None:
                return [LineUnreadable(raw=raw, at=now)]
            case _:  # diagnostics, which were not asked for
                return []

    def _weight(self, weight: Weight, raw: bytes, now: float) -> list[BalanceEvent]:
        reading = reading_of(weight, raw=raw, at=now, balance=self._balance)
        events: list[BalanceEvent] = [ReadingReceived(reading=reading)]
        self._may_question = True
        if not self._zeroing.awaits_answer:
            self._weighing = False
        outcome = self._zeroing.shown(weight, reading.value, now)
        return [*events, outcome] if outcome else events

    def _not_understood(self, now: float) -> list[BalanceEvent]:
        """``?`` answers what was asked first."""
        if self._zeroing.awaits_answer:
            return [self._zeroing.not_understood(now)]
        if self._questioned_at is not None:
            self._questioned_at = None
            self._introduction.no_more()
            return []
        if not self._weighing:
            return []
        # Still counted as unanswered: to ask ten times a second would not help.
        reason = "the balance does not know this request"
        return [CommandRefused(command="weigh", reason=reason, at=now)]

    def _damaged(self, now: float) -> list[BalanceEvent]:
        """``!``: what was asked first will be asked again."""
        if self._zeroing.awaits_answer:
            outcome = self._zeroing.damaged(now)
            return [outcome] if outcome else []
        if self._questioned_at is not None:
            self._questioned_at = None
            self._introduction.damaged()
        else:
            self._weighing = False
        return []

    def _given_up(self, now: float) -> list[BalanceEvent]:
        """What comes of the answers that did not come, and of the last one that did."""
        events: list[BalanceEvent] = []
        if outcome := self._zeroing.late(now):
            events.append(outcome)
        if self._questioned_at is not None and _passed(self._questioned_at, PATIENCE, now):
            self._questioned_at = None
            self._introduction.no_more()
        if self._introduction.question is None and not self._introduced:
            self._introduced = True
            events.append(self._introduction.result(now))
        return events


def _request(letter: bytes) -> bytes:
    return b"\n" + letter + b"\r"


def _passed(since: float, seconds: float, now: float) -> bool:
    return now - since >= seconds - _SLACK
