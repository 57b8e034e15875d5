import pytest

from drivers.errors import BadAddress, PortUnavailable, Reason
from drivers.transports.addresses import check_address, open_transport
from drivers.transports.port_settings import PortSettings


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
