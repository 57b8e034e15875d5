import errno
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
import serial
from pytest_mock import MockerFixture

from drivers.errors import PortLost, PortUnavailable, Reason
from drivers.transports.port_settings import PortSettings
from drivers.transports.serial_port import open_serial_port
from tests.helpers.pty_port import PtyPort, read_until

PATIENCE = 0.02


@pytest.fixture
def cable(tmp_path: Path) -> Iterator[PtyPort]:
    cable = PtyPort(tmp_path)
    yield cable
    cable.unplug()


def test_bytes_travel_both_ways(cable: PtyPort) -> None:
    port = open_serial_port(str(cable.link), PortSettings(), PATIENCE)
    port.write(b"\nW\r")
    assert cable.heard(3) == b"\nW\r"
    cable.say(b"\n?\r")
    assert read_until(port, 3) == b"\n?\r"
    port.close()


def test_a_read_without_bytes_comes_back_empty(cable: PtyPort) -> None:
    port = open_serial_port(str(cable.link), PortSettings(), PATIENCE)
    assert port.read() == b""
    port.close()


def test_what_waited_before_the_opening_is_thrown_away(cable: PtyPort) -> None:
    for _ in range(500):
        cable.say(b"\n 1G      999.99g  \r")
    port = open_serial_port(str(cable.link), PortSettings(), PATIENCE)
    cable.say(b"\n?\r")
    assert read_until(port, 3) == b"\n?\r"
    port.close()


def test_a_second_opener_finds_the_port_busy(cable: PtyPort) -> None:
    port = open_serial_port(str(cable.link), PortSettings(), PATIENCE)
    with pytest.raises(PortUnavailable) as caught:
        open_serial_port(cable.device, PortSettings(), PATIENCE)
    port.close()
    assert caught.value.reason is Reason.BUSY


def test_a_pulled_cable_is_a_lost_port_for_reading_and_writing(cable: PtyPort) -> None:
    port = open_serial_port(str(cable.link), PortSettings(), PATIENCE)
    cable.unplug()
    with pytest.raises(PortLost) as reading:
        port.read()
    with pytest.raises(PortLost) as writing:
        port.write(b"\nW\r")
    port.close()
    assert {reading.value.reason, writing.value.reason} == {Reason.UNPLUGGED}


def test_a_port_that_is_not_there_is_missing(tmp_path: Path) -> None:
    with pytest.raises(PortUnavailable) as caught:
        open_serial_port(str(tmp_path / "none"), PortSettings(), PATIENCE)
    assert caught.value.reason is Reason.MISSING


def test_a_file_is_no_port(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(PortUnavailable):
        open_serial_port(str(tmp_path / "file"), PortSettings(), PATIENCE)


def test_the_speed_reaches_the_port(cable: PtyPort) -> None:
    termios = pytest.importorskip("termios")
    port = open_serial_port(str(cable.link), PortSettings(1200), PATIENCE)
    descriptor = os.open(cable.device, os.O_RDWR | os.O_NOCTTY)
    speed = termios.tcgetattr(descriptor)[4]
    os.close(descriptor)
    port.close()
    assert speed == termios.B1200


def test_a_port_that_fails_while_it_is_drained_is_closed_again(mocker: MockerFixture) -> None:
    termios = pytest.importorskip("termios")
    opened = mocker.patch("serial.serial_for_url").return_value
    opened.reset_input_buffer.side_effect = termios.error(errno.EIO, "Input/output error")
    with pytest.raises(PortUnavailable):
        open_serial_port("COM3", PortSettings(), PATIENCE)
    opened.close.assert_called_once_with()


def test_a_balance_that_never_pauses_does_not_hold_up_the_opening(mocker: MockerFixture) -> None:
    opened = mocker.patch("serial.serial_for_url").return_value
    opened.read.return_value = b"9" * 4096
    opened.in_waiting = 4096
    port = open_serial_port("COM3", PortSettings(), PATIENCE)
    assert port.read() == b"9" * 4096


def test_the_port_is_asked_for_alone_with_its_settings_and_limits(mocker: MockerFixture) -> None:
    opened = mocker.patch("serial.serial_for_url")
    opened.return_value.read.return_value = b""
    open_serial_port("COM3", PortSettings(1200, 7, "O", 2), PATIENCE)
    asked = opened.call_args.kwargs
    assert (asked["baudrate"], asked["bytesize"]) == (1200, serial.SEVENBITS)
    assert (asked["parity"], asked["stopbits"]) == (serial.PARITY_ODD, serial.STOPBITS_TWO)
    assert asked["exclusive"] is True
    assert asked["write_timeout"] == 1.0
    assert opened.return_value.timeout == PATIENCE


def test_a_reader_whose_port_was_closed_under_it_reports_a_lost_port(mocker: MockerFixture) -> None:
    opened = mocker.patch("serial.serial_for_url").return_value
    opened.read.side_effect = [b"", TypeError("'NoneType' object cannot be interpreted")]
    opened.in_waiting = 0
    port = open_serial_port("COM3", PortSettings(), PATIENCE)
    with pytest.raises(PortLost):
        port.read()


def test_a_write_that_nobody_takes_is_a_lost_port(mocker: MockerFixture) -> None:
    opened = mocker.patch("serial.serial_for_url").return_value
    opened.read.return_value = b""
    opened.write.side_effect = serial.SerialTimeoutException("Write timeout")
    port = open_serial_port("COM3", PortSettings(), PATIENCE)
    with pytest.raises(PortLost):
        port.write(b"\nW\r")
