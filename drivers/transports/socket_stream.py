"""A balance behind a network socket: a serial server, or a program that plays a balance.

Not by way of pyserial, whose socket throws away what the other end says at once, reads byte by
byte, and sleeps when it is closed.
"""

from __future__ import annotations

import socket

from drivers.errors import PortLost, Reason
from drivers.transports.failures import closing, opening, using

_CONNECT_WITHIN = 2.0  # seconds
_WRITE_WITHIN = 1.0  # seconds


class SocketStream:
    """A Transport on a connected socket."""

    def __init__(self, connection: socket.socket, patience: float) -> None:
        self._connection = connection
        self._patience = patience

    def read(self) -> bytes:
        """What came, or nothing within the patience."""
        with using():
            self._connection.settimeout(self._patience)
            try:
                data = self._connection.recv(4096)
            except (TimeoutError, BlockingIOError):
                return b""
        if not data:
            raise PortLost(Reason.CLOSED, "the connection was closed")
        return data

    def write(self, data: bytes) -> None:
        """Send all of ``data``."""
        with using():
            self._connection.settimeout(_WRITE_WITHIN)
            self._connection.sendall(data)

    def close(self) -> None:
        """Close the connection."""
        with closing():
            self._connection.close()


def open_socket(host: str, port: int, patience: float) -> SocketStream:
    """Connect; nothing that arrives is thrown away. Raises PortUnavailable."""
    with opening():
        connection = socket.create_connection((host, port), timeout=_CONNECT_WITHIN)
        connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    return SocketStream(connection, patience)
