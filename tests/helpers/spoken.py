"""Balances that speak otherwise than by request, for whole journeys."""

from __future__ import annotations

from drivers.line_shape import LineShape
from drivers.simulated.indicator import Shown, State
from drivers.simulated.line_style import LineStyle
from tests.helpers.fake_hid import STALE, FakeHid, FakeScale
from tests.helpers.hid_reports import BELOW_ZERO, GRAM, MOVING, STABLE, TOO_MUCH, report
from tests.helpers.journey import Journey

MARKED = LineStyle(layout="{mark},{sign}{number} {unit}", width=8)
MOVING_ONLY = LineStyle(layout="{signed} {unit}{mark}", still="", moving=" M", plus="", width=9)
UNMARKED = LineStyle(layout="{signed} {unit}", plus="", width=9)
STYLES = {"mark at rest": MARKED, "mark while moving": MOVING_ONLY, "no mark": UNMARKED}


def hid_report(shown: Shown) -> bytes:
    """What a scale of steps of 0.1 g would send of its display."""
    if shown.state is State.OVER:
        return report(TOO_MUCH, GRAM, -1, 0)
    if shown.value < 0:
        return report(BELOW_ZERO, GRAM, -1, int(abs(shown.value) * 10))
    status = MOVING if shown.moving else STABLE
    return report(status, GRAM, -1, int(shown.value * 10))


class HidJourney(Journey):
    """A kiosk on a HID scale that shows what the simulated pan carries, or `instead` of it."""

    scale: FakeScale | None = None
    instead: bytes | None = None

    def speak_through(self, module: FakeHid, scale: FakeScale) -> None:
        """Send the reports of that scale from now on."""
        self.module, self.scale = module, scale
        scale.sends(STALE)

    def step(self) -> None:
        if self.scale is not None and len(self.scale.reports) < 2:
            shown = self.table.device.indicator.shown()
            self.scale.sends(self.instead or hid_report(shown))
        super().step()


class OneShape:
    """A shape that was learned, under its name."""

    def __init__(self, shape: LineShape) -> None:
        self._shape = shape

    def names(self) -> tuple[str, ...]:
        return (self._shape.name,)

    def shape(self, name: str) -> LineShape | None:
        return self._shape if name == self._shape.name else None
