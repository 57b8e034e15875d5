"""The far end of a serial cable, as a local TCP socket: where there are no pseudo-terminals."""

from __future__ import annotations

import os
import select
import socket

_MOST_AT_ONCE = 4096
_HOST = "127.0.0.1"


class SocketEnd:
    """Opened when made; serves one host at a time, the next one when that has gone.

    ``address`` is a pyserial URL. Never blocks: what does not fit because nobody reads is dropped.
    """

    def __init__(self) -> None:
        self._port = 0
        self._listener: socket.socket | None = None
        self._host: socket.socket | None = None
        self.open()
        self.address = f"socket://{_HOST}:{self._port}"

    def open(self) -> None:
        """Plug in: listen again at the same address."""
        listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        if os.name == "posix":  # on Windows the option would let others share the port
            listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listener.bind((_HOST, self._port))
            listener.listen(1)
        except OSError:
            listener.close()
            raise
        listener.setblocking(False)
        self._port = listener.getsockname()[1]
        self._listener = listener

    def close(self) -> None:
        """Unplug: the host is cut off, and nobody listens."""
        for end in (self._host, self._listener):
            if end is not None:
                end.close()
        self._host = self._listener = None

    def remove(self) -> None:
        """Nothing is left of an address that nobody listens at."""

    def read(self) -> bytes:
        """What the host has written since; empty when nothing."""
        host = self._present_host()
        if host is None:
            return b""
        try:
            data = host.recv(_MOST_AT_ONCE)
        except BlockingIOError:
            return b""
        except ConnectionError:
            data = b""
        if not data:
            self._drop_host()
        return data

    def write(self, data: bytes) -> None:
        """Send to the host, if there is one, as much as fits."""
        host = self._present_host()
        if host is None:
            return
        try:
            host.send(data)
        except BlockingIOError:
            return
        except ConnectionError:
            self._drop_host()

    def wait(self, seconds: float) -> None:
        """Wait until the host has written or a new one calls, or so long."""
        ends = [end for end in (self._host, self._listener) if end is not None]
        select.select(ends[:1], [], [], seconds)

    def _present_host(self) -> socket.socket | None:
        if self._host is None and self._listener is not None:
            try:
                self._host, _ = self._listener.accept()
                self._host.setblocking(False)
            except BlockingIOError:
                return None
        return self._host

    def _drop_host(self) -> None:
        if self._host is not None:
            self._host.close()
            self._host = None
