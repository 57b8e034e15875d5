from __future__ import annotations

import os
import socket
import termios
import time
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from urllib.parse import urlsplit

import pytest
import serial

from drivers.simulated.port import PortKind, SimulatedPort
from tests.helpers.simulated_desk import ManualClock


class Echo:
    """A device that sends back what it hears, and ``chatter`` by itself."""

    def __init__(self) -> None:
        self.chatter = b""

    def receive(self, data: bytes, now: float) -> bytes:
        return data

    def due(self, now: float) -> bytes:
        return self.chatter


@pytest.fixture
def device() -> Echo:
    return Echo()


@pytest.fixture(params=PortKind)
def port(request: pytest.FixtureRequest, device: Echo) -> Iterator[SimulatedPort]:
    port = SimulatedPort(device, ManualClock(), request.param)
    yield port
    port.close()


@pytest.fixture
def pty(device: Echo) -> Iterator[SimulatedPort]:
    port = SimulatedPort(device, ManualClock(), PortKind.PTY)
    yield port
    port.close()


@pytest.fixture
def local(device: Echo) -> Iterator[SimulatedPort]:
    port = SimulatedPort(device, ManualClock(), PortKind.SOCKET)
    yield port
    port.close()


def open_raw(port: SimulatedPort) -> int:
    return os.open(port.address, os.O_RDWR | os.O_NOCTTY | os.O_NONBLOCK)


def connect(port: SimulatedPort) -> socket.socket:
    where = urlsplit(port.address)
    return socket.create_connection((where.hostname, where.port), timeout=2)


def test_pyserial_opens_either_kind(port: SimulatedPort) -> None:
    with serial.serial_for_url(port.address, timeout=1) as host:
        host.write(b"\nW\r")
        port.pump()

        assert host.read(3) == b"\nW\r"


def test_a_thread_answers_by_itself(port: SimulatedPort) -> None:
    port.start()
    with serial.serial_for_url(port.address, timeout=1) as host:
        for _ in range(20):
            host.write(b"\nW\r")
            assert host.read(3) == b"\nW\r"


def test_bytes_pass_unchanged_before_any_host_sets_the_line(pty: SimulatedPort) -> None:
    host = open_raw(pty)
    every = bytes(range(256))
    os.write(host, every)
    pty.pump()

    assert os.read(host, 1000) == every
    os.close(host)


def test_the_line_does_not_echo(pty: SimulatedPort) -> None:
    host = open_raw(pty)
    os.write(host, b"\nW\r")

    with pytest.raises(BlockingIOError):
        os.read(host, 10)
    os.close(host)


def test_the_address_is_a_link_in_a_private_folder(pty: SimulatedPort) -> None:
    link = Path(pty.address)

    assert link.is_symlink()
    assert link.parent.stat().st_mode & 0o077 == 0


def test_unplugging_takes_the_address_away_and_plugging_brings_it_back(pty: SimulatedPort) -> None:
    before = os.readlink(pty.address)
    pty.unplug()
    assert not os.path.lexists(pty.address)
    assert not pty.plugged
    pty.plug()

    assert pty.plugged
    assert os.readlink(pty.address) != before
    host = open_raw(pty)
    os.write(host, b"x")
    pty.pump()
    assert os.read(host, 10) == b"x"
    os.close(host)


def test_the_name_changes_every_time(pty: SimulatedPort) -> None:
    names = []
    for _ in range(6):
        names.append(os.readlink(pty.address))
        pty.unplug()
        pty.plug()

    assert all(first != second for first, second in pairwise(names))


def test_an_open_host_loses_an_unplugged_port(pty: SimulatedPort) -> None:
    with serial.Serial(pty.address, timeout=1) as host:
        pty.unplug()

        with pytest.raises(serial.SerialException):
            host.read(1)
        with pytest.raises((OSError, termios.error)):
            host.reset_input_buffer()


def test_an_open_host_loses_an_unplugged_socket(local: SimulatedPort) -> None:
    host = connect(local)
    local.pump()
    local.unplug()

    assert host.recv(10) == b""
    with pytest.raises(ConnectionRefusedError):
        connect(local)
    host.close()


def test_a_socket_comes_back_at_the_same_address(local: SimulatedPort) -> None:
    address = local.address
    with connect(local) as host:
        host.send(b"x")
        local.pump()
        local.unplug()
        local.plug()
    with connect(local) as host:
        host.send(b"y")
        local.pump()

        assert host.recv(10) == b"y"
    assert local.address == address


def test_a_socket_serves_the_next_host(local: SimulatedPort) -> None:
    for _ in range(3):
        with connect(local) as host:
            local.pump()
            host.send(b"x")
            local.pump()
            assert host.recv(10) == b"x"
        local.pump()


def test_a_host_that_breaks_off_does_no_harm(local: SimulatedPort, device: Echo) -> None:
    host = connect(local)
    local.pump()
    host.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\1\0\0\0\0\0\0\0")
    host.close()  # a reset instead of a farewell
    device.chatter = b"x" * 100
    for _ in range(3):
        local.pump()

    with connect(local) as host:
        local.pump()
        assert host.recv(10) == b"x" * 10


def test_never_blocks_when_nobody_reads(port: SimulatedPort, device: Echo) -> None:
    device.chatter = b"\n 1G       12.34g  \r" * 200
    url = port.address
    host = serial.serial_for_url(url, timeout=1) if "://" in url else None
    started = time.monotonic()
    for _ in range(5000):  # 20 MB, far more than any buffer holds
        port.pump()

    assert time.monotonic() - started < 2
    if host is not None:
        host.close()


def test_what_nobody_read_waits_for_the_next_host(pty: SimulatedPort, device: Echo) -> None:
    device.chatter = b"stale"
    pty.pump()
    host = open_raw(pty)

    assert os.read(host, 100) == b"stale"
    os.close(host)


def test_what_is_said_without_a_cable_is_lost(port: SimulatedPort, device: Echo) -> None:
    device.chatter = b"lost"
    port.unplug()
    port.pump()
    device.chatter = b"heard"
    port.plug()

    with serial.serial_for_url(port.address, timeout=1) as host:
        port.pump()
        assert host.read(5) == b"heard"


def test_a_second_pull_or_plug_changes_nothing(port: SimulatedPort) -> None:
    port.unplug()
    port.unplug()
    port.plug()
    port.plug()

    with serial.serial_for_url(port.address, timeout=1) as host:
        host.write(b"x")
        port.pump()
        assert host.read(1) == b"x"


def test_the_thread_survives_cables_that_come_and_go(port: SimulatedPort) -> None:
    port.start()
    for _ in range(10):
        port.unplug()
        port.plug()
    with serial.serial_for_url(port.address, timeout=1) as host:
        host.write(b"x")

        assert host.read(1) == b"x"


def test_closing_leaves_nothing_behind(pty: SimulatedPort) -> None:
    pty.start()
    folder = Path(pty.address).parent
    descriptors = len(os.listdir("/proc/self/fd")) if os.path.isdir("/proc/self/fd") else None
    pty.close()
    pty.close()

    assert not folder.exists()
    if descriptors is not None:
        assert len(os.listdir("/proc/self/fd")) <= descriptors - 2


def test_a_closed_port_cannot_be_plugged(pty: SimulatedPort) -> None:
    pty.close()
    pty.plug()

    assert not pty.plugged


def test_without_a_choice_it_is_a_terminal_where_there_are_any(device: Echo) -> None:
    port = SimulatedPort(device)
    port.close()

    assert port.address.startswith("socket://") is not hasattr(os, "openpty")
