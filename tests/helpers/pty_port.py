"""A serial cable made of a pseudo-terminal: it can be pulled, and comes back under a new name."""

from __future__ import annotations

import os
import tty
from pathlib import Path

from drivers.transports import Transport


class PtyPort:
    """``link`` always names the present device, as a rule of the system would keep it."""

    def __init__(self, folder: Path) -> None:
        self.link = folder / "balance"
        self.device = ""
        self._master = -1
        self.plug()

    def plug(self) -> None:
        """Make the device and the link to it."""
        previous = self.device
        master, slave = os.openpty()
        if os.ttyname(slave) == previous:
            spare = (master, slave)
            master, slave = os.openpty()
            for descriptor in spare:
                os.close(descriptor)
        tty.setraw(slave)
        self.device = os.ttyname(slave)
        self._master, self._slave = master, slave
        self.link.symlink_to(self.device)

    def unplug(self) -> None:
        """Take the device and the link away; safe to call twice."""
        if self._master >= 0:
            self.link.unlink()
            os.close(self._master)
            os.close(self._slave)
            self._master = -1

    def say(self, data: bytes) -> None:
        """Send as the balance."""
        os.write(self._master, data)

    def heard(self, size: int) -> bytes:
        """Wait for ``size`` bytes from the other side."""
        data = b""
        while len(data) < size:
            data += os.read(self._master, size - len(data))
        return data


def read_until(port: Transport, size: int) -> bytes:
    """Bytes that travel through a terminal may come in parts: read until there are ``size``."""
    data = b""
    for _ in range(100):
        data += port.read()
        if len(data) >= size:
            break
    return data
