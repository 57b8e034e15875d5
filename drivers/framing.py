"""Frames that begin with a line feed and end with a carriage return (SMA SCP-0499).

A line feed always begins anew: a frame that lost its end is never glued to the next one. What
stands outside frames (start-up text, echoed keys) comes out as noise, in pieces no longer than a
frame may be, so memory stays bounded. Where a stream is cut makes no difference.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

LF = 0x0A
CR = 0x0D
LONGEST = 64  # bytes with both ends; the longest reply of the standard has 31


@dataclass(frozen=True, slots=True)
class Frame:
    """A whole frame: ``raw`` as it came, ``body`` without its two ends."""

    raw: bytes

    @property
    def body(self) -> bytes:
        """What stands between line feed and carriage return."""
        return self.raw[1:-1]


@dataclass(frozen=True, slots=True)
class Noise:
    """Bytes that belong to no whole frame."""

    raw: bytes


class Framer:
    """Takes bytes as they come and gives whole frames, and noise, in order."""

    def __init__(self) -> None:
        self._held = bytearray()

    def feed(self, data: bytes) -> Iterator[Frame | Noise]:
        """The frames and the noise that ``data`` completes."""
        for byte in data:
            if byte == LF and self._held:
                yield Noise(self._taken())
            self._held.append(byte)
            if byte == CR:
                whole = self._held[0] == LF
                yield Frame(self._taken()) if whole else Noise(self._taken())
            elif len(self._held) >= LONGEST:
                yield Noise(self._taken())

    def clear(self) -> None:
        """Forget what was begun."""
        self._held.clear()

    def _taken(self) -> bytes:
        taken = bytes(self._held)
        self._held.clear()
        return taken
