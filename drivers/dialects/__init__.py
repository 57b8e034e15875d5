"""Wire formats by name.

To add one: write its module, and a line in ``_MAKERS``.
"""

from __future__ import annotations

from collections.abc import Callable
from types import MappingProxyType
from typing import Protocol

from drivers.dialects.hid_scale import HidScale
from drivers.dialects.sma import Sma
from drivers.errors import BadAddress
from drivers.events import BalanceEvent
from drivers.packet import Packet


class Dialect(Protocol):
    """One wire format, spoken with one balance. Bytes in, events out; no port, no clock."""

    @property
    def name(self) -> str:
        """The name by which a person chooses it."""
        ...

    def feed(self, packet: Packet) -> list[BalanceEvent]:
        """What the packet tells; an empty packet only says how late it is. Never raises."""
        ...

    def due(self, now: float) -> bytes:
        """What must be sent at ``now``; empty when nothing is due."""
        ...

    def zero(self) -> None:
        """Ask for zero at the next chance; answered by CommandDone or CommandRefused."""
        ...

    def reset(self, now: float) -> None:
        """Begin anew: the port was opened at ``now``. Whatever was under way is forgotten."""
        ...


_MAKERS: MappingProxyType[str, Callable[[str], Dialect]] = MappingProxyType(
    {HidScale.name: HidScale, Sma.name: Sma}
)


def known_dialects() -> tuple[str, ...]:
    """The names that ``make_dialect`` knows, in order."""
    return tuple(sorted(_MAKERS))


def make_dialect(name: str, balance_name: str) -> Dialect:
    """A new dialect by name; its readings carry ``balance_name``. BadAddress if unknown."""
    maker = _MAKERS.get(name)
    if maker is None:
        known = ", ".join(known_dialects())
        raise BadAddress(f"there is no dialect called {name!r}; known are: {known}")
    return maker(balance_name)
