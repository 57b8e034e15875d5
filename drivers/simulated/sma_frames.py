"""Frames of SMA SCP-0499 as a balance sends and receives them.

A standard reply is twenty bytes by position: LF, status, range, mode, motion, reserved, ten of
mass, three of unit, CR. Requests are LF, a letter, data, CR; ESC stands alone and is never
answered.
"""

from __future__ import annotations

LF, CR, ESC = b"\n", b"\r", b"\x1b"
UNKNOWN = b"\n?\r"
COMMUNICATION_ERROR = b"\n!\r"
DIAGNOSTICS_FINE = b"\n    \r"
NO_MASS = "-" * 10
_LONGEST_REQUEST = 16


def standard_reply(status: str, mode: str, moving: bool, mass: str, unit: str) -> bytes:
    """Twenty bytes; ``mass`` is right-justified in ten places, ``unit`` left-justified in three.

    Raises ValueError when a field does not fit its place.
    """
    text = f"\n{status}1{mode}{'M' if moving else ' '} {mass:>10}{unit:<3}\r"
    if len(text) != 20:
        raise ValueError(f"The mass {mass!r} {unit!r} does not fit into a reply of 20 bytes.")
    return text.encode("ascii")


def field(name: str, text: str = "") -> bytes:
    """One line of the About or the Information dialogue; the name is three characters."""
    return f"\n{name:<3}:{text}\r".encode("ascii")


class RequestReader:
    """Finds requests in what the host sends, however it is cut up."""

    def __init__(self) -> None:
        self._waiting: bytearray | None = None

    def feed(self, data: bytes) -> list[bytes]:
        """The requests that are complete now, without LF and CR; ESC as itself.

        A new LF begins anew; bytes outside of a request are passed over.
        """
        requests: list[bytes] = []
        for byte in (bytes([value]) for value in data):
            if byte == ESC:
                self._waiting = None
                requests.append(ESC)
            elif byte == LF:
                self._waiting = bytearray()
            elif self._waiting is not None:
                self._take(self._waiting, byte, requests)
        return requests

    def forget(self) -> None:
        """Forget a half-sent request."""
        self._waiting = None

    def _take(self, waiting: bytearray, byte: bytes, requests: list[bytes]) -> None:
        if byte != CR:
            if len(waiting) < _LONGEST_REQUEST:
                waiting.extend(byte)
            return
        self._waiting = None
        if waiting:
            requests.append(bytes(waiting))
