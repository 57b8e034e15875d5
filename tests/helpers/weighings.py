"""Captured masses written by hand."""

from __future__ import annotations

from decimal import Decimal

from kiosk.evidence import Source, Weighing
from kiosk.records.entries import new_id
from tests.helpers.pan import STARTED


def weighed(
    grams: str,
    step: str = "0.1",
    source: Source = Source.SIMULATED,
    balance: str = "test balance",
) -> Weighing:
    """A mass as a balance with that step showed it."""
    return Weighing(
        id=new_id(),
        grams=Decimal(grams),
        value=Decimal(grams),
        unit="g",
        raw=b"",
        readability=Decimal(step),
        at=STARTED,
        balance=balance,
        source=source,
    )
