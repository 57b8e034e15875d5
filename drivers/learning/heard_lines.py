"""The whole lines of a stream with their times, and what ends them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from drivers.line_framing import LineFramer
from drivers.line_shape import Terminator
from drivers.line_text import Number, bare, numbers_in
from drivers.packet import Packet


@dataclass(frozen=True)
class HeardLine:
    """One line at the second at which it was complete; ``sent`` is its text as it came."""

    at: float
    sent: str
    wrapped: bool

    @cached_property
    def text(self) -> str:
        """The line without square brackets."""
        return bare(self.sent)[0]

    @property
    def bracketed(self) -> bool:
        """Whether it had any."""
        return self.text != self.sent

    @cached_property
    def with_point(self) -> list[Number]:
        """Its numbers, if the decimal sign is a point."""
        return numbers_in(self.text, ".")

    @cached_property
    def with_comma(self) -> list[Number]:
        """Its numbers, if the decimal sign is a comma."""
        return numbers_in(self.text, ",")

    def numbers(self, point: str) -> list[Number]:
        """Its numbers, if the decimal sign is ``point``."""
        return self.with_comma if point == "," else self.with_point


def heard_lines(packets: Sequence[Packet]) -> list[HeardLine]:
    """The lines of printable ASCII; those are left out whose beginning may be missing."""
    framer = LineFramer()
    return [
        HeardLine(packet.at, text, line.wrapped)
        for packet in packets
        for line in framer.feed(packet.data)
        if line.whole and (text := line.text) is not None and text.strip()
    ]


def terminator_of(packets: Sequence[Packet], lines: Sequence[HeardLine]) -> Terminator:
    """What ends most of the lines."""
    if 2 * sum(line.wrapped for line in lines) > len(lines):
        return Terminator.STX_ETX
    data = b"".join(packet.data for packet in packets)
    both = data.count(b"\r\n")
    counts = {
        Terminator.CRLF: both,
        Terminator.CR: data.count(b"\r") - both,
        Terminator.LF: data.count(b"\n") - both,
    }
    return max(counts, key=lambda terminator: counts[terminator])
