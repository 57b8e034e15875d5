import contextlib
import socket
import threading
from types import SimpleNamespace

import pytest
import serial
from serial import rfc2217

from drivers.errors import BadAddress, PortUnavailable, Reason
from drivers.transports.addresses import check_address, open_transport
from drivers.transports.port_settings import PortSettings
from tests.helpers.pty_port import read_until


@pytest.mark.parametrize(
    "address",
    ["/dev/ttyUSB0", "COM3", "some link", "socket://localhost:4001", "socket://[::1]:4001",
     "rfc2217://10.0.0.7:2217?ign_set_control", "loop://"],
)  # fmt: skip
def test_an_address_that_may_be_a_port_passes(address: str) -> None:
    check_address(address)


@pytest.mark.parametrize(
    ("address", "says"),
    [
        ("", "no port is named"),
        ("  ", "no port is named"),
        ("/dev/tty\0", "no port is named"),
        ("spy://x", r"unknown spy://; known are socket://, rfc2217://, loop://"),
        ("socket://localhost", "lacks a host and a port, as in socket://localhost:4001"),
        ("socket://:4001", "lacks a host and a port"),
        ("socket://localhost:0", "lacks a host and a port"),
        ("socket://localhost:70000", "lacks a host and a port"),
        ("socket://localhost:port", "lacks a host and a port"),
        ("socket://[::1:4001", "lacks a host and a port"),
        ("socket://a..b:4001", "lacks a host and a port"),
        ("rfc2217://host", "lacks a host and a port, as in rfc2217://"),
    ],
)
def test_words_that_can_be_no_port_are_refused(address: str, says: str) -> None:
    with pytest.raises(BadAddress, match=says):
        check_address(address)


def test_a_loop_gives_back_what_was_written() -> None:
    loop = open_transport("loop://", PortSettings(), 0.01)
    loop.write(b"\nW\r")
    heard = loop.read() + loop.read()
    loop.close()
    assert heard == b"\nW\r"


@pytest.mark.parametrize("address", ["socket://127.0.0.1:9", "rfc2217://127.0.0.1:9"])
def test_an_address_where_nobody_answers_is_unavailable(address: str) -> None:
    with pytest.raises(PortUnavailable) as caught:
        open_transport(address, PortSettings(), 0.01)
    assert caught.value.reason is Reason.NOT_ANSWERING


class RemotePort:
    """A serial port shared over the network (RFC 2217), whose line gives back what it gets."""

    def __init__(self) -> None:
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.address = f"rfc2217://127.0.0.1:{self._listener.getsockname()[1]}"
        self.line = serial.serial_for_url("loop://", timeout=0)
        threading.Thread(target=self._serve, daemon=True).start()

    def _serve(self) -> None:
        host, _ = self._listener.accept()
        with self._listener, host, contextlib.suppress(OSError):
            manager = rfc2217.PortManager(self.line, SimpleNamespace(write=host.sendall))
            while data := host.recv(1024):
                self.line.write(b"".join(manager.filter(data)))
                host.sendall(b"".join(manager.escape(self.line.read(1024))))


@pytest.mark.filterwarnings("ignore:set:DeprecationWarning")  # pyserial 3.5 names threads as of old
def test_a_remote_port_gets_its_settings_and_carries_bytes() -> None:
    remote = RemotePort()
    port = open_transport(remote.address, PortSettings(1200), 0.05)
    port.write(b"\nW\r")
    heard = read_until(port, 3)
    port.close()
    assert heard == b"\nW\r"
    assert remote.line.baudrate == 1200
