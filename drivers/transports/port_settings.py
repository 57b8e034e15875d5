"""Speed, bits, parity and stop bits of a serial port, written like ``9600-8N1``."""

from __future__ import annotations

import re
from dataclasses import dataclass

from drivers.errors import BadAddress

SPEEDS = (
    300, 600, 1200, 2400, 4800, 9600, 14400, 19200,
    28800, 38400, 57600, 115200, 230400, 460800, 921600,
)  # fmt: skip
_WRITTEN = re.compile(r"([0-9]{3,6})-([78])([NEO])([12])")


@dataclass(frozen=True, slots=True)
class PortSettings:
    """How bits travel on a serial line; ``parity`` is N, E or O."""

    speed: int = 9600
    data_bits: int = 8
    parity: str = "N"
    stop_bits: int = 1

    def __str__(self) -> str:
        return f"{self.speed}-{self.data_bits}{self.parity}{self.stop_bits}"


def parse_port_settings(text: str | None) -> PortSettings:
    """The settings that ``text`` names, 9600-8N1 for None; BadAddress if it names none."""
    if text is None:
        return PortSettings()
    parts = _WRITTEN.fullmatch(text)
    if parts is None:
        raise BadAddress(
            f"{text!r} are no port settings; write speed, data bits (7 or 8), parity (N, E or O) "
            "and stop bits (1 or 2) like 9600-8N1"
        )
    if int(parts[1]) not in SPEEDS:
        speeds = ", ".join(map(str, SPEEDS))
        raise BadAddress(f"{parts[1]} is no speed of a serial port; known are {speeds}")
    return PortSettings(int(parts[1]), int(parts[2]), parts[3], int(parts[4]))
