"""A session on a simulated balance behind a real port: recorded, and watched as it happens."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import Protocol

from drivers.events import Back, BalanceEvent, Identified, LineUnreadable, Lost, ReadingReceived
from drivers.recorder import Recorder, open_recorded
from drivers.simulated.line_device import LineDevice
from drivers.simulated.port import SimulatedPort
from drivers.simulated.profile import Profile
from drivers.simulated.sma_device import SmaDevice
from drivers.simulated.weighing_pan import WeighingPan
from kiosk.evidence import Source
from kiosk.weighing.pan_events import PanEvent
from kiosk.weighing.pan_watch import PanWatch
from tests.helpers.line_styles import KINDS

TURN_S = 0.05
TICK_TURNS = 2


class Device(Protocol):
    """What both simulated balances can do."""

    def receive(self, data: bytes, now: float) -> bytes: ...
    def due(self, now: float) -> bytes: ...
    def fall_silent(self) -> None: ...
    def speak_again(self) -> None: ...


DEVICES: dict[str, Callable[[WeighingPan], Device]] = {
    "sma": SmaDevice,
    "lines": lambda pan: LineDevice(pan, KINDS["header, zeros"].style),
}


class Session:
    """A balance that speaks ``dialect``; ``happened`` is what its pan watch told."""

    def __init__(self, dialect: str, file: Path) -> None:
        self.now = 1000.0
        self.happened: list[PanEvent] = []
        self.pan = WeighingPan(Profile(seed=11), self.now)
        self.device = DEVICES[dialect](self.pan)
        self.port = SimulatedPort(self.device, clock=lambda: self.now)
        self._dialect = dialect
        self._recorder = Recorder(file, ended=self._ended, clock=lambda: self.now)
        self._watch = PanWatch(readability=None, source=Source.SIMULATED)

    def play(self, seconds: float, script: dict[float, Callable[[Session], object]]) -> None:
        """Let time pass and do what the script says at its moments; close everything."""
        begun, waiting = self.now, dict(sorted(script.items()))
        balance = open_recorded(
            self._recorder,
            self.port.address,
            synthetic=True,
            publish=self._heard,
            dialect=self._dialect,
            clock=lambda: self.now,
            wait=lambda _: None,
            patience=0.0,
        )
        with closing(self.port), closing(self._recorder), closing(balance):
            for turn in range(round(seconds / TURN_S)):
                for at in [at for at in waiting if at <= self.now - begun]:
                    waiting.pop(at)(self)
                for pump in (balance.pump, self.port.pump, balance.pump):
                    pump()
                if turn % TICK_TURNS == 0:
                    self.happened += self._watch.tick(self.now)
                self.now = round(self.now + TURN_S, 6)

    def put(self, grams: float) -> None:
        """Bring the load to so many grams."""
        self.pan.load(grams, self.now)

    def _heard(self, event: BalanceEvent) -> None:
        match event:
            case ReadingReceived(reading=reading):
                self.happened += self._watch.reading(reading)
            case LineUnreadable(at=at):
                self.happened += self._watch.garbage(at)
            case Identified(readability=readability, capacity=capacity):
                self._watch.identified(readability, capacity)
            case Lost(at=at):
                self.happened += self._watch.lost(at)
            case Back(at=at):
                self.happened += self._watch.back(at)

    def _ended(self, why: str) -> None:
        raise AssertionError(f"the recording ended: {why}")


def put(grams: float) -> Callable[[Session], object]:
    """For a script: bring the load to so many grams."""
    return lambda session: session.put(grams)
