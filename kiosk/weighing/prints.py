"""Weighing on a balance that sends a line only when its key is pressed.

Such a balance is known by its silence: one or two lines at a time, nothing between. A single line
proves no rest, whatever it says of itself, so a load counts once the same number was printed
twice. An empty pan is seen with one print: what is then captured still has to be printed twice.
"""

from __future__ import annotations

from decimal import Decimal

from drivers.reading import Reading
from kiosk.weighing.settling import Move, Rest

ALONE_S = 1.5  # a balance that sends by itself does so more often
MOST_AT_A_TIME = 2
ENOUGH_LINES = 2  # alone, before the balance is known to wait for its key
APART_S = 0.5  # nearer, it may be one line that was sent twice
TOGETHER_S = 60.0  # later, it may be another load


class Prints:
    """The lines of one balance; `keyed` once it is known to send at its key only."""

    def __init__(self) -> None:
        self.keyed = False
        self.rest: Rest | None = None
        self.once: Reading | None = None  # printed once so far
        self._streams = False
        self._last: float | None = None
        self._burst = 0  # lines close together so far, and how many of them a hand can have made
        self._pressed = 0
        self._alone = 0

    def heard(self, at: float) -> None:
        """A frame came."""
        gap = ALONE_S if self._last is None else at - self._last
        if gap >= ALONE_S:
            self._end_burst()
        self._last = at
        self._burst += 1
        self._pressed += gap >= APART_S
        if self._burst > MOST_AT_A_TIME:
            self._streams, self.keyed = True, False

    def tick(self, now: float) -> bool:
        """Let time pass; True when the balance has just become known to wait for its key."""
        if self._last is None or now - self._last < ALONE_S:
            return False
        self._end_burst()
        known, self.keyed = self.keyed, not self._streams and self._alone >= ENOUGH_LINES
        return self.keyed and not known

    def opened(self) -> None:
        """The port was opened: the balance may have been told to send in another way."""
        self._streams, self._burst, self._pressed, self._alone = False, 0, 0, 0
        self._last = None
        self.start_again()

    def start_again(self) -> None:
        """What was printed so far stands for nothing."""
        self.once, self.rest = None, None

    def judge(
        self, reading: Reading, step: Decimal, band: Decimal
    ) -> tuple[Rest | None, Move | None]:
        """Take a printed mass; as `Settling.feed`. `band` is the half width of zero in grams."""
        assert reading.grams is not None
        move = self._moved(reading.grams, step)
        if self.rest is not None:
            return None, None
        if reading.stable is False:
            self.once = None
        elif abs(reading.grams) <= band or self._same(reading, step):
            self.once = None
            self.rest = Rest(reading=reading, scatter=0.0, size=MOST_AT_A_TIME)
            return self.rest, move
        elif not self._sent_twice(reading):
            self.once = reading
        return None, move

    def _moved(self, grams: Decimal, step: Decimal) -> Move | None:
        if self.rest is None or abs(grams - self.rest.grams) <= step:
            return None
        up = grams > self.rest.grams
        self.rest = None
        return Move.UP if up else Move.OTHERWISE

    def _same(self, reading: Reading, step: Decimal) -> bool:
        once = self.once
        if once is None or once.grams is None or reading.grams is None:
            return False
        apart = reading.at - once.at
        alike = once.unit == reading.unit and abs(reading.grams - once.grams) <= step
        return alike and APART_S <= apart <= TOGETHER_S

    def _sent_twice(self, reading: Reading) -> bool:
        once = self.once
        return once is not None and once.value == reading.value and reading.at - once.at < APART_S

    def _end_burst(self) -> None:
        if not self._streams:
            self._alone += self._pressed
        self._burst = self._pressed = 0
