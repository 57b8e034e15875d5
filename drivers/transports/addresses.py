"""From the words that name a port to an open one."""

from __future__ import annotations

from collections.abc import Callable
from urllib.parse import urlsplit

from drivers.errors import BadAddress
from drivers.transports import Transport
from drivers.transports.hid_addresses import check_hid_address, is_hid
from drivers.transports.hid_device import open_hid_scale
from drivers.transports.port_settings import PortSettings
from drivers.transports.serial_port import open_serial_port, open_serial_url
from drivers.transports.socket_stream import open_socket

_SOCKET, _REMOTE_PORT, _LOOP = "socket", "rfc2217", "loop"

Described = Callable[[bytes], object]


def unheard(descriptor: bytes) -> None:
    """For whoever does not care what a HID scale says of its reports."""


def is_url(address: str) -> bool:
    """True for ``scheme://...``, False for a port or a HID scale of this machine."""
    return "://" in address and not is_hid(address)


def check_address(address: str) -> None:
    """BadAddress if no port can have this name; whether there is one shows when it is opened."""
    if not address.strip() or "\0" in address:
        raise BadAddress("no port is named; give one like /dev/ttyUSB0, COM3 or socket://host:4001")
    if is_hid(address):
        check_hid_address(address)
        return
    if not is_url(address):
        return
    scheme = address.partition("://")[0]
    if scheme in (_SOCKET, _REMOTE_PORT):
        _host_and_port(address)
    elif scheme != _LOOP:
        known = ", ".join(f"{name}://" for name in (_SOCKET, _REMOTE_PORT, _LOOP))
        raise BadAddress(f"{address!r} begins with an unknown {scheme}://; known are {known}")


def open_transport(
    address: str, settings: PortSettings, patience: float, described: Described = unheard
) -> Transport:
    """Open the port at a checked address; ``described`` gets the descriptor of a HID scale.

    Raises PortUnavailable.
    """
    if is_hid(address):
        return open_hid_scale(address, patience, described)
    if not is_url(address):
        return open_serial_port(address, settings, patience)
    if urlsplit(address).scheme == _SOCKET:
        return open_socket(*_host_and_port(address), patience)
    return open_serial_url(address, settings, patience)


def _host_and_port(address: str) -> tuple[str, int]:
    try:
        parts = urlsplit(address)
        host, port = parts.hostname, parts.port
        (host or "").encode("idna")
    except ValueError:
        host, port = None, None
    if not host or not port:
        scheme = address.partition("://")[0]
        raise BadAddress(f"{address!r} lacks a host and a port, as in {scheme}://localhost:4001")
    return host, port
