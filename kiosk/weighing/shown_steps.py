"""The step of a balance, from the digits that it shows."""

from __future__ import annotations

from decimal import Decimal
from math import gcd

from drivers.reading import Reading
from drivers.units import GRAMS_PER

ENOUGH_VALUES = 12  # different ones, before a step of more than one digit is believed
STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)


class ShownSteps:
    """Learns from readings; ``grams`` is the step in grams, None before the first one.

    The last digit sent is the finest that a step can be. Balances that count by 2 or 5, or send
    zeros beyond what they can weigh, give themselves away once the load has moved a little.
    """

    def __init__(self) -> None:
        self.grams: Decimal | None = None
        self._format: tuple[str, int] | None = None
        self._values: set[int] = set()
        self._common = 0

    def learn(self, reading: Reading) -> None:
        """Take in what a reading with a mass shows."""
        if reading.value is None or reading.unit is None or reading.unit not in GRAMS_PER:
            return
        exponent = int(reading.value.as_tuple().exponent)
        if (reading.unit, exponent) != self._format:
            self._format = (reading.unit, exponent)
            self._values.clear()
            self._common = 0
        shown = abs(int(reading.value.scaleb(-exponent)))
        self._common = gcd(self._common, shown)
        if len(self._values) < ENOUGH_VALUES:
            self._values.add(shown)
        self.grams = Decimal(self._digits()).scaleb(exponent) * GRAMS_PER[reading.unit]

    def _digits(self) -> int:
        """The largest step that all values are multiples of, 1 until there are enough of them."""
        if len(self._values) < ENOUGH_VALUES:
            return 1
        return max(step for step in STEPS if self._common % step == 0)
