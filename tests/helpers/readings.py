"""Streams of readings written by hand, ten a second, fed to a pan watch."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

from drivers.reading import Basis, Range, Reading
from kiosk.evidence import Source
from kiosk.weighing.pan_events import PanEvent
from kiosk.weighing.pan_watch import PanWatch
from tests.helpers.loads import reading

EVERY_S = 0.1


class Stream:
    """A pan watch and a balance that shows what a test says."""

    def __init__(self, readability: str | None = "0.1") -> None:
        step = None if readability is None else Decimal(readability)
        self.watch = PanWatch(step, Source.SIMULATED)
        self.now = 100.0

    def shows(self, shown: str, seconds: float = 2.0, **changes: Any) -> list[PanEvent]:
        """The same number for so many seconds; changes are fields of the reading."""
        return [
            event
            for _ in range(round(seconds / EVERY_S))
            for event in self.one(replace(reading(Decimal(shown), 0.0), **changes))
        ]

    def rises(self, start: str, end: str, seconds: float) -> list[PanEvent]:
        """From one number to another at an even pace."""
        low, high, turns = Decimal(start), Decimal(end), round(seconds / EVERY_S)
        path = [low + (high - low) * turn / turns for turn in range(1, turns + 1)]
        return [
            event
            for mass in path
            for event in self.one(reading(mass.quantize(Decimal("0.1")), 0.0))
        ]

    def one(self, what: Reading) -> list[PanEvent]:
        """One reading, a tenth of a second after the last."""
        self.now += EVERY_S
        return [*self.watch.tick(self.now), *self.watch.reading(replace(what, at=self.now))]

    def waits(self, seconds: float) -> list[PanEvent]:
        """Nothing comes."""
        events = []
        for _ in range(round(seconds / EVERY_S)):
            self.now += EVERY_S
            events += self.watch.tick(self.now)
        return events

    def without_mass(self, seconds: float, where: Range = Range.UNUSABLE) -> list[PanEvent]:
        """Frames that carry no usable mass."""
        return self.shows(
            "0.0", seconds, value=None, grams=None, range=where, reason="no number", basis=None
        )

    def net(self, grams: str, seconds: float = 2.0) -> list[PanEvent]:
        """Net readings, as after the balance's own tare key."""
        return self.shows(grams, seconds, basis=Basis.NET)
