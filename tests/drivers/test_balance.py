"""The reader of one balance: in lock step on a scripted port, and in its thread on real ones."""

import errno
import logging
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
import serial
from pytest_mock import MockerFixture

from drivers.balance import Balance, Tap, open_balance
from drivers.dialects.sma import Sma
from drivers.errors import BadAddress, PortLost, PortUnavailable, Reason
from drivers.events import (
    Back,
    CommandDone,
    CommandRefused,
    Identified,
    LineUnreadable,
    Lost,
    ReadingReceived,
)
from drivers.packet import Packet
from tests.helpers.event_log import EventLog
from tests.helpers.pty_port import PtyPort
from tests.helpers.sma_frames import frame, weight
from tests.helpers.sma_server import SmaServer

PLAIN = frame("plain")


class ScriptedPort:
    """A port whose reads and openings are listed by the test; its clock goes on by the waits."""

    def __init__(self) -> None:
        self.where = "scripted"
        self.now = 100.0
        self.refusals: list[Exception] = []
        self.reads: list[bytes | Exception] = []
        self.written: list[bytes] = []
        self.opened = self.closed = 0

    def open(self) -> "ScriptedPort":
        if self.refusals:
            raise self.refusals.pop(0)
        self.opened += 1
        return self

    def read(self) -> bytes:
        self.now += 0.05
        next_one = self.reads.pop(0) if self.reads else b""
        if isinstance(next_one, Exception):
            raise next_one
        return next_one

    def write(self, data: bytes) -> None:
        self.written.append(data)

    def close(self) -> None:
        self.closed += 1

    def wait(self, seconds: float) -> None:
        self.now += seconds


@pytest.fixture
def port() -> ScriptedPort:
    return ScriptedPort()


@pytest.fixture
def log() -> EventLog:
    return EventLog()


@pytest.fixture
def balance(port: ScriptedPort, log: EventLog) -> Balance:
    return Balance(port, Sma("b"), publish=log, clock=lambda: port.now, wait=port.wait)


def pump(balance: Balance, times: int) -> None:
    for _ in range(times):
        balance.pump()


def test_the_first_turn_opens_and_the_next_asks_and_reads(
    balance: Balance, port: ScriptedPort, log: EventLog
) -> None:
    port.reads = [PLAIN]
    pump(balance, 2)
    [back, received] = log.events
    assert back == Back(where="scripted", at=100.0)
    assert port.written == [b"\nW\r"]
    assert received.reading.raw == PLAIN
    assert received.reading.at == pytest.approx(100.05)


def test_a_lost_port_is_told_once_and_looked_for_once_a_second(
    balance: Balance, port: ScriptedPort, log: EventLog
) -> None:
    pump(balance, 2)
    port.reads = [PortLost(Reason.UNPLUGGED, "gone")]
    port.refusals = [PortUnavailable(Reason.MISSING, "none")] * 3
    start = port.now
    pump(balance, 5)
    assert [type(event) for event in log.events] == [Back, Lost, Back]
    assert log.of(Lost)[0].reason is Reason.UNPLUGGED
    assert port.now - start == pytest.approx(4.05)
    assert port.closed == 1


def test_a_port_that_is_not_there_at_first_is_lost_and_then_back(
    balance: Balance, port: ScriptedPort, log: EventLog
) -> None:
    port.refusals = [PortUnavailable(Reason.NOT_ALLOWED, "13")] * 2
    pump(balance, 3)
    assert [type(event) for event in log.events] == [Lost, Back]
    assert log.of(Lost)[0].reason is Reason.NOT_ALLOWED


def test_a_port_that_is_there_again_but_refused_is_told_once_more(
    balance: Balance, port: ScriptedPort, log: EventLog
) -> None:
    pump(balance, 2)
    port.reads = [PortLost(Reason.UNPLUGGED, "gone")]
    reasons = [Reason.MISSING, Reason.NOT_ALLOWED, Reason.NOT_ALLOWED, Reason.MISSING]
    port.refusals = [PortUnavailable(reason, "") for reason in reasons]
    pump(balance, 6)
    assert [lost.reason for lost in log.of(Lost)] == [Reason.UNPLUGGED, Reason.NOT_ALLOWED]


def test_half_a_frame_from_before_the_loss_is_not_glued_to_what_comes_after(
    balance: Balance, port: ScriptedPort, log: EventLog
) -> None:
    port.reads = [PLAIN[:12], PortLost(Reason.UNPLUGGED, "gone"), PLAIN[12:] + PLAIN]
    pump(balance, 5)
    assert len(log.of(ReadingReceived)) == 1


def test_after_each_opening_the_balance_is_asked_again_who_it_is(
    balance: Balance, port: ScriptedPort, log: EventLog
) -> None:
    answers = [PLAIN, b"\n?\r", PLAIN, b"\n?\r"]
    port.reads = [*answers, PortLost(Reason.CLOSED, "closed"), *answers]
    pump(balance, 20)
    assert len(log.of(Identified)) == 2


def test_the_time_between_two_looks_need_not_be_waited_for(port: ScriptedPort) -> None:
    log = EventLog()
    clock = lambda: port.now  # noqa: E731 - the shortest clock there is
    balance = Balance(port, Sma("b"), publish=log, clock=clock, wait=lambda _: None)
    port.refusals = [PortUnavailable(Reason.MISSING, "none")]
    pump(balance, 10)
    assert port.opened == 0
    port.now += 1.0
    balance.pump()
    assert port.opened == 1


def test_zero_goes_to_the_balance(balance: Balance, port: ScriptedPort, log: EventLog) -> None:
    port.reads = [PLAIN, weight("0.00", status="Z")]
    pump(balance, 2)
    balance.zero()
    balance.pump()
    assert port.written[-1] == b"\nZ\r"
    assert len(log.of(CommandDone)) == 1


def test_zero_without_a_port_is_refused_and_not_done_later(
    balance: Balance, port: ScriptedPort, log: EventLog
) -> None:
    port.refusals = [PortUnavailable(Reason.MISSING, "none")]
    balance.pump()
    balance.zero()
    pump(balance, 3)
    assert log.of(CommandRefused)[0].reason == "the balance is not connected"
    assert b"\nZ\r" not in port.written


def test_a_fault_of_ours_is_told_logged_and_survived(
    balance: Balance, port: ScriptedPort, log: EventLog, caplog: pytest.LogCaptureFixture
) -> None:
    port.reads = [ZeroDivisionError("by nought"), PLAIN]
    with caplog.at_level(logging.ERROR):
        pump(balance, 4)
    [lost] = log.of(Lost)
    assert (lost.reason, lost.detail) == (Reason.OTHER, "ZeroDivisionError: by nought")
    assert "ZeroDivisionError" in caplog.text
    assert len(log.of(ReadingReceived)) == 1


def tapped(port: ScriptedPort, log: EventLog, tap: Tap) -> Balance:
    return Balance(port, Sma("b"), publish=log, clock=lambda: port.now, wait=port.wait, tap=tap)


def test_a_tap_hears_each_packet_that_holds_bytes_before_it_is_read(
    port: ScriptedPort, log: EventLog
) -> None:
    heard: list[tuple[Packet, int]] = []
    balance = tapped(port, log, lambda packet: heard.append((packet, len(log.events))))
    port.reads = [PLAIN[:5], b"", PLAIN[5:]]
    pump(balance, 5)
    assert [(packet.data, events) for packet, events in heard] == [(PLAIN[:5], 1), (PLAIN[5:], 1)]
    assert [packet.at for packet, _ in heard] == pytest.approx([100.05, 100.15])


def test_a_tap_that_fails_is_let_alone_and_reading_goes_on(
    port: ScriptedPort, log: EventLog, caplog: pytest.LogCaptureFixture
) -> None:
    calls: list[Packet] = []

    def tap(packet: Packet) -> None:
        calls.append(packet)
        raise ZeroDivisionError("by nought")

    balance = tapped(port, log, tap)
    port.reads = [PLAIN, PLAIN]
    with caplog.at_level(logging.ERROR):
        pump(balance, 3)
    assert (len(log.of(ReadingReceived)), log.of(Lost), len(calls)) == (2, [], 1)
    assert "ZeroDivisionError" in caplog.text


def test_closing_without_a_thread_lets_go_of_the_port(balance: Balance, port: ScriptedPort) -> None:
    balance.pump()
    balance.close()
    balance.close()
    assert port.closed == 1


FAILURES = [
    ("read", serial.SerialException("device reports readiness to read but returned no data")),
    ("read", serial.SerialException("ClearCommError failed (PermissionError(13, 'x', None, 22))")),
    ("read", serial.SerialException("GetOverlappedResult failed (PermissionError(13, 'x'))")),
    ("read", serial.SerialException("read failed: [Errno 6] Device not configured")),
    ("read", TypeError("'NoneType' object cannot be interpreted as an integer")),
    ("in_waiting", OSError(errno.EIO, "Input/output error")),
    ("write", serial.SerialException("write failed: [Errno 5] Input/output error")),
    ("write", serial.SerialException("WriteFile failed (PermissionError(13, 'x', None, 22))")),
    ("write", serial.SerialTimeoutException("Write timeout")),
]


@pytest.mark.parametrize(("call", "failure"), FAILURES, ids=str)
def test_every_failure_of_pyserial_is_one_lost_port(
    call: str, failure: Exception, mocker: MockerFixture, log: EventLog
) -> None:
    opened = mocker.patch("serial.serial_for_url").return_value
    opened.in_waiting = 0
    opened.read.return_value = b""
    balance = open_balance("COM3", publish=log, clock=lambda: 0.0, wait=lambda _: None)
    balance.pump()
    if call == "in_waiting":
        mocker.patch.object(
            type(opened), "in_waiting", mocker.PropertyMock(side_effect=failure), create=True
        )
    else:
        getattr(opened, call).side_effect = failure
    pump(balance, 5)
    assert [type(event) for event in log.events] == [Back, Lost]
    opened.close.assert_called_once_with()


def test_a_port_that_cannot_even_be_closed_is_lost_once(
    mocker: MockerFixture, log: EventLog
) -> None:
    opened = mocker.patch("serial.serial_for_url").return_value
    opened.read.return_value = b""
    opened.in_waiting = 0
    balance = open_balance("COM3", publish=log, clock=lambda: 0.0, wait=lambda _: None)
    balance.pump()
    opened.read.side_effect = opened.close.side_effect = OSError(errno.EIO, "Input/output error")
    pump(balance, 3)
    assert [type(event) for event in log.events] == [Back, Lost]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ({"where": ""}, "no port is named"),
        ({"where": "COM3", "dialect": "smb"}, "no dialect"),
        ({"where": "COM3", "port_settings": "fast"}, "no port settings"),
    ],
)
def test_bad_words_are_refused_before_anything_is_opened(
    words: dict, says: str, log: EventLog
) -> None:
    with pytest.raises(BadAddress, match=says):
        open_balance(**words, publish=log)


# From here on with real ports, and the thread.


@pytest.fixture
def started(log: EventLog) -> Iterator[Callable[[str], Balance]]:
    balances: list[Balance] = []

    def start(where: str) -> Balance:
        balance = open_balance(where, publish=log)
        balances.append(balance)
        balance.start()
        return balance

    yield start
    for balance in balances:
        balance.close()


@pytest.fixture
def soon(monkeypatch: pytest.MonkeyPatch) -> None:
    """A second between two looks is long for a test."""
    monkeypatch.setattr("drivers.balance.RETRY_EVERY", 0.1)


@pytest.fixture
def cable(tmp_path: Path) -> Iterator[PtyPort]:
    cable = PtyPort(tmp_path)
    yield cable
    cable.unplug()


def test_a_pulled_cable_comes_back_under_another_name(
    cable: PtyPort, log: EventLog, started, soon
) -> None:
    started(str(cable.link))
    log.wait_for(Back)
    assert cable.heard(3) == b"\nW\r"
    cable.say(PLAIN)
    log.wait_for(ReadingReceived)
    before = cable.device
    cable.say(PLAIN[:9])
    cable.unplug()
    assert log.wait_for(Lost).reason is Reason.UNPLUGGED
    cable.plug()
    assert cable.device != before
    cable.say(weight("999.99"))
    assert log.wait_for(Back).where == str(cable.link)
    assert cable.heard(3) == b"\nW\r"
    cable.say(weight("77.00"))
    assert str(log.wait_for(ReadingReceived).reading.value) == "77.00"
    assert len(log.of(Lost)) == 1
    assert not [event for event in log.of(LineUnreadable) if PLAIN[:9] in event.raw]


def test_a_port_that_appears_later_is_found(tmp_path: Path, log: EventLog, started, soon) -> None:
    started(str(tmp_path / "balance"))
    assert log.wait_for(Lost).reason is Reason.MISSING
    cable = PtyPort(tmp_path)
    log.wait_for(Back)
    cable.unplug()


def test_a_server_that_closes_and_returns(log: EventLog, started, soon) -> None:
    server = SmaServer()
    started(server.address)
    log.wait_for(ReadingReceived)
    server.close()
    log.wait_for(Lost)
    server = SmaServer(server.port)
    log.wait_for(Back)
    log.wait_for(ReadingReceived)
    server.close()
    assert len(log.of(Back)) == 2


def test_a_server_that_hangs_up_is_called_again(log: EventLog, started, soon) -> None:
    server = SmaServer()
    started(server.address)
    log.wait_for(ReadingReceived)
    server.hang_up()
    assert log.wait_for(Lost).reason is Reason.CLOSED
    log.wait_for(ReadingReceived)
    server.close()


def test_closing_while_reading_ends_the_thread_quickly(cable: PtyPort, log: EventLog, started):
    balance = started(str(cable.link))
    log.wait_for(Back)
    begun = time.monotonic()
    balance.close()
    assert time.monotonic() - begun < 0.5
    assert f"balance {cable.link}" not in {thread.name for thread in threading.enumerate()}


def test_closing_while_looking_for_the_port_does_not_wait(tmp_path: Path, log: EventLog, started):
    balance = started(str(tmp_path / "none"))
    log.wait_for(Lost)
    begun = time.monotonic()
    balance.close()
    assert time.monotonic() - begun < 0.5


def test_closing_does_not_hang_on_a_driver_that_does(log: EventLog) -> None:
    stuck, inside = threading.Event(), threading.Event()

    class StuckPort(ScriptedPort):
        def read(self) -> bytes:
            inside.set()
            stuck.wait(5)
            return b""

    balance = Balance(StuckPort(), Sma("b"), publish=log)
    balance.start()
    inside.wait(2)
    begun = time.monotonic()
    balance.close(deadline=0.1)
    assert time.monotonic() - begun < 1.0
    stuck.set()


def test_a_listener_may_close_the_balance(cable: PtyPort, log: EventLog) -> None:
    ended = threading.Event()

    def publish(event: object) -> None:
        balance.close()
        ended.set()

    balance = open_balance(str(cable.link), publish=publish)
    balance.start()
    assert ended.wait(2)
    balance.close()
