"""When a load rests, on a balance that sends by itself and on one that prints at its key."""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

from drivers.reading import Reading
from kiosk.weighing.pan_state import Press
from kiosk.weighing.prints import Prints
from kiosk.weighing.settling import Move, Rest, Settling
from kiosk.weighing.shown_steps import ShownSteps

ZERO_DIVISIONS = 3
LEAST_ZERO_G = Decimal("0.02")
NOISES = 4.5  # beyond the zero band before something is said to lie there


class Judged(NamedTuple):
    """The rest that begins, how one ended; half width of zero and what noise adds, in grams."""

    begun: Rest | None
    move: Move | None
    band: Decimal
    noise: Decimal


class Judgement:
    """`told` is the readability in grams, None if only the readings can tell it."""

    def __init__(self, told: Decimal | None) -> None:
        self.step = told
        self.unit: str | None = None
        self.prints = Prints()
        self._told = told
        self._steps = ShownSteps()
        self._settling: Settling | None = None

    def identified(self, readability: Decimal) -> None:
        """The balance says how fine it is."""
        self._told = readability
        self._settle_step()

    def take(self, reading: Reading) -> Judged:
        """Take a reading with a mass in."""
        self._note_unit(reading)
        assert self._settling is not None
        assert self.step is not None
        band = max(ZERO_DIVISIONS * self.step, LEAST_ZERO_G)
        if self.prints.keyed:
            begun, move = self.prints.judge(reading, self.step, band)
            return Judged(begun, move, band, Decimal(0))
        begun, move = self._settling.feed(reading)
        return Judged(begun, move, band, Decimal(NOISES * self._settling.noise) * self.step)

    def start_again(self, at: float) -> None:
        """Judge the present load anew, from readings after ``at`` only."""
        self.prints.start_again()
        if self._settling is not None:
            self._settling.start_again(at)

    @property
    def rest(self) -> Rest | None:
        """The present rest, None while the load moves."""
        if self.prints.keyed:
            return self.prints.rest
        return None if self._settling is None else self._settling.rest

    def progress(self, now: float) -> float:
        """How near it is to a rest, 0 to 1."""
        if self.prints.keyed:
            return 1.0 if self.rest is not None else 0.5 if self.prints.once is not None else 0.0
        return 0.0 if self._settling is None else self._settling.progress(now)

    def restless_for(self, now: float) -> float:
        """Seconds without a rest; none where a person decides when there is a reading."""
        if self.prints.keyed or self._settling is None:
            return 0.0
        return self._settling.restless_for(now)

    def creeping(self, now: float) -> bool:
        """Whether the reading goes one way without end."""
        return not self.prints.keyed and self._settling is not None and self._settling.creeping(now)

    def press(self, *, loaded: bool) -> Press:
        """What is to be printed next."""
        if not self.prints.keyed:
            return Press.NOTHING
        if self.prints.once is not None:
            return Press.ONCE_MORE
        return Press.EMPTY if loaded and self.rest is not None else Press.LOAD

    def _note_unit(self, reading: Reading) -> None:
        """What another unit's digits round to is another number: nothing rests across the two."""
        self._steps.learn(reading)
        self._settle_step()
        if self.unit not in (None, reading.unit) and self.rest is None:
            self.start_again(reading.at)
        self.unit = reading.unit

    def _settle_step(self) -> None:
        """The step is what the balance says, unless its display goes by larger ones."""
        told = None if self._told is None else self._steps.no_finer_than(self._told)
        known = [step for step in (told, self._steps.grams) if step is not None]
        if not known:
            return
        self.step = max(known)
        if self._settling is None:
            self._settling = Settling(self.step)
        self._settling.set_step(self.step)
