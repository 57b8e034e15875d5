"""Which ports and HID scales there are, and which of them is the one that was unplugged.

After an unplug a port may come back under another name. A USB port is known by its serial number,
or, where it has none, by its kind and the socket it is plugged into; everything else by its path.
A symbolic link stays the path that was given, since whoever made it keeps it up to date. The
address of a HID scale says itself what stays.
"""

from __future__ import annotations

import os
from dataclasses import dataclass

from serial.tools import list_ports as pyserial_ports

from drivers.transports.addresses import is_url
from drivers.transports.hid_addresses import (
    ConnectedScale,
    address_of,
    connected_scales,
    is_hid,
)


@dataclass(frozen=True, slots=True)
class PortIdentity:
    """A port of this machine: its address now, and what stays when it is plugged in again.

    ``vid``, ``pid`` and ``location`` are those of USB; None where the system does not say.
    """

    where: str
    description: str = ""
    vid: int | None = None
    pid: int | None = None
    serial_number: str | None = None
    location: str | None = None


def list_ports() -> list[PortIdentity]:
    """The serial ports of this machine, by address; nothing is opened."""
    found = (
        PortIdentity(
            where=port.device,
            description=port.description or "",
            vid=port.vid,
            pid=port.pid,
            serial_number=port.serial_number or None,
            location=port.location or None,
        )
        for port in pyserial_ports.comports()
    )
    return sorted(found, key=lambda port: port.where)


def list_hid_scales() -> list[PortIdentity]:
    """The HID scales of this machine, by address; nothing is opened.

    ``location`` is the system's path, which another scale may have next time. Raises
    PortUnavailable when they cannot be looked for.
    """
    scales = connected_scales()
    return sorted((_identity_of(scale, scales) for scale in scales), key=lambda scale: scale.where)


def identify(address: str) -> PortIdentity:
    """What is known of the port at ``address``; of a link or a URL only the address."""
    if is_hid(address):
        return _identify_hid(address)
    if not is_url(address):
        for port in list_ports():
            if port.where == address:
                return port
    return PortIdentity(where=address)


def find_again(identity: PortIdentity) -> str | None:
    """Where that port is now; None while it is not there."""
    if is_hid(identity.where):
        return _hid_again(identity)
    if is_url(identity.where):
        return identity.where
    ports = list_ports()
    if identity.vid is not None:
        return _same_device(identity, ports)
    listed = any(port.where == identity.where for port in ports)
    return identity.where if listed or os.path.exists(identity.where) else None


def is_elsewhere(identity: PortIdentity) -> bool:
    """Whether a port that was not found again is there, as it seems, but in another socket."""
    if identity.vid is None or is_hid(identity.where):
        return False
    return any(_kind_of(port) == _kind_of(identity) for port in list_ports())


def _kind_of(port: PortIdentity) -> tuple[int | None, int | None, str | None]:
    return port.vid, port.pid, port.serial_number


def _same_device(identity: PortIdentity, ports: list[PortIdentity]) -> str | None:
    same = [port for port in ports if _kind_of(port) == _kind_of(identity)]
    # Bridges are sold with one serial number for all: only a single one is known by it.
    if identity.serial_number is None or len(same) > 1:
        same = [port for port in same if port.location == identity.location]
    return same[0].where if same else None


def _identity_of(scale: ConnectedScale, among: list[ConnectedScale]) -> PortIdentity:
    return PortIdentity(
        where=address_of(scale, among),
        description=" ".join(filter(None, (scale.maker, scale.product))),
        vid=scale.vid,
        pid=scale.pid,
        serial_number=scale.serial_number or None,
        location=scale.address_by_path,
    )


def _identify_hid(address: str) -> PortIdentity:
    scales = connected_scales()
    meant = [scale for scale in scales if scale.is_called(address)]
    return _identity_of(meant[0], scales) if len(meant) == 1 else PortIdentity(where=address)


def _hid_again(identity: PortIdentity) -> str | None:
    if identity.where != identity.location:
        return identity.where
    # It had a twin when it was seen last: all that tells them apart is where it was.
    same = (
        scale.where
        for scale in list_hid_scales()
        if (scale.location, scale.vid, scale.pid, scale.serial_number)
        == (identity.location, identity.vid, identity.pid, identity.serial_number)
    )
    return next(same, None)
