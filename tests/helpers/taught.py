"""A balance of some style at a real port, a Teaching that listens to it, and a hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any

from drivers.line_shape import LineShape
from drivers.simulated.line_device import LineDevice
from drivers.simulated.port import SimulatedPort
from drivers.simulated.profile import Profile
from drivers.simulated.weighing_pan import WeighingPan
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui.teaching import Teaching
from tests.helpers.line_styles import Kind

TURN_S = 0.1


@dataclass
class Keeper:
    """Keeps shapes in memory; ``error`` is raised in place of keeping."""

    shapes: dict[str, LineShape] = field(default_factory=dict)
    error: OSError | None = None

    def names(self) -> list[str]:
        return list(self.shapes)

    def keep(self, shape: LineShape) -> None:
        if self.error is not None:
            raise self.error
        self.shapes[shape.name] = shape


class LinePan:
    """A balance of a kind behind a pseudo-terminal, on a clock that a test moves."""

    def __init__(self, chosen: Kind, clock: Callable[[], float]) -> None:
        knobs = {"readability": Decimal("0.01")} | chosen.knobs
        self.clock = clock
        self.pan = WeighingPan(Profile(seed=5, **knobs), clock())
        self.device = LineDevice(self.pan, chosen.style)
        self.device.indicator.unit = chosen.unit
        self.port = SimulatedPort(self.device, clock)

    def put(self, grams: float) -> None:
        self.pan.load(grams, self.clock())


class Taught:
    """Steps balance and Teaching together; nothing runs by itself."""

    def __init__(self, chosen: Kind, keeper: Keeper | None = None, **more: Any) -> None:
        self.now = 100.0
        self.keeper = keeper or Keeper()
        self.balance = LinePan(chosen, lambda: self.now)
        self._waiting: list[Callable[[], None]] = []
        self.teaching = Teaching(
            where=self.balance.port.address,
            keeper=self.keeper,
            clock=lambda: self.now,
            changed=lambda: None,
            later=self._waiting.append,
            stepped=True,
            **more,
        )
        self.teaching.start()

    def step(self) -> None:
        self.now += TURN_S
        self.balance.port.pump()
        self.teaching.pump()
        while self._waiting:
            self._waiting.pop(0)()
        self.teaching.tick()

    def wait(self, seconds: float) -> None:
        for _ in range(round(seconds / TURN_S)):
            self.step()

    def put(self, grams: float, seconds: float = 4.0) -> None:
        self.balance.put(grams)
        self.wait(seconds)

    def load(self, grams: float = 52.18) -> None:
        """Put something on, wait, take it off."""
        self.put(grams)
        self.put(0.0)

    def press(self, person: Person) -> None:
        self.teaching.press(PersonEvent(person))

    @property
    def title(self) -> str:
        return self.teaching.view().title.replace("\u00a0", " ")

    def close(self) -> None:
        self.teaching.close()
        self.balance.port.close()
