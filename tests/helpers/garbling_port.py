"""A port that is only listened to: its lines come right at the right settings, else as garbage."""

from __future__ import annotations

from collections.abc import Callable

from drivers.errors import PortUnavailable
from drivers.transports.port_settings import PortSettings

LINE = b"ST,+00123.45  g\r\n"
TURN_S = 0.1


class GarblingPort:
    """Sends what ``source`` gives, LINE by default, each tenth of a second of its own clock.

    ``failure`` is raised by whatever touches the port; writing is never allowed.
    """

    where = "scripted"

    def __init__(self, right: PortSettings, source: Callable[[float], bytes] | None = None) -> None:
        self.right = right
        self.now = 0.0
        self.failure: PortUnavailable | None = None
        self.opened = self.closed = 0
        self._source = source or (lambda _now: LINE)
        self._settings = right

    def with_settings(self, _where: str, settings: PortSettings) -> GarblingPort:
        self._settings = settings
        return self

    def wait(self, seconds: float) -> None:
        self.now += seconds

    def open(self) -> GarblingPort:
        if self.failure is not None:
            raise self.failure
        self.opened += 1
        return self

    def read(self) -> bytes:
        self.now += TURN_S
        if self.failure is not None:
            raise self.failure
        return self._garbled(self._source(self.now))

    def write(self, data: bytes) -> None:
        raise AssertionError("nothing may be sent")

    def close(self) -> None:
        self.closed += 1

    def _garbled(self, data: bytes) -> bytes:
        if self._settings == self.right:
            return data
        if self._settings.speed == self.right.speed:  # parity taken for an eighth bit
            return bytes(byte | (byte.bit_count() % 2) << 7 for byte in data)
        return bytes((byte * 37 + 11) % 256 for byte in data)
