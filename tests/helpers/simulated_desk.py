"""A simulated balance on a clock that only moves when a test moves it, without a port."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from drivers.simulated.profile import Profile
from drivers.simulated.sma_device import SmaDevice
from drivers.simulated.weighing_pan import WeighingPan


class ManualClock:
    """Seconds that pass on demand; called like ``time.monotonic``."""

    def __init__(self, now: float = 1000.0) -> None:
        self.now = now

    def __call__(self) -> float:
        return self.now

    def wait(self, seconds: float) -> None:
        self.now += seconds


def quiet_profile(readability: str = "0.1", capacity: str = "2000", **knobs: Any) -> Profile:
    """A balance without noise, so that its digits are known."""
    return Profile(
        readability=Decimal(readability), capacity=Decimal(capacity), **{"noise": 0.0, **knobs}
    )


class SimulatedDesk:
    """One pan, one SMA balance, one host that asks it."""

    def __init__(self, profile: Profile | None = None, level: int = 2) -> None:
        self.clock = ManualClock()
        self.pan = WeighingPan(profile or quiet_profile(), self.clock.now)
        self.device = SmaDevice(self.pan, level)

    def ask(self, request: bytes) -> bytes:
        """Send LF, ``request``, CR; returns the answer."""
        return self.device.receive(b"\n" + request + b"\r", self.clock.now)

    def wait(self, seconds: float) -> bytes:
        """Let time pass; returns what the balance sent by itself."""
        self.clock.wait(seconds)
        return self.device.due(self.clock.now)

    def load(self, grams: float, seconds: float = 3.0) -> None:
        """Put so much on the pan in all and wait until it rests."""
        self.pan.load(grams, self.clock.now)
        self.wait(seconds)
