"""A balance on ``socket://``: answers every W with the mass that the test sets."""

from __future__ import annotations

import contextlib
import socket
import threading

from tests.helpers.sma_frames import weight


class SmaServer:
    """Serves one host after another until ``close``; ``hang_up`` ends the connection only."""

    def __init__(self, port: int = 0) -> None:
        self.answer = weight("123.45")
        self.greeting = b""
        self._listener = socket.create_server(("127.0.0.1", port))
        self.port = self._listener.getsockname()[1]
        self.address = f"socket://127.0.0.1:{self.port}"
        self._host: socket.socket | None = None
        self._thread = threading.Thread(target=self._serve, daemon=True)
        self._thread.start()

    def close(self) -> None:
        """Vanish: nobody listens any more."""
        with contextlib.suppress(OSError):
            self._listener.shutdown(socket.SHUT_RDWR)
        self._listener.close()
        self.hang_up()
        self._thread.join(2)

    def hang_up(self) -> None:
        """End the present connection."""
        if self._host is not None:
            with contextlib.suppress(OSError):
                self._host.shutdown(socket.SHUT_RDWR)

    def _serve(self) -> None:
        while True:
            try:
                host, _ = self._listener.accept()
            except OSError:
                return
            with host:
                self._host = host
                self._talk(host)

    def _talk(self, host: socket.socket) -> None:
        with contextlib.suppress(OSError):
            host.sendall(self.greeting)
            while request := host.recv(64):
                for letter in request.replace(b"\n", b"").split(b"\r")[:-1]:
                    host.sendall(self.answer if letter == b"W" else b"\n?\r")
