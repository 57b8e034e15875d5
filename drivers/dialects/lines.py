"""Any balance that sends lines of ASCII: by its LineShape, or by rules for unknown ones.

Nothing is ever sent. Of the first line after opening the beginning may be missing. It counts if
there was silence before it, or if the next line shows that it was whole; else it is dropped.
"""

from __future__ import annotations

import re

from drivers.dialects.line_told import Told
from drivers.dialects.lines_shaped import read_shaped
from drivers.dialects.lines_unknown import read_unknown
from drivers.events import (
    BalanceEvent,
    CommandRefused,
    Identified,
    LineUnreadable,
    ReadingReceived,
)
from drivers.line_framing import Line, LineFramer
from drivers.line_shape import LineShape, Terminator
from drivers.packet import Packet
from drivers.units import to_grams

NAME = "lines"
SILENCE = 0.15  # seconds without a byte: no line of any speed pauses so long
ENDLESS = 1.0  # seconds: the slowest balance sends a whole line in less
NO_ZERO = "this balance takes no requests: press its own zero key"


class Lines:
    """A dialect (see drivers.dialects) that only listens; without ``shape`` by the usual rules."""

    def __init__(self, balance_name: str, shape: LineShape | None = None) -> None:
        self._balance = balance_name
        self._shape = shape
        self._framer = LineFramer()
        self._begin(None)

    def _begin(self, opened_at: float | None) -> None:
        self._framer.begin(whole=False)
        self._opened_at = opened_at  # None once something came, or if nobody said
        self._doubtful: tuple[Line, float] | None = None  # the first line, and when it came
        self._begun_at: float | None = None  # a line that has not ended yet
        self._last_unit: str | None = None
        self._identified = False
        self._zero_wanted = False

    @property
    def name(self) -> str:
        """The name by which a person chooses it."""
        return NAME if self._shape is None else self._shape.name

    def reset(self, now: float) -> None:
        """Begin anew: the port was opened at ``now``."""
        self._begin(now)

    def due(self, now: float) -> bytes:
        """Nothing, ever."""
        return b""

    def zero(self) -> None:
        """Will be refused."""
        self._zero_wanted = True

    def feed(self, packet: Packet) -> list[BalanceEvent]:
        """What the packet tells."""
        events: list[BalanceEvent] = []
        if self._zero_wanted:
            self._zero_wanted = False
            events.append(CommandRefused(command="zero", reason=NO_ZERO, at=packet.at))
        if packet.data and self._opened_at is not None:
            if packet.at - self._opened_at >= SILENCE:
                self._framer.begin(whole=True)
            self._opened_at = None
        for line in self._framer.feed(packet.data):
            self._begun_at = None
            events += self._line(line, packet.at)
        return events + self._endless(packet)

    def _endless(self, packet: Packet) -> list[BalanceEvent]:
        """Bytes that come and come without a line's end are told of before there are many."""
        if not packet.data or not self._framer.holding:
            return []
        if self._begun_at is None:
            self._begun_at = packet.at
        if packet.at - self._begun_at < ENDLESS:
            return []
        self._begun_at = packet.at
        return [LineUnreadable(raw=packet.data, at=packet.at)]

    def _line(self, line: Line, at: float) -> list[BalanceEvent]:
        if not line.whole:
            events = self._give_up_doubtful()
            self._doubtful = (line, at)
            return events
        return self._resolve_doubtful(line) + self._heard(line, at)

    def _resolve_doubtful(self, witness: Line) -> list[BalanceEvent]:
        if self._doubtful is not None and _alike(self._doubtful[0], witness):
            (line, at), self._doubtful = self._doubtful, None
            return self._heard(line, at)
        return self._give_up_doubtful()

    def _give_up_doubtful(self) -> list[BalanceEvent]:
        doubtful, self._doubtful = self._doubtful, None
        return [] if doubtful is None else [LineUnreadable(raw=doubtful[0].raw, at=doubtful[1])]

    def _heard(self, line: Line, at: float) -> list[BalanceEvent]:
        told = self._read(line)
        if told is None:
            return [LineUnreadable(raw=line.raw, at=at)]
        reading = told.reading(raw=line.raw, at=at, balance=self._balance)
        events: list[BalanceEvent] = [ReadingReceived(reading=reading)]
        if reading.grams is not None:
            self._last_unit = reading.unit
            events += self._identify(at)
        return events

    def _read(self, line: Line) -> Told | None:
        text = line.text
        if text is None:
            return None
        if self._shape is None:
            return read_unknown(text)
        if line.wrapped != (self._shape.terminator is Terminator.STX_ETX):
            return None
        return read_shaped(text, self._shape, self._last_unit)

    def _identify(self, at: float) -> list[BalanceEvent]:
        """Once: the readability that was learned, while the balance shows the same unit."""
        shape = self._shape
        if self._identified or shape is None or shape.readability is None:
            return []
        if self._last_unit != shape.unit:
            return []
        self._identified = True
        step = to_grams(shape.readability, shape.unit)
        return [Identified(name=shape.name, capacity=None, readability=step, at=at)]


def _alike(line: Line, witness: Line) -> bool:
    """True if a line has the pattern of one that is known to be whole, from its first character.

    A number without anything before it may have lost digits, however alike the two are.
    """
    mask = _mask(line.raw)
    return mask == _mask(witness.raw) and not mask.startswith(b"9")


def _mask(raw: bytes) -> bytes:
    """Letters as A, digits as 9, both signs as a plus; everything else as it is."""
    return re.sub(rb"[A-Za-z]", b"A", re.sub(rb"[0-9]", b"9", raw)).replace(b"-", b"+")
