"""A simulated device behind a real port, so that nothing in front of it knows the difference."""

from __future__ import annotations

import os
import threading
import time
from collections.abc import Callable
from enum import StrEnum
from typing import Protocol

_TURN_SECONDS = 0.02
_CLOSE_SECONDS = 2.0


class Device(Protocol):
    """What hangs at the port: bytes in, bytes out, time passed in."""

    def receive(self, data: bytes, now: float) -> bytes:
        """Bytes from the host; returns what the device has to send."""

    def due(self, now: float) -> bytes:
        """What the device sends by itself until ``now``."""


class _End(Protocol):
    address: str

    def open(self) -> None: ...
    def close(self) -> None: ...
    def remove(self) -> None: ...
    def read(self) -> bytes: ...
    def write(self, data: bytes) -> None: ...
    def wait(self, seconds: float) -> None: ...


class PortKind(StrEnum):
    """How the device shows itself to the machine."""

    PTY = "pty"
    SOCKET = "socket"


class SimulatedPort:
    """``device`` at ``address``: a symbolic link to a pseudo-terminal, or a ``socket://`` URL.

    Without ``kind`` a pseudo-terminal where the system has them. Either ``pump`` turn by turn, or
    ``start`` a thread that does. ``lock`` guards the device; share it with whoever else uses it.
    """

    def __init__(
        self,
        device: Device,
        clock: Callable[[], float] = time.monotonic,
        kind: PortKind | None = None,
        lock: threading.RLock | None = None,
    ) -> None:
        self._device = device
        self._clock = clock
        self._lock = lock if lock is not None else threading.RLock()
        self._end = _open_end(kind)
        self._plugged = True
        self._waiting = threading.Lock()  # a port that is waited for stays open: see unplug
        self._stop = threading.Event()
        self._thread: threading.Thread | None = None
        self.address = self._end.address

    @property
    def plugged(self) -> bool:
        """Whether the address can be opened."""
        return self._plugged

    def pump(self) -> None:
        """One turn: take what the host wrote, let the device answer, send what is due."""
        with self._lock:
            asked = self._end.read() if self._plugged else b""
            now = self._clock()
            said = self._device.receive(asked, now) if asked else self._device.due(now)
            if said and self._plugged:
                self._end.write(said)

    def start(self) -> None:
        """Pump in a thread of its own until ``close``."""
        if self._thread is None:
            self._thread = threading.Thread(target=self._run, name="simulated port", daemon=True)
            self._thread.start()

    def unplug(self) -> None:
        """Pull the cable: the host loses the port, the address is gone. The device goes on."""
        # Closed under a waiting thread, a port lives on until the wait is over: the host would
        # lose it late, and its address would still be taken.
        with self._lock, self._waiting:
            if self._plugged:
                self._plugged = False
                self._end.close()

    def plug(self) -> None:
        """Put the cable back: the same address, on a pseudo-terminal under another name."""
        with self._lock:
            if not self._plugged and not self._stop.is_set():
                self._end.open()
                self._plugged = True

    def close(self) -> None:
        """Stop the thread and take the port away for good."""
        self._stop.set()
        if self._thread is not None:
            self._thread.join(_CLOSE_SECONDS)
        self.unplug()
        self._end.remove()

    def _run(self) -> None:
        while not self._stop.is_set():
            self.pump()
            with self._waiting:
                plugged = self._plugged
                if plugged:
                    self._end.wait(_TURN_SECONDS)
            if not plugged:
                self._stop.wait(_TURN_SECONDS)


def _open_end(kind: PortKind | None) -> _End:
    if kind is None:
        kind = PortKind.PTY if hasattr(os, "openpty") else PortKind.SOCKET
    if kind is PortKind.PTY:
        from drivers.simulated.pty_end import PtyEnd  # its modules exist on POSIX only

        return PtyEnd()
    from drivers.simulated.socket_end import SocketEnd

    return SocketEnd()
