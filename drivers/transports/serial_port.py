"""A serial port of this machine, or behind one of pyserial's own addresses."""

from __future__ import annotations

import time

import serial

from drivers.transports.failures import closing, opening, using
from drivers.transports.port_settings import PortSettings

_WRITE_WITHIN = 1.0  # seconds; a port that takes no bytes for so long is lost
_QUIET = 0.05  # seconds without a byte: nothing stale is left
_DRAIN_WITHIN = 0.3  # seconds; a balance that never pauses is heard from then on


class SerialPort:
    """A Transport on an open pyserial port."""

    def __init__(self, port: serial.Serial) -> None:
        self._port = port

    def read(self) -> bytes:
        """All that waits, or what comes next, or nothing within the port's patience."""
        with using():
            if waiting := self._port.in_waiting:
                return bytes(self._port.read(waiting))
            first = bytes(self._port.read(1))
            # It seldom comes alone, but to read more than is there would wait for the rest.
            return first + bytes(self._port.read(self._port.in_waiting)) if first else b""

    def write(self, data: bytes) -> None:
        """Send all of ``data``."""
        with using():
            self._port.write(data)

    def close(self) -> None:
        """Let go of the port."""
        with closing():
            self._port.close()


def open_serial_port(address: str, settings: PortSettings, patience: float) -> SerialPort:
    """Open a port of this machine, for nobody else to open, and throw away what waited in it.

    ``patience`` is how long a read waits, in seconds. Raises PortUnavailable.
    """
    return _opened(address, settings, patience, exclusive=True, write_timeout=_WRITE_WITHIN)


def open_serial_url(url: str, settings: PortSettings, patience: float) -> SerialPort:
    """Open an address of pyserial: ``rfc2217://host:port`` or ``loop://``. Else as above."""
    # A remote port knows neither a lock nor a limit for writing: pyserial refuses to open it so.
    return _opened(url, settings, patience, exclusive=None, write_timeout=None)


def _opened(
    address: str,
    settings: PortSettings,
    patience: float,
    *,
    exclusive: bool | None,
    write_timeout: float | None,
) -> SerialPort:
    with opening():
        port = serial.serial_for_url(
            address,
            baudrate=settings.speed,
            bytesize=settings.data_bits,
            parity=settings.parity,
            stopbits=settings.stop_bits,
            timeout=_QUIET,
            write_timeout=write_timeout,
            exclusive=exclusive,
        )
        try:
            _drain(port)
            if patience != _QUIET:  # a remote port agrees with the other end on every change
                port.timeout = patience
        except BaseException:
            SerialPort(port).close()
            raise
    return SerialPort(port)


def _drain(port: serial.Serial) -> None:
    # Clearing the driver's buffer is not enough: what stands in line behind it moves up.
    port.reset_input_buffer()
    until = time.monotonic() + _DRAIN_WITHIN
    while port.read(4096) and time.monotonic() < until:
        pass
