"""``--scale auto`` on the command line: the only scale that is heard without being asked."""

from __future__ import annotations

from drivers.discovery import list_hid_scales, list_ports
from drivers.errors import PortUnavailable
from kiosk.commands.console import BadInputError
from kiosk.texts import say
from kiosk.ui.presenters.scale_facts import ScaleKind
from kiosk.ui.presenters.scale_words import description

AUTO = "auto"


def the_only_scale() -> str:
    """Its address. BadInputError, with what there is, where a person has to choose.

    A HID scale sends by itself; a serial port may need to be asked, and nothing is written to a
    port that nobody chose.
    """
    ports = [(ScaleKind.SERIAL, port) for port in list_ports()]
    try:
        scales = [(ScaleKind.HID, scale) for scale in list_hid_scales()]
    except PortUnavailable:
        scales = []
    if len(scales) == 1:
        return scales[0][1].where
    found = [*scales, *ports]
    if not found:
        raise BadInputError(say("balances.none"))
    listed = "; ".join(
        say("balances.line", where=port.where, description=description(kind, port))
        for kind, port in found
    )
    raise BadInputError(say("balances.choose", found=listed))
