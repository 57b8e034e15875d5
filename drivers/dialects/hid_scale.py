"""USB scales that are HID devices of the Scales page (HID Usage Tables 1.7, section 33).

Such a scale sends its reports by itself, each packet being one whole report; nothing is ever sent
to it. Zero by command works on few of them, and each of these wants another report: the person is
asked to press the key. Reports of zeros are what some systems hand over when there is nothing:
they are no reading.
"""

from __future__ import annotations

from drivers.dialects.hid_descriptor import layout_of
from drivers.dialects.hid_layout import STANDARD, Layout
from drivers.dialects.hid_scale_weight import reading_of
from drivers.events import BalanceEvent, CommandRefused, LineUnreadable, ReadingReceived
from drivers.packet import Packet


class HidScale:
    """A dialect (see drivers.dialects) that only listens."""

    name = "hid-scale"

    def __init__(self, balance_name: str) -> None:
        self._balance = balance_name
        self._layout = STANDARD
        self._zero_wanted = False

    def described(self, descriptor: bytes) -> None:
        """The report descriptor of the device just opened; empty if it cannot be read.

        It holds until the next one. A descriptor without a report for the mass counts for nothing:
        the scale is taken to send the standard one.
        """
        self._layout = layout_of(descriptor) or STANDARD

    def reset(self, now: float) -> None:
        """Begin anew at ``now``."""
        self._zero_wanted = False

    def zero(self) -> None:
        """Ask for zero; CommandRefused will tell whose hand it takes."""
        self._zero_wanted = True

    def due(self, now: float) -> bytes:
        """Nothing, at any time."""
        return b""

    def feed(self, packet: Packet) -> list[BalanceEvent]:
        """What one report tells."""
        events: list[BalanceEvent] = []
        if self._zero_wanted:
            self._zero_wanted = False
            reason = "this balance takes zero from its own key only: press it"
            events.append(CommandRefused(command="zero", reason=reason, at=packet.at))
        return events + self._heard(packet)

    def _heard(self, packet: Packet) -> list[BalanceEvent]:
        raw, layout = packet.data, self._layout
        if not any(raw):
            return []
        if layout.report_id and raw[0] != layout.report_id:
            known = not raw[0] or raw[0] in layout.others
            return [] if known else [LineUnreadable(raw=raw, at=packet.at)]
        if not _whole(raw, layout):
            return [LineUnreadable(raw=raw, at=packet.at)]
        reading = reading_of(raw, layout, at=packet.at, balance=self._balance)
        return [] if reading is None else [ReadingReceived(reading=reading)]


def _whole(report: bytes, layout: Layout) -> bool:
    """Whether all of the report is there, and nothing but what may follow it.

    Windows hands over every report as long as the longest one (libusb/hidapi, issues 210 and 230).
    """
    if len(report) == layout.size:
        return True
    return len(report) == layout.longest > layout.size and not any(report[layout.size :])
