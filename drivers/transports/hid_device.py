"""A USB scale that is a HID device: one packet is one whole report."""

from __future__ import annotations

import sys
from collections.abc import Callable

from drivers.errors import PortLost, PortUnavailable, Reason
from drivers.transports.hid_addresses import ConnectedScale, called
from drivers.transports.hid_binding import OpenedDevice, binding

_LONGEST = 1025  # bytes; the longest packet of USB, and an id before it
# hidapi raises OSError, and ValueError for a device that is not open (any more).
_FAILURES = (OSError, ValueError)
# Its errors have no number; the reason stands in their text, on Windows and macOS as a code.
_TEXTS_AT_OPENING = (
    ("No such", Reason.MISSING),
    ("Permission denied", Reason.NOT_ALLOWED),
    ("Operation not permitted", Reason.NOT_ALLOWED),
    ("resource busy", Reason.BUSY),
    ("0xE00002E2", Reason.NOT_ALLOWED),  # macOS, as shown in todbot/hidapitester, pull request 30
    # From memory, not verified: no device and exclusive access on macOS; then file not found,
    # access denied and sharing violation on Windows.
    ("0xE00002C0", Reason.MISSING),
    ("0xE00002C5", Reason.BUSY),
    ("0x00000002", Reason.MISSING),
    ("0x00000005", Reason.BUSY),
    ("0x00000020", Reason.BUSY),
)
_RULE = (
    'KERNEL=="hidraw*", ATTRS{{idVendor}}=="{vid:04x}", ATTRS{{idProduct}}=="{pid:04x}", '
    'TAG+="uaccess"'
)


class HidDevice:
    """A Transport on an open HID device."""

    def __init__(self, device: OpenedDevice, patience: float) -> None:
        self._device = device
        self._patience_ms = round(patience * 1000)
        self._stale = True

    def read(self) -> bytes:
        """The next report, or nothing within the patience.

        The first one after opening may have waited in the device for long: it is thrown away.
        """
        try:
            report = bytes(self._device.read(_LONGEST, self._patience_ms))
        except _FAILURES as failure:
            raise PortLost(Reason.UNPLUGGED, str(failure)) from failure
        if report and self._stale:
            self._stale = False
            return b""
        return report

    def write(self, data: bytes) -> None:
        """Refuse: what a report to a scale does differs from one to the next. Raises PortLost."""
        raise PortLost(Reason.OTHER, "nothing is sent to a HID scale")

    def close(self) -> None:
        """Let go of the device."""
        _close(self._device)


def open_hid_scale(
    address: str, patience: float, described: Callable[[bytes], object]
) -> HidDevice:
    """Open the scale at ``address``; its report descriptor goes to ``described`` first.

    ``patience`` is how long a read waits, in seconds. The descriptor is empty if it cannot be
    read. Raises PortUnavailable.
    """
    scale, device = called(address), binding().device()
    try:
        device.open_path(scale.path)
    except _FAILURES as failure:
        raise _unavailable(scale, _explained(device, failure)) from failure
    try:
        device.set_nonblocking(1)
        described(_descriptor(device))
    except _FAILURES as failure:
        _close(device)
        raise PortUnavailable(Reason.OTHER, str(failure)) from failure
    return HidDevice(device, patience)


def _descriptor(device: OpenedDevice) -> bytes:
    try:
        return bytes(device.get_report_descriptor())
    except _FAILURES:
        return b""


def _close(device: OpenedDevice) -> None:
    try:
        device.close()
    except _FAILURES:  # a device that is gone may fail to close; there is nothing left to tell
        return


def _explained(device: OpenedDevice, failure: Exception) -> str:
    """Why it did not open: the error itself says no more than that."""
    try:
        return device.error() or str(failure)
    except _FAILURES:
        return str(failure)


def _unavailable(scale: ConnectedScale, why: str) -> PortUnavailable:
    reasons = (reason for words, reason in _TEXTS_AT_OPENING if words in why)
    reason = next(reasons, Reason.OTHER)
    if reason is Reason.NOT_ALLOWED and sys.platform.startswith("linux"):
        rule = _RULE.format(vid=scale.vid, pid=scale.pid)
        why = (
            f"{why}. Write this line into /etc/udev/rules.d/70-scale.rules and plug the scale in "
            f"again: {rule}"
        )
    return PortUnavailable(reason, why)
