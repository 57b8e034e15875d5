"""The step of a balance, from the digits that it shows."""

from __future__ import annotations

from decimal import Decimal
from math import gcd

from drivers.reading import Reading
from drivers.units import GRAMS_PER

ENOUGH_VALUES = 12  # different ones, before a step of more than one digit is believed
METRIC = frozenset({"mg", "g", "kg"})
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

    def no_finer_than(self, told: Decimal) -> Decimal:
        """The step in grams of a balance that tells `told` of itself, in the unit that it shows.

        In another unit it counts by 1, 2 or 5 as well, and no finer than it can weigh.
        """
        unit = None if self._format is None else self._format[0]
        if unit is None or unit in METRIC:
            return told
        wanted = told / GRAMS_PER[unit]
        decade = Decimal(1).scaleb(wanted.adjusted())
        return next(s * decade for s in (1, 2, 5, 10) if s * decade >= wanted) * GRAMS_PER[unit]

    def _digits(self) -> int:
        """The largest step that all values are multiples of, 1 until there are enough of them."""
        if len(self._values) < ENOUGH_VALUES:
            return 1
        return max(step for step in STEPS if self._common % step == 0)
