"""Samples from another day: how much wider a count gets by what happened to the pieces since.

Seeds and other food take up and lose water with the air. Over the moistures of a store they change
their mass by several per cent: sugar beet seed from 12.60 to 13.41 g a thousand as its moisture
goes from 8.4 to 14 % (J. Stored Prod. Res. 43:149, abstract), which is 3 % to either side. How fast
they follow is a judgement without a source: nothing within a day in the same room, then 0.2 % a
day until that range is reached after two weeks. Beads and hardware do not change.

A balance that is off by one share cancels where the same one weighed samples and fill. Two balances
may each be off by the in-service limit, two steps in up to 2 000 (see balance_check): so much is
added where they differ.
"""

from __future__ import annotations

from math import hypot

from kiosk.estimating.scatter import ScatterClass

FRESH_DAYS = 1.0
MOISTURE_A_DAY = 0.002
MOST_MOISTURE = 0.03
OTHER_BALANCE = 0.002


def moisture(kind: str, days: float) -> float:
    """The 95 % half width, relative, that so many days add for pieces of that scatter class."""
    if kind == ScatterClass.BEADS or days <= FRESH_DAYS:
        return 0.0
    return min(MOST_MOISTURE, MOISTURE_A_DAY * days)


def drift(kind: str, days: float, *, other_balance: bool) -> float:
    """The 95 % half width, relative, for samples of so many days ago."""
    return hypot(moisture(kind, days), OTHER_BALANCE if other_balance else 0.0)
