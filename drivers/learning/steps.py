"""The readability of a display from the numbers that it showed."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

# Step in units of the last digit, and how many different numbers make it more than chance.
_EVIDENCE = ((50, 3), (20, 5), (10, 3), (5, 2), (2, 4))


def step_of(values: Iterable[Decimal], decimals: int) -> Decimal:
    """The step of which all ``values`` are multiples: 1, 2 or 5 of the last digit.

    Of the digit before it, should the last one always be 0. It is 1 where too few values tell.
    """
    last = {abs(int(value.scaleb(decimals))) for value in values} - {0}
    units = next(
        (
            step
            for step, least in _EVIDENCE
            if len(last) >= least and not any(n % step for n in last)
        ),
        1,
    )
    return Decimal(units).scaleb(-decimals)
