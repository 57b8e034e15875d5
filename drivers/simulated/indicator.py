"""The electronics behind a pan: zero, tare, units, rounding, limits and the word on motion."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum, auto

import numpy as np

from drivers.simulated.profile import MotionFlag
from drivers.simulated.units import GRAMS_PER_UNIT, count_by, rounded
from drivers.simulated.weighing_pan import Sample, WeighingPan

ZERO_RANGE = 0.04
"""Share of the capacity within which zero can be set by key or command (OIML R 76, from memory,
not verified); at switch-on it is INITIAL_ZERO_RANGE."""
INITIAL_ZERO_RANGE = 0.20
_OVER_DIVISIONS = 9
_EARLY_DIVISIONS = 20
_FLICKER_AT_REST = 0.4
_FLICKER_MOVING = 0.2


class State(Enum):
    """Where the load lies, as the balance sees it."""

    IN_RANGE = auto()
    CENTRE_OF_ZERO = auto()  # gross within a quarter of a division
    UNDER = auto()  # gross below zero
    OVER = auto()  # gross over the capacity by more than nine divisions
    NOT_ZEROED = auto()  # switched on under a load too large to set to zero


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the display shows: digits in ``unit``, net or gross, and the balance's own flags."""

    value: Decimal
    unit: str
    net: bool
    moving: bool
    state: State


class Indicator:
    """What a person reads and presses; the pan under it goes on when this is switched off.

    Times are seconds of the pan's clock. Zero and tare answer whether they were done.
    """

    def __init__(self, pan: WeighingPan) -> None:
        self.profile = pan.profile
        self.unit = "g"
        self.tare = 0.0
        self._pan = pan
        self._flicker = np.random.default_rng([pan.profile.seed, 1])
        self._moving = self._judge_motion(pan.sample)
        self.switch_on()

    def advance(self, now: float) -> Iterator[None]:
        """Let time pass; yields once for each new reading, while the display shows it."""
        for sample in self._pan.advance(now):
            self._sample = sample
            self._moving = self._judge_motion(sample)
            yield

    def switch_on(self) -> None:
        """Start afresh, setting to zero whatever lies on the pan, if it is not too much."""
        self._sample = self._pan.sample
        self.unit = "g"
        self.tare = 0.0
        self._zeroed = abs(self._sample.quiet) <= INITIAL_ZERO_RANGE * float(self.profile.capacity)
        self._zero = self._first_zero = self._sample.quiet if self._zeroed else 0.0

    @property
    def moving(self) -> bool:
        """The balance's own word, as its profile has it."""
        return self._moving

    @property
    def at(self) -> float:
        """When the display was last refreshed."""
        return self._sample.at

    def shown(self, *, fine: bool = False) -> Shown:
        """The display now; ``fine`` with one more digit."""
        gross = self._sample.grams - self._zero
        step = self._step(fine=fine)
        return Shown(
            value=rounded(gross - self.tare, self.unit, step),
            unit=self.unit,
            net=self.tare > 0,
            moving=self._moving,
            state=self._state(gross, rounded(gross, self.unit, step)),
        )

    def shown_tare(self) -> Decimal:
        """The stored tare in the present unit."""
        return rounded(self.tare, self.unit, self._step())

    def set_zero(self) -> bool:
        """Zero what lies there; refused in motion or too far from the zero of switch-on.

        Zeroing clears the tare.
        """
        share = ZERO_RANGE if self._zeroed else INITIAL_ZERO_RANGE
        offset = self._sample.quiet - self._first_zero
        if self._moving or abs(offset) > share * float(self.profile.capacity):
            return False
        if not self._zeroed:
            self._zeroed, self._first_zero = True, self._sample.quiet
        self._zero = self._sample.quiet
        self.tare = 0.0
        return True

    def set_tare(self) -> bool:
        """The tare key: refused in motion, below zero, over; on an empty pan it clears the tare."""
        gross = self._sample.quiet - self._zero
        state = self._state(gross, rounded(gross, self.unit, self._step()))
        if self._moving or state in (State.UNDER, State.OVER, State.NOT_ZEROED):
            return False
        self.tare = gross if rounded(gross, "g", self.profile.readability) > 0 else 0.0
        return True

    def preset_tare(self, value: Decimal) -> bool:
        """Tare by a number in the present unit; refused below zero or over the capacity."""
        grams = value * GRAMS_PER_UNIT[self.unit]
        if not 0 <= grams <= self.profile.capacity:
            return False
        self.tare = float(rounded(float(grams), "g", self.profile.readability))
        return True

    def clear_tare(self) -> None:
        """Show the gross mass again."""
        self.tare = 0.0

    def next_unit(self) -> None:
        """The unit key."""
        units = list(GRAMS_PER_UNIT)
        self.unit = units[(units.index(self.unit) + 1) % len(units)]

    def _step(self, *, fine: bool = False) -> Decimal:
        step = count_by(self.unit, self.profile.readability)
        return step.scaleb(-1) if fine else step

    def _state(self, gross: float, shown: Decimal) -> State:
        division = self.profile.division
        if not self._zeroed:
            return State.NOT_ZEROED
        if gross > float(self.profile.capacity) + _OVER_DIVISIONS * division:
            return State.OVER
        if abs(gross) <= division / 4:
            return State.CENTRE_OF_ZERO
        return State.UNDER if shown < 0 else State.IN_RANGE

    def _judge_motion(self, sample: Sample) -> bool:
        judge: Callable[[Sample], bool] = {
            MotionFlag.HONEST: self._honest,
            MotionFlag.EARLY: self._early,
            MotionFlag.ALWAYS_STABLE: lambda _: False,
            MotionFlag.FLICKER: self._flickering,
            MotionFlag.NEVER: lambda _: True,
        }[self.profile.motion_flag]
        return judge(sample)

    def _honest(self, sample: Sample) -> bool:
        return sample.touched or sample.off_rest > self.profile.division / 2

    def _early(self, sample: Sample) -> bool:
        return sample.off_rest > _EARLY_DIVISIONS * self.profile.division

    def _flickering(self, sample: Sample) -> bool:
        moving = self._honest(sample)
        wrong = _FLICKER_MOVING if moving else _FLICKER_AT_REST
        return moving != (self._flicker.random() < wrong)
