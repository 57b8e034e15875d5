import socket
from collections.abc import Iterator

import pytest

from drivers.errors import PortLost, PortUnavailable, Reason
from drivers.transports.socket_stream import SocketStream, open_socket

PATIENCE = 0.02


@pytest.fixture
def server() -> Iterator[socket.socket]:
    with socket.create_server(("127.0.0.1", 0)) as server:
        yield server


@pytest.fixture
def ends(server: socket.socket) -> Iterator[tuple[SocketStream, socket.socket]]:
    stream = open_socket("127.0.0.1", server.getsockname()[1], PATIENCE)
    other, _ = server.accept()
    with other:
        yield stream, other
    stream.close()


def test_bytes_travel_both_ways(ends: tuple[SocketStream, socket.socket]) -> None:
    stream, other = ends
    stream.write(b"\nW\r")
    assert other.recv(10) == b"\nW\r"
    other.sendall(b"\n?\r")
    assert stream.read() == b"\n?\r"


@pytest.mark.parametrize("patience", [0.0, PATIENCE])
def test_a_read_without_bytes_comes_back_empty(server: socket.socket, patience: float) -> None:
    stream = open_socket("127.0.0.1", server.getsockname()[1], patience)
    assert stream.read() == b""
    stream.close()


def test_what_the_other_end_says_at_once_is_kept(server: socket.socket) -> None:
    first = socket.create_connection(server.getsockname())
    other, _ = server.accept()
    with first, other:
        other.sendall(b"\n?\r" * 100)
        stream = SocketStream(first, PATIENCE)
        assert stream.read() == b"\n?\r" * 100


def test_a_closed_connection_is_a_lost_port(ends: tuple[SocketStream, socket.socket]) -> None:
    stream, other = ends
    other.close()
    with pytest.raises(PortLost) as caught:
        stream.read()
    assert caught.value.reason is Reason.CLOSED


def test_an_end_that_takes_nothing_is_a_lost_port(
    ends: tuple[SocketStream, socket.socket], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("drivers.transports.socket_stream._WRITE_WITHIN", 0.05)
    stream, _ = ends
    with pytest.raises(PortLost) as caught:
        stream.write(b"W" * 16_000_000)
    assert caught.value.reason is Reason.NOT_ANSWERING


def test_where_nobody_listens_nothing_opens(server: socket.socket) -> None:
    port = server.getsockname()[1]
    server.close()
    with pytest.raises(PortUnavailable) as caught:
        open_socket("127.0.0.1", port, PATIENCE)
    assert caught.value.reason is Reason.NOT_ANSWERING
