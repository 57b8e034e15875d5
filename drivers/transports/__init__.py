"""Ways for bytes to travel."""

from __future__ import annotations

from typing import Protocol


class Transport(Protocol):
    """An open port. One thread uses it; it is never closed from another one."""

    def read(self) -> bytes:
        """What is there; waits a little when nothing is. Raises PortLost."""
        ...

    def write(self, data: bytes) -> None:
        """Send all of ``data``. Raises PortLost."""
        ...

    def close(self) -> None:
        """Let go of the port; a port that is gone closes without a word."""
        ...
