"""Every failure of a port becomes one error; texts and types as pyserial 3.5 raises them."""

import errno
import os
import socket

import pytest
import serial

from drivers.errors import PortLost, PortUnavailable, Reason
from drivers.transports.failures import closing, opening, using

termios = pytest.importorskip("termios", reason="the failures of a POSIX terminal")

NO_DATA = "device reports readiness to read but returned no data (device disconnected or ...)"
DENIED = "PermissionError(13, 'The device does not recognize the command.', None, 22)"


def system(number: int) -> OSError:
    return OSError(number, os.strerror(number))


@pytest.mark.parametrize(
    ("failure", "reason"),
    [
        (serial.SerialException(NO_DATA), Reason.UNPLUGGED),
        (serial.SerialException(f"ClearCommError failed ({DENIED})"), Reason.UNPLUGGED),
        (serial.SerialException(f"GetOverlappedResult failed ({DENIED})"), Reason.UNPLUGGED),
        (serial.SerialException(f"WriteFile failed ({DENIED})"), Reason.UNPLUGGED),
        (serial.SerialException("read failed: [Errno 6] Device not configured"), Reason.UNPLUGGED),
        (serial.SerialException("write failed: [Errno 5] Input/output error"), Reason.UNPLUGGED),
        (system(errno.EIO), Reason.UNPLUGGED),
        (termios.error(errno.EIO, "Input/output error"), Reason.UNPLUGGED),
        (system(errno.EBADF), Reason.UNPLUGGED),
        (TypeError("'NoneType' object cannot be interpreted as an integer"), Reason.OTHER),
        (serial.SerialTimeoutException("Write timeout"), Reason.OTHER),
        (serial.SerialException("socket disconnected"), Reason.CLOSED),
        (serial.SerialException("connection failed (reader thread died)"), Reason.CLOSED),
        (system(errno.ECONNRESET), Reason.CLOSED),
        (system(errno.EPIPE), Reason.CLOSED),
        (TimeoutError("timed out"), Reason.NOT_ANSWERING),
        (serial.SerialException("something new"), Reason.OTHER),
    ],
    ids=str,
)
def test_a_failure_in_use_is_a_lost_port(failure: Exception, reason: Reason) -> None:
    with pytest.raises(PortLost) as caught, using():
        raise failure
    assert caught.value.reason is reason
    assert caught.value.detail == str(failure)
    assert caught.value.__cause__ is failure


@pytest.mark.parametrize(
    ("failure", "reason"),
    [
        (serial.SerialException(errno.ENOENT, "could not open port x: ..."), Reason.MISSING),
        (serial.SerialException(errno.EACCES, "could not open port x: ..."), Reason.NOT_ALLOWED),
        (serial.SerialException(errno.EAGAIN, "Could not exclusively lock port"), Reason.BUSY),
        (system(errno.EBUSY), Reason.BUSY),
        (
            serial.SerialException("... FileNotFoundError(2, 'The system cannot ...')"),
            Reason.MISSING,
        ),
        (serial.SerialException("... PermissionError(13, 'Access is denied.', ...)"), Reason.BUSY),
        (termios.error(errno.EIO, "Input/output error"), Reason.MISSING),
        (serial.SerialException("Could not open port: [Errno 111] refused"), Reason.NOT_ANSWERING),
        (system(errno.ECONNREFUSED), Reason.NOT_ANSWERING),
        (TimeoutError("timed out"), Reason.NOT_ANSWERING),
        (socket.gaierror(-2, "Name or service not known"), Reason.NOT_ANSWERING),
        (serial.SerialException("Could not configure port: (25, 'Inappropriate')"), Reason.OTHER),
    ],
    ids=str,
)
def test_a_failure_at_opening_is_an_unavailable_port(failure: Exception, reason: Reason) -> None:
    with pytest.raises(PortUnavailable) as caught, opening():
        raise failure
    assert caught.value.reason is reason
    assert not isinstance(caught.value, PortLost)


@pytest.mark.parametrize(
    "failure", [system(errno.EIO), termios.error(errno.EIO, "..."), TypeError("...")], ids=str
)
def test_a_port_that_is_gone_closes_without_a_word(failure: Exception) -> None:
    with closing():
        raise failure


def test_a_mistake_of_ours_is_not_taken_for_a_lost_port() -> None:
    with pytest.raises(ZeroDivisionError), using():
        raise ZeroDivisionError


def test_what_the_system_said_is_told_once() -> None:
    port = "could not open port COM9: [Errno 2] No such file or directory: 'COM9'"
    with pytest.raises(PortUnavailable) as failed, opening():
        raise serial.SerialException(errno.ENOENT, port)
    assert failed.value.detail == port


def test_the_number_of_an_error_that_is_told_once_stays() -> None:
    with pytest.raises(PortLost) as failed, using():
        raise system(errno.EIO)
    assert failed.value.detail.startswith(f"[Errno {errno.EIO}]")
