"""The far end of a serial cable, as a pseudo-terminal behind a symbolic link (POSIX only)."""

from __future__ import annotations

import os
import select
import tempfile
import tty
from pathlib import Path

_MOST_AT_ONCE = 4096


class PtyEnd:
    """Opened when made. ``address`` stays the same while the device behind it comes and goes.

    Never blocks: what does not fit because nobody reads is dropped.
    """

    def __init__(self) -> None:
        self._folder = tempfile.TemporaryDirectory(prefix="simulated-balance-")
        self._link = Path(self._folder.name) / "port"
        self.address = str(self._link)
        self._master = self._slave = -1
        self._device = ""
        self.open()

    def open(self) -> None:
        """Plug in: a new device, under another name than the last one."""
        master, slave = _raw_pair()
        if os.ttyname(slave) == self._device:  # keep the old name taken while drawing another
            spare = (master, slave)
            master, slave = _raw_pair()
            _close(*spare)
        os.set_blocking(master, False)
        self._master, self._slave = master, slave
        self._device = os.ttyname(slave)
        self._link.symlink_to(self._device)

    def close(self) -> None:
        """Unplug: whoever has the device open loses it, and its name goes away."""
        self._link.unlink(missing_ok=True)
        _close(self._master, self._slave)
        self._master = self._slave = -1

    def remove(self) -> None:
        """Take away the address itself, for good."""
        self._folder.cleanup()

    def read(self) -> bytes:
        """What the host has written since; empty when nothing."""
        try:
            return os.read(self._master, _MOST_AT_ONCE)
        except BlockingIOError:
            return b""

    def write(self, data: bytes) -> None:
        """Send to the host as much as fits."""
        try:
            os.write(self._master, data)
        except BlockingIOError:
            return

    def wait(self, seconds: float) -> None:
        """Wait until the host has written, or so long."""
        select.select([self._master], [], [], seconds)


def _raw_pair() -> tuple[int, int]:
    # Our own hold on the slave keeps the master from failing while no host has it open.
    master, slave = os.openpty()
    tty.setraw(slave)
    return master, slave


def _close(*descriptors: int) -> None:
    for descriptor in descriptors:
        os.close(descriptor)
