"""What lies on the tray under the next sample, as far as anybody can know from the readings.

Samples may be put one by one into an emptied tray or be added to those that lie there; nobody is
asked which. What matters is the reading that the next sample is taken off: that of the empty tray,
or that of the tray with the pieces that were kept.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum

from kiosk.evidence import Weighing


class Found(Enum):
    """What a mass at rest is, compared with what is known to lie there."""

    EMPTY_TRAY = "empty tray"
    LIGHTER = "lighter than the tray"
    AS_KEPT = "what was kept"
    LESS = "less than was kept"
    SAMPLE = "a sample"


@dataclass(slots=True)
class TrayMemory:
    """`under` is the reading of the tray with kept pieces, None: the empty tray, or unknown.

    `last` is the gross mass of the sample that was kept last: a tray that comes back as heavy may
    hold the same pieces, unless it was seen `emptied` since.
    """

    under: Weighing | None = None
    last: Weighing | None = None
    emptied: bool = False

    def keep(self, gross: Weighing) -> None:
        """A sample was kept, and its pieces lie there."""
        self.under = self.last = gross
        self.emptied = False

    def lifted(self) -> None:
        """Nobody knows any longer what is on the tray."""
        self.under = None

    def find(self, grams: Decimal, tray: Decimal, near: Decimal) -> Found:
        """What so many grams are; masses within ``near`` of one another are taken for the same."""
        off = grams - tray
        if off < -near:
            self.under = None
            return Found.LIGHTER
        if off <= near:
            self.under, self.emptied = None, True
            return Found.EMPTY_TRAY
        if self.under is not None:
            return self._over(grams - self.under.grams, near)
        if self.last is not None and not self.emptied and abs(grams - self.last.grams) <= near:
            return Found.AS_KEPT
        return Found.SAMPLE

    def _over(self, off: Decimal, near: Decimal) -> Found:
        if off < -near:
            self.under = None
            return Found.LESS
        return Found.AS_KEPT if off <= near else Found.SAMPLE
