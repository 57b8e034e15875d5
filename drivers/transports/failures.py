"""Every way in which a port fails, turned into one error with a reason.

pyserial raises SerialException (an OSError) for most of it, but a plain OSError from
``in_waiting``, a termios.error from its buffers and a TypeError when a port is closed under a
reader. The number of the system's error is sometimes an attribute, sometimes only in the text.
"""

from __future__ import annotations

import errno
import re
import socket
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from drivers.errors import PortLost, PortUnavailable, Reason

_AT_OPENING_RAISED: tuple[type[Exception], ...] = (OSError,)
if sys.platform != "win32":
    import termios

    _AT_OPENING_RAISED = (OSError, termios.error)
_WHEN_OPEN_RAISED = (*_AT_OPENING_RAISED, TypeError)

# "[Errno 5] Input/output error", and on Windows "FileNotFoundError(2, ..."
_NUMBER_IN_TEXT = re.compile(r"(?:\[Errno |\b\w*Error\()(\d+)\b")
_NUMBER_TWICE = re.compile(r"^(\[Errno \d+\]) (?=.*\1)", re.DOTALL)
_AT_OPENING = {
    errno.ENOENT: Reason.MISSING,
    errno.ENXIO: Reason.MISSING,
    errno.ENODEV: Reason.MISSING,
    errno.EIO: Reason.MISSING,
    errno.EACCES: Reason.NOT_ALLOWED,
    errno.EPERM: Reason.NOT_ALLOWED,
    errno.EBUSY: Reason.BUSY,
    errno.EAGAIN: Reason.BUSY,
    errno.ECONNREFUSED: Reason.NOT_ANSWERING,
    errno.ECONNRESET: Reason.NOT_ANSWERING,
    errno.EHOSTUNREACH: Reason.NOT_ANSWERING,
    errno.ENETUNREACH: Reason.NOT_ANSWERING,
    errno.ETIMEDOUT: Reason.NOT_ANSWERING,
}
# Only Windows says it so: there every port is exclusive, and this is another program having it.
_DENIED_ON_WINDOWS = "PermissionError(13"
_WHEN_OPEN = {
    errno.EIO: Reason.UNPLUGGED,
    errno.ENXIO: Reason.UNPLUGGED,
    errno.ENODEV: Reason.UNPLUGGED,
    errno.ENOENT: Reason.UNPLUGGED,
    errno.EBADF: Reason.UNPLUGGED,
    errno.ECONNRESET: Reason.CLOSED,
    errno.ECONNABORTED: Reason.CLOSED,
    errno.EPIPE: Reason.CLOSED,
    errno.ETIMEDOUT: Reason.NOT_ANSWERING,
}
_TEXTS_WHEN_OPEN = (
    ("returned no data", Reason.UNPLUGGED),
    ("ClearCommError", Reason.UNPLUGGED),
    ("GetOverlappedResult", Reason.UNPLUGGED),
    ("WriteFile", Reason.UNPLUGGED),
    ("socket disconnected", Reason.CLOSED),
    ("reader thread died", Reason.CLOSED),
)


@contextmanager
def opening() -> Iterator[None]:
    """Whatever fails inside becomes PortUnavailable."""
    try:
        yield
    except _AT_OPENING_RAISED as failure:
        raise PortUnavailable(_reason_at_opening(failure), _text(failure)) from failure


@contextmanager
def using() -> Iterator[None]:
    """Whatever fails inside becomes PortLost."""
    try:
        yield
    except _WHEN_OPEN_RAISED as failure:
        raise PortLost(_reason_when_open(failure), _text(failure)) from failure


@contextmanager
def closing() -> Iterator[None]:
    """A port that is gone may fail to close; there is nothing left to tell."""
    try:
        yield
    except _WHEN_OPEN_RAISED:
        return


def _text(failure: Exception) -> str:
    """What the system said; pyserial puts the number of an error before a text that has it."""
    return _NUMBER_TWICE.sub("", str(failure))


def _reason_at_opening(failure: Exception) -> Reason:
    if isinstance(failure, TimeoutError | socket.gaierror):
        return Reason.NOT_ANSWERING
    if _DENIED_ON_WINDOWS in str(failure):
        return Reason.BUSY
    return _AT_OPENING.get(_number(failure), Reason.OTHER)


def _reason_when_open(failure: Exception) -> Reason:
    if isinstance(failure, TimeoutError):
        return Reason.NOT_ANSWERING
    for words, reason in _TEXTS_WHEN_OPEN:
        if words in str(failure):
            return reason
    return _WHEN_OPEN.get(_number(failure), Reason.OTHER)


def _number(failure: Exception) -> int:
    """The system's number of the error, 0 if there is none."""
    if isinstance(failure, OSError) and failure.errno is not None:
        return failure.errno
    if failure.args and isinstance(failure.args[0], int):
        return failure.args[0]
    in_text = _NUMBER_IN_TEXT.search(str(failure))
    return int(in_text[1]) if in_text else 0
