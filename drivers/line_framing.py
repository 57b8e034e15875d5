"""Lines of ASCII as balances send them, cut out of a stream of bytes.

A line ends with CR, LF or both, or it stands between STX and ETX; what follows an ETX on the same
line are check characters, which belong to no line. A line of which the beginning may be missing
(the first one after opening, one after a stretch without an end) is given as not ``whole``. Where
a stream is cut makes no difference, and memory stays bounded.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

STX, ETX, LF, CR = 0x02, 0x03, 0x0A, 0x0D
LONGEST = 120  # bytes; print-outs for one line of paper have at most eighty
MOST_CHECK_BYTES = 4
_ENDS = (CR, LF, ETX)
_TEXT = frozenset(range(0x20, 0x7F)) | {0x09}


@dataclass(frozen=True, slots=True)
class Line:
    """A line: ``raw`` without its line end, ``whole`` if its beginning was seen.

    ``wrapped`` if it stood between STX and ETX; the two are not part of ``raw``.
    """

    raw: bytes
    whole: bool
    wrapped: bool = False

    @property
    def text(self) -> str | None:
        """The line as text, tabs as spaces; None if it holds anything but printable ASCII."""
        if not _TEXT.issuperset(self.raw):
            return None
        return self.raw.decode("ascii").replace("\t", " ")


class LineFramer:
    """Takes bytes as they come and gives lines in order; empty ones are passed over."""

    def __init__(self, whole: bool = False) -> None:
        self._held = bytearray()
        self.begin(whole)

    def begin(self, whole: bool) -> None:
        """Begin anew; ``whole`` if what comes next is known to begin a line."""
        self._held.clear()
        self._whole = whole
        self._wrapped = False
        self._check_bytes = 0  # that may still follow an ETX

    @property
    def holding(self) -> bool:
        """Whether a line has begun that has not ended."""
        return bool(self._held)

    def feed(self, data: bytes) -> Iterator[Line]:
        """The lines that ``data`` completes."""
        for byte in data:
            if byte == STX:
                yield from self._taken(whole=False)  # it was never ended
                self._begin_line(wrapped=True)
            elif byte in _ENDS:
                yield from self._taken(self._whole)
                self._begin_line()
                self._check_bytes = MOST_CHECK_BYTES if byte == ETX else 0
            elif self._check_bytes:
                self._check_bytes -= 1
                self._whole = self._check_bytes > 0
            else:
                yield from self._hold(byte)

    def _begin_line(self, *, wrapped: bool = False) -> None:
        self._whole, self._wrapped, self._check_bytes = True, wrapped, 0

    def _hold(self, byte: int) -> Iterator[Line]:
        self._held.append(byte)
        if len(self._held) >= LONGEST:
            yield from self._taken(whole=False)
            self._whole = self._wrapped = False

    def _taken(self, whole: bool) -> Iterator[Line]:
        if self._held:
            line = Line(bytes(self._held), whole, self._wrapped)
            self._held.clear()
            yield line
