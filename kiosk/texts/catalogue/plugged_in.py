"""Texts: what is plugged in, on the command line."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "balances.help": "list the serial ports and the USB scales that are plugged in",
    "balances.line": "{where}: {description}",
    "balances.none": (
        "No serial port and no USB scale was found: plug the cable in, switch the scale on, "
        "and try again."
    ),
    "balances.no_hid": "USB scales cannot be looked for: {why}",
    "balances.choose": "Choose one with --scale; there are: {found}",
    "balances.hid": "USB scale",
    "balances.usb": "USB adapter for a serial cable",
    "balances.built_in": "serial socket of this machine",
    "balances.serial_number": "serial number {number}",
    "balances.socket": "in USB socket {socket}",
}
