"""``gramstand balances``: lists the serial ports and HID scales that are plugged in.

Nothing is opened and nothing is sent: what hangs at a port shows only when somebody chooses it.
"""

from __future__ import annotations

import argparse

from drivers.discovery import list_hid_scales, list_ports
from drivers.errors import PortUnavailable
from kiosk.commands.console import complain, emit, tell
from kiosk.texts import say
from kiosk.ui.presenters.scale_facts import ScaleKind
from kiosk.ui.presenters.scale_words import description

HELP: str = say("balances.help")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command: there are none."""


def run(options: argparse.Namespace) -> int:
    """Print a line for each; 0, or 1 if there was no way to look for HID scales."""
    found = [(ScaleKind.SERIAL, port) for port in list_ports()]
    code = 0
    try:
        found += [(ScaleKind.HID, scale) for scale in list_hid_scales()]
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
