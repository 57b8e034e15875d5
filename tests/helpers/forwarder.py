"""A line to a PostgreSQL server that can be cut and mended: a TCP port in front of its socket."""

from __future__ import annotations

import socket
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from threading import Lock, Thread
from urllib.parse import parse_qs, urlsplit

HERE = "127.0.0.1"
JOIN_S = 5.0


class Forwarder:
    """Hands on what comes to a port of this machine to the server of the records, and back.

    ``where`` is an address as helpers.postgres gives it.
    """

    def __init__(self, where: str) -> None:
        url = urlsplit(where)
        self._server = str(Path(parse_qs(url.query)["host"][0]) / ".s.PGSQL.5432")
        self._database = url.path
        self._port = 0  # any, the first time
        self._lock = Lock()
        self._open: set[socket.socket] = set()
        self._threads: list[Thread] = []
        self._listener: socket.socket | None = None
        self.mend()

    @property
    def address(self) -> str:
        """Where the records are by way of this line."""
        return f"postgresql://kiosk@{HERE}:{self._port}{self._database}"

    def mend(self) -> None:
        """Take connections."""
        listener = socket.socket()
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listener.bind((HERE, self._port))
        listener.listen()
        self._port = listener.getsockname()[1]
        self._listener = listener
        self._begin(self._accept, listener)

    def cut(self) -> None:
        """Break all connections off, whatever they are at, and refuse new ones."""
        with self._lock:
            listener, self._listener = self._listener, None
            for end in [*self._open, *([listener] if listener else [])]:
                _hang_up(end)
        for thread in self._threads:
            thread.join(JOIN_S)
        for end in [*self._open, *([listener] if listener else [])]:
            end.close()
        self._open, self._threads = set(), []

    def _begin(self, act: Callable[..., None], *ends: socket.socket) -> None:
        thread = Thread(target=act, args=ends, daemon=True)
        self._threads.append(thread)
        thread.start()

    def _accept(self, listener: socket.socket) -> None:
        with suppress(OSError):
            while True:
                near, _ = listener.accept()
                self._begin(self._carry, near)

    def _carry(self, near: socket.socket) -> None:
        far = socket.socket(socket.AF_UNIX)
        with self._lock:
            self._open |= {near, far}
            whole = self._listener is not None
        try:
            if whole:
                far.connect(self._server)
                self._begin(_hand_on, near, far)
                _hand_on(far, near)
        except OSError:  # the server is not there either
            _hang_up(near)


def _hand_on(source: socket.socket, target: socket.socket) -> None:
    with suppress(OSError):
        while data := source.recv(65536):
            target.sendall(data)
    _hang_up(source)
    _hang_up(target)


def _hang_up(end: socket.socket) -> None:
    with suppress(OSError):  # the other side may have done so by now
        end.shutdown(socket.SHUT_RDWR)
