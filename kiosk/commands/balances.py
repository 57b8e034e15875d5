"""``gramstand balances``: lists the serial ports and HID scales that are plugged in.

Nothing is opened and nothing is sent: what hangs at a port shows only when somebody chooses it.
"""

from __future__ import annotations

import argparse

from drivers.discovery import PortIdentity, list_hid_scales, list_ports
from drivers.errors import PortUnavailable
from kiosk.commands.console import complain, emit, tell
from kiosk.texts import say

HELP: str = say("balances.help")
SERIAL, HID = "serial", "hid"
_UNKNOWN = ("", "n/a")  # what the system writes when it knows nothing


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command: there are none."""


def run(options: argparse.Namespace) -> int:
    """Print a line for each; 0, or 1 if there was no way to look for HID scales."""
    found = [(SERIAL, port) for port in list_ports()]
    code = 0
    try:
        found += [(HID, scale) for scale in list_hid_scales()]
    except PortUnavailable as failure:
        complain(say("balances.no_hid", why=failure.detail))
        code = 1
    for kind, port in found:
        described = description(kind, port)
        if options.json:
            emit({"where": port.where, "kind": kind, "description": described})
        else:
            tell(say("balances.line", where=port.where, description=described))
    if not found and code == 0:
        complain(say("balances.none"))
    return code


def description(kind: str, port: PortIdentity) -> str:
    """What can be read on the cable or seen behind it, in words."""
    if kind == HID:
        words = say("balances.hid")
    else:
        words = say("balances.built_in" if port.vid is None else "balances.usb")
    if port.description not in (*_UNKNOWN, port.where.rpartition("/")[2]):
        words = say("balances.called", kind=words, name=port.description)
    if port.serial_number:
        words = say("balances.serial_number", kind=words, number=port.serial_number)
    if kind == SERIAL and port.location:
        words = say("balances.socket", kind=words, socket=port.location)
    return words
