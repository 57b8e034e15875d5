"""Wire formats by name.

To add one: write its module, and a line in ``_MAKERS``. The shapes of lines that were learned are
known by their names as well, once ``use_shapes`` has said where they are kept.
"""

from __future__ import annotations

from collections.abc import Callable
from types import MappingProxyType
from typing import Protocol

from drivers.dialects.hid_scale import HidScale
from drivers.dialects.lines import NAME as LINES
from drivers.dialects.lines import Lines
from drivers.dialects.sma import Sma
from drivers.errors import BadAddress
from drivers.events import BalanceEvent
from drivers.line_shape import LineShape
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
    {HidScale.name: HidScale, LINES: Lines, Sma.name: Sma}
)


class KeptShapes(Protocol):
    """Where the shapes of lines are kept that were learned or written by hand."""

    def names(self) -> tuple[str, ...]:
        """The names of all, in order."""
        ...

    def shape(self, name: str) -> LineShape | None:
        """The shape of that name, None if there is none; BadShape if it cannot be used."""
        ...


_kept: list[KeptShapes] = []


def use_shapes(kept: KeptShapes | None) -> None:
    """Know these shapes by their names from now on, in place of all others."""
    _kept[:] = [] if kept is None else [kept]


def known_dialects() -> tuple[str, ...]:
    """The names of the wire formats themselves, in order."""
    return tuple(sorted(_MAKERS))


def kept_names() -> tuple[str, ...]:
    """The names of the shapes that are kept, in order."""
    return tuple(name for kept in _kept for name in kept.names() if name not in _MAKERS)


def make_dialect(name: str, balance_name: str) -> Dialect:
    """A new dialect by name; its readings carry ``balance_name``.

    BadAddress if unknown, BadShape if it is that of a shape that cannot be used.
    """
    maker = _MAKERS.get(name)
    if maker is not None:
        return maker(balance_name)
    shape = _shape(name)
    if shape is not None:
        return Lines(balance_name, shape)
    known = ", ".join([*known_dialects(), *kept_names()])
    raise BadAddress(f"there is no dialect called {name!r}; known are: {known}")


def usual_port_settings(name: str) -> str | None:
    """The port settings that were kept with a shape, as in 9600-8N1; None without any."""
    shape = None if name in _MAKERS else _shape(name)
    return None if shape is None else shape.port_settings


def _shape(name: str) -> LineShape | None:
    return next((shape for kept in _kept if (shape := kept.shape(name)) is not None), None)
