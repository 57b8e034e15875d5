"""Listens to a port without ever sending a byte, and finds the port settings as it does.

Settings are wrong when garbage comes; silence says nothing about them, since many balances only
send on a key or on a load.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import closing
from dataclasses import dataclass

from drivers.learning.clean_text import Hearing
from drivers.packet import Packet
from drivers.transports import Transport
from drivers.transports.port_settings import PortSettings

# In the order in which they are tried: the usual ones first (common practice, no source).
USUAL_SETTINGS = (
    PortSettings(9600),
    PortSettings(2400, 7, "E"),
    PortSettings(4800),
    PortSettings(1200, 7, "O"),
    PortSettings(9600, 7, "E"),
    PortSettings(19200),
    PortSettings(115200),
    PortSettings(2400),
    PortSettings(1200),
    PortSettings(4800, 7, "E"),
    PortSettings(1200, 7, "E"),
    PortSettings(9600, 8, "O"),
    PortSettings(38400),
    PortSettings(57600),
)


@dataclass(frozen=True, slots=True)
class Heard:
    """What came, and at which settings; None if it was garbage at all of them."""

    packets: tuple[Packet, ...]
    settings: PortSettings | None


def listen_passively(
    open_with: Callable[[PortSettings], Transport],
    candidates: Sequence[PortSettings],
    *,
    seconds: float,
    clock: Callable[[], float],
) -> Heard:
    """Listen for so many seconds, going on to the next settings whenever garbage comes.

    Settings that stand alone are not doubted. Raises PortUnavailable when the port fails.
    """
    until = clock() + seconds
    for settings in candidates:
        with closing(open_with(settings)) as transport:
            packets = _heard(transport, until, clock, sure=len(candidates) == 1)
        if packets is not None:
            return Heard(tuple(packets), settings)
    return Heard((), None)


def _heard(
    transport: Transport, until: float, clock: Callable[[], float], *, sure: bool
) -> list[Packet] | None:
    packets: list[Packet] = []
    hearing = Hearing(sure=sure)
    while clock() < until:
        chunk = transport.read()
        if not chunk:
            continue
        packets.append(Packet(clock(), chunk))
        if not hearing.take(chunk):
            return None
    return packets
