"""The newest lines of a balance as they came, at a pace at which a person can follow them.

Pure: packets in, rows out. Of each second only the last line stays, and the newest of all.
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from math import floor

from drivers.learning.places import Part, parts_of
from drivers.line_framing import ETX, STX, Line, LineFramer
from drivers.line_shape import LineShape
from drivers.packet import Packet

ROWS = 5
NEWEST_EVERY_S = 0.2  # a line that changes more often cannot be read


@dataclass(frozen=True, slots=True)
class RawRow:
    """A line as it is shown, and the second at which it was complete.

    A byte that does not print stands as its two hexadecimal digits, and ``hidden`` says so for
    both; ``parts`` says of each character what it was found to be.
    """

    at: float
    text: str
    hidden: tuple[bool, ...]
    parts: tuple[Part | None, ...]


class RawTail:
    """Remembers the last lines."""

    def __init__(self) -> None:
        self._framer = LineFramer()
        self._lines: deque[tuple[float, Line]] = deque(maxlen=ROWS)
        self._newest: tuple[float, Line] | None = None

    def feed(self, packet: Packet) -> None:
        """Take the next bytes."""
        for line in self._framer.feed(packet.data):
            if self._lines and floor(self._lines[-1][0]) == floor(packet.at):
                self._lines.pop()
            self._lines.append((packet.at, line))

    def rows(self, shape: LineShape | None) -> tuple[RawRow, ...]:
        """The lines, oldest first; parts are found by ``shape``."""
        lines = list(self._lines)
        if lines:
            lines[-1] = self._readable(lines[-1])
        return tuple(_row(at, line, shape) for at, line in lines)

    def _readable(self, newest: tuple[float, Line]) -> tuple[float, Line]:
        shown = self._newest
        if shown is None or newest[0] - shown[0] >= NEWEST_EVERY_S:
            shown = self._newest = newest
        return shown


def _row(at: float, line: Line, shape: LineShape | None) -> RawRow:
    text = line.text
    raw = bytes([STX]) + line.raw + bytes([ETX]) if line.wrapped else line.raw
    found = iter(parts_of(text, shape) if text is not None and shape is not None else ())
    shown, hidden, parts = "", [], []
    for byte in raw:
        if 0x20 <= byte < 0x7F:
            shown += chr(byte)
            hidden.append(False)
            parts.append(next(found, None))
        else:
            shown += f"{byte:02X}"
            hidden += [True, True]
            parts += [None, None]
            if byte not in (STX, ETX):
                next(found, None)  # a tab, which is one character of the text
    return RawRow(at, shown, tuple(hidden), tuple(parts))
