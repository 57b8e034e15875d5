"""What kind of balance is simulated: every knob, in one frozen value."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum


class MotionFlag(StrEnum):
    """How the balance's own word on motion behaves."""

    HONEST = "honest"  # moving while a hand is at work or rest is over half a division away
    EARLY = "early"  # stable as soon as the mass is within twenty divisions, whatever a hand does
    ALWAYS_STABLE = "always stable"
    FLICKER = "flicker"  # honest, but wrong now and then in both directions
    NEVER = "never"  # stable never comes


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """The traits of one balance; masses in grams, ``noise`` and ``air`` in divisions.

    ``noise`` is the standard deviation of one reading, ``air`` that of slow draughts. The pan
    swings at ``ring_hz`` with ``damping`` as a share of critical; ``filter_seconds`` is the time
    constant of the low-pass filter behind it. ``span_error`` is the share by which every load is
    shown too heavy, ``corner_error`` that by which it is at the left edge of the pan, and too
    light at the right one. The default is a plain classroom balance, at rest
    about a second after the hand has gone. Raises ValueError when a value makes no sense.
    """

    readability: Decimal = Decimal("0.1")
    capacity: Decimal = Decimal(2000)
    noise: float = 0.15
    air: float = 0.0
    ring_hz: float = 6.0
    damping: float = 0.3
    filter_seconds: float = 0.12
    drift_g_per_minute: float = 0.0
    span_error: float = 0.0
    corner_error: float = 0.0
    readings_per_second: float = 10.0
    motion_flag: MotionFlag = MotionFlag.HONEST
    seed: int = 1

    def __post_init__(self) -> None:
        digits = self.readability.normalize().as_tuple().digits if self.readability > 0 else ()
        if digits not in ((1,), (2,), (5,)):
            raise ValueError("A balance's readability is 1, 2 or 5 of a decimal place.")
        if self.capacity < 100 * self.readability:
            raise ValueError("A balance's capacity is at least a hundred divisions.")
        if min(self.ring_hz, self.damping, self.readings_per_second) <= 0:
            raise ValueError("Ring frequency, damping and readings a second must be above zero.")
        if max(abs(self.span_error), abs(self.corner_error)) >= 1:
            raise ValueError("A balance is off by a share of the load, not by all of it.")
        if min(self.noise, self.air, self.filter_seconds) < 0:
            raise ValueError("Noise, air and filter time cannot be negative.")

    @property
    def division(self) -> float:
        """One step of the display, in grams."""
        return float(self.readability)
