"""The step of a balance, from the digits that it shows while nobody has asked it."""

from __future__ import annotations

from decimal import Decimal
from math import gcd

from drivers.reading import Reading
from drivers.units import GRAMS_PER

ENOUGH_VALUES = 12  # different ones, before steps of 2 or 5 are believed


class ShownSteps:
    """Learns from readings; ``grams`` is the step in grams, None before the first reading."""

    def __init__(self) -> None:
        self.grams: Decimal | None = None
        self._exponent = 0
        self._unit: str | None = None
        self._values: set[int] = set()
        self._common = 0

    def learn(self, reading: Reading) -> None:
        """Take in what a reading with a mass shows."""
        if reading.value is None or reading.unit is None or reading.unit not in GRAMS_PER:
            return
        exponent = int(reading.value.as_tuple().exponent)
        if reading.unit != self._unit or exponent != self._exponent:
            self._unit, self._exponent = reading.unit, exponent
            self._values.clear()
            self._common = 0
        shown = abs(int(reading.value.scaleb(-exponent)))
        if shown and len(self._values) < ENOUGH_VALUES:
            self._values.add(shown)
            self._common = gcd(self._common, shown)
        believed = len(self._values) >= ENOUGH_VALUES and self._common in (2, 5)
        steps = self._common if believed else 1
        self.grams = Decimal(steps).scaleb(exponent) * GRAMS_PER[reading.unit]
