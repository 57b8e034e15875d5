"""Port: one port, or HID scale, wherever it is plugged in now."""

from __future__ import annotations

from drivers.discovery import PortIdentity, find_again, identify, is_elsewhere
from drivers.errors import PortUnavailable, Reason
from drivers.transports import Transport
from drivers.transports.addresses import Described, check_address, open_transport, unheard
from drivers.transports.port_settings import PortSettings

PATIENCE = 0.05  # seconds that a read waits


class Port:
    """Opens a port, and after an unplug the same port again, perhaps under another name.

    ``where`` is its present address. ``described`` gets the report descriptor of a HID scale at
    each opening. BadAddress if the address can be none.
    """

    def __init__(
        self,
        address: str,
        settings: PortSettings,
        patience: float = PATIENCE,
        described: Described = unheard,
    ) -> None:
        check_address(address)
        self.where = address
        self._settings = settings
        self._patience = patience
        self._described = described
        self._identity: PortIdentity | None = None

    def open(self) -> Transport:
        """The port, open and free of stale bytes. Raises PortUnavailable."""
        where = self.where if self._identity is None else find_again(self._identity)
        if where is None:
            assert self._identity is not None
            elsewhere = is_elsewhere(self._identity)
            raise PortUnavailable(Reason.ELSEWHERE if elsewhere else Reason.MISSING, self.where)
        identity = identify(where)
        transport = open_transport(where, self._settings, self._patience, self._described)
        self.where, self._identity = where, identity
        return transport
