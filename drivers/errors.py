"""The errors of this package, and the reasons that a screen can explain.

BalanceError            base; never raised itself
 +- PortUnavailable     the port could not be opened
 +- PortLost            an open port stopped working
 +- BadAddress          WHERE, a dialect's name or port settings make no sense
     +- BadShape        a line shape that was kept cannot be used
"""

from __future__ import annotations

from enum import StrEnum


class Reason(StrEnum):
    """Why there is no balance."""

    MISSING = "no such port"
    ELSEWHERE = "a port of its kind is there, but in another socket"
    NOT_ALLOWED = "no permission to use the port"
    BUSY = "the port is in use by another program"
    UNPLUGGED = "the port went away"
    CLOSED = "the other end closed the connection"
    NOT_ANSWERING = "nothing answers at that address"
    OTHER = "the port failed"


class BalanceError(Exception):
    """Something between us and the balance went wrong."""


class PortUnavailable(BalanceError):  # noqa: N818 - named for the state that a screen explains
    """The port could not be opened; ``reason`` says why, ``detail`` is the system's own text."""

    def __init__(self, reason: Reason, detail: str) -> None:
        super().__init__(f"{reason}: {detail}")
        self.reason = reason
        self.detail = detail


class PortLost(PortUnavailable):
    """An open port stopped working."""


class BadAddress(BalanceError):  # noqa: N818 - as above
    """The words that name a port, a dialect or port settings make no sense."""


class BadShape(BadAddress):
    """What should describe the lines of a balance makes no sense."""
