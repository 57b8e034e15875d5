"""How a port or a HID scale is described, so that a person finds its cable."""

from __future__ import annotations

from drivers.discovery import PortIdentity
from kiosk.texts import say
from kiosk.ui.presenters.scale_facts import ScaleKind

_UNKNOWN = ("", "n/a")  # what the system writes when it knows nothing


def description(kind: ScaleKind, port: PortIdentity) -> str:
    """What it is, and what can be read on the cable or seen behind it."""
    return ", ".join([_what(kind, port), *_marks(kind, port)])


def cable_marks(kind: ScaleKind, port: PortIdentity) -> str:
    """Only what tells this cable from others; what it is, where there is nothing to tell it by."""
    return ", ".join(_marks(kind, port)) or _what(kind, port)


def _what(kind: ScaleKind, port: PortIdentity) -> str:
    if kind is ScaleKind.HID:
        return say("balances.hid")
    return say("balances.built_in" if port.vid is None else "balances.usb")


def _marks(kind: ScaleKind, port: PortIdentity) -> list[str]:
    marks = []
    if port.description not in (*_UNKNOWN, port.where.rpartition("/")[2]):
        marks.append(port.description)
    if port.serial_number:
        marks.append(say("balances.serial_number", number=port.serial_number))
    if kind is ScaleKind.SERIAL and port.location:
        marks.append(say("balances.socket", socket=port.location))
    return marks
