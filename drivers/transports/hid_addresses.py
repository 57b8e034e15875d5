"""Which HID scales there are, and what each is called.

A scale is known by its usage, never by a list of makers. Its address is ``hid:VENDOR:PRODUCT``,
four hexadecimal digits each, and, if it has one, ``:SERIAL``: that stays when it is plugged in
again, in whatever socket. Only scales that cannot be told apart so are called ``hid:`` and the
system's own path. Any of these forms may be given for any scale.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from drivers.errors import BadAddress, PortUnavailable, Reason
from drivers.transports.hid_binding import binding

PREFIX = "hid:"
_SCALES_PAGE, _SCALE_DEVICE = 0x8D, 0x20
_KIND = re.compile(r"([0-9a-fA-F]{4}):([0-9a-fA-F]{4})(?::(.+))?", re.DOTALL)


@dataclass(frozen=True, slots=True)
class ConnectedScale:
    """A scale that is plugged in; ``path`` is the system's name for it, texts may be empty."""

    path: bytes
    vid: int
    pid: int
    serial_number: str
    product: str
    maker: str

    @property
    def address_by_path(self) -> str:
        """Where it is now, whatever it is."""
        return PREFIX + self.path.decode("utf-8", "backslashreplace")

    @property
    def address_by_kind(self) -> str:
        """What it says of itself."""
        serial = f":{self.serial_number}" if self.serial_number else ""
        return f"{PREFIX}{self.vid:04x}:{self.pid:04x}{serial}"

    def is_called(self, address: str) -> bool:
        """Whether the address may mean this scale."""
        if address == self.address_by_path:
            return True
        kind = _KIND.fullmatch(address.removeprefix(PREFIX))
        return (
            kind is not None
            and (int(kind[1], 16), int(kind[2], 16)) == (self.vid, self.pid)
            and kind[3] in (None, self.serial_number)
        )


def is_hid(address: str) -> bool:
    """Whether the address is that of a HID scale."""
    return address.startswith(PREFIX)


def check_hid_address(address: str) -> None:
    """BadAddress if nothing follows ``hid:``."""
    if not address.removeprefix(PREFIX).strip():
        raise BadAddress(f"{address!r} names no scale; gramstand balances lists those there are")


def connected_scales() -> list[ConnectedScale]:
    """The HID scales of this machine, by path; nothing is opened. Raises PortUnavailable."""
    try:
        found = binding().enumerate()
    except OSError as failure:
        raise PortUnavailable(Reason.OTHER, f"USB cannot be searched: {failure}") from failure
    scales = {  # by path: a device may be listed once for each of its usages
        entry["path"]: ConnectedScale(
            path=entry["path"],
            vid=entry["vendor_id"],
            pid=entry["product_id"],
            serial_number=_clean(entry["serial_number"]),
            product=_clean(entry["product_string"]),
            maker=_clean(entry["manufacturer_string"]),
        )
        for entry in found
        if (entry["usage_page"], entry["usage"]) == (_SCALES_PAGE, _SCALE_DEVICE)
    }
    return sorted(scales.values(), key=lambda scale: scale.path)


def address_of(scale: ConnectedScale, among: list[ConnectedScale]) -> str:
    """The address that lasts longest and means this one only."""
    by_kind = scale.address_by_kind
    twins = [other for other in among if other.is_called(by_kind)]
    return by_kind if len(twins) == 1 else scale.address_by_path


def called(address: str) -> ConnectedScale:
    """The scale at an address. PortUnavailable if there is none, or more than one."""
    found = connected_scales()
    meant = [scale for scale in found if scale.is_called(address)]
    if len(meant) == 1:
        return meant[0]
    if meant:
        names = ", ".join(scale.address_by_path for scale in meant)
        raise PortUnavailable(Reason.OTHER, f"{address} may be each of these, choose one: {names}")
    raise PortUnavailable(Reason.MISSING, address)


def _clean(text: str | None) -> str:
    """What a device says of itself, on one line."""
    return " ".join((text or "").replace("\0", " ").split())
