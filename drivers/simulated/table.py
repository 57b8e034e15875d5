"""The whole practice table: pan, balance, port, and the bench with its things."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from dataclasses import replace
from types import TracebackType
from typing import Self

from drivers.simulated.bench import Bench
from drivers.simulated.line_device import LineDevice
from drivers.simulated.line_style import LineStyle
from drivers.simulated.port import PortKind, SimulatedPort
from drivers.simulated.profile import Profile
from drivers.simulated.sma_device import SmaDevice
from drivers.simulated.weighing_pan import WeighingPan


class SimulatedTable:
    """Open ``address`` like any balance. The methods here may be called from any thread."""

    def __init__(
        self,
        pan: WeighingPan,
        device: SmaDevice | LineDevice,
        port: SimulatedPort,
        bench: Bench,
        clock: Callable[[], float],
        lock: threading.RLock,
    ) -> None:
        self.pan = pan
        self.device = device
        self.port = port
        self.bench = bench
        self._clock = clock
        self._lock = lock

    @property
    def address(self) -> str:
        """Where the balance is found; stays the same over unplugging."""
        return self.port.address

    def start(self) -> None:
        """Let the balance run in a thread of its own."""
        self.port.start()

    def pump(self) -> None:
        """One turn in lock step instead of ``start``, for tests."""
        self.port.pump()

    def close(self) -> None:
        """Stop the thread and take the port away for good."""
        self.port.close()

    def press_zero(self) -> bool:
        """The balance's zero key; False when it was refused."""
        with self._lock:
            return self.device.press_zero(self._clock())

    def press_tare(self) -> bool:
        """The balance's tare key; False when it was refused."""
        with self._lock:
            return self.device.press_tare(self._clock())

    def press_unit(self) -> None:
        """The balance's unit key."""
        with self._lock:
            self.device.press_unit(self._clock())

    def press_print(self) -> None:
        """The print key of a balance that sends lines."""
        with self._lock:
            assert isinstance(self.device, LineDevice)
            self.device.press_print(self._clock())

    def fall_silent(self) -> None:
        """The balance hears and says nothing, with the port open."""
        with self._lock:
            self.device.fall_silent()

    def speak_again(self) -> None:
        """The balance answers again."""
        with self._lock:
            self.device.speak_again()

    def switch_off(self) -> None:
        """The balance goes off; the port stays."""
        with self._lock:
            self.device.switch_off(self._clock())

    def switch_on(self) -> None:
        """The balance comes back, having set itself to zero with what lies on the pan."""
        with self._lock:
            self.device.switch_on(self._clock())

    def unplug(self) -> None:
        """Pull the cable."""
        self.port.unplug()

    def plug(self) -> None:
        """Put the cable back."""
        self.port.plug()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()


def simulated_table(
    clock: Callable[[], float] = time.monotonic,
    profile: Profile | None = None,
    seed: int | None = None,
    level: int = 2,
    kind: PortKind | None = None,
    style: LineStyle | None = None,
    *,
    at_key: bool = False,
) -> SimulatedTable:
    """A table with an empty pan; ``seed`` replaces the profile's and rules bench and balance.

    The balance is asked as by SMA SCP-0499; with a ``style`` it sends lines, ``at_key`` only when
    its print key is pressed.
    """
    profile = profile if profile is not None else Profile()
    if seed is not None:
        profile = replace(profile, seed=seed)
    lock = threading.RLock()
    pan = WeighingPan(profile, clock())
    device = SmaDevice(pan, level) if style is None else LineDevice(pan, style, at_key=at_key)
    bench = Bench(pan, clock, profile.seed, lock)
    port = SimulatedPort(device, clock, kind, lock)
    return SimulatedTable(pan, device, port, bench, clock, lock)
