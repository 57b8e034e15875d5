"""Entries for tests of the records: a cup, a key and the masses behind them (all invented)."""

from __future__ import annotations

from datetime import UTC, datetime
from decimal import Decimal

import pytest

from kiosk.evidence import Source, Weighing
from kiosk.records.entries import (
    BalanceChecked,
    CheckedRow,
    CheckMass,
    CupHandedIn,
    CupTaken,
    Entry,
    KeyMade,
    KeyMass,
    KeyStarted,
    new_id,
)
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store

AT = datetime(2026, 3, 14, 9, 26, 53, 589793, tzinfo=UTC)


def weighing(grams: str, *, source: Source = Source.BALANCE, raw: bytes = b"frame") -> Weighing:
    return Weighing(
        id=new_id(),
        grams=Decimal(grams),
        value=Decimal(grams),
        unit="g",
        raw=raw,
        readability=Decimal("0.1"),
        at=AT,
        balance="bench",
        source=source,
    )


def cup_taken(
    number: int = 7,
    *,
    team: str = "Heron",
    empty: str = "12.3",
    source: Source = Source.BALANCE,
) -> CupTaken:
    return CupTaken(
        number=number, team=team, material="rice", empty=weighing(empty, source=source), at=AT
    )


def handed_in(
    cup: CupTaken, filled: str = "105.7", *, points: str = "93.4", source: Source = Source.BALANCE
) -> CupHandedIn:
    return CupHandedIn(
        try_id=cup.id,
        filled=weighing(filled, source=source),
        net=Decimal(filled) - cup.empty.grams,
        target=Decimal(100),
        points=Decimal(points),
        side="under",
        confirmed=False,
        at=AT,
    )


def key_started(material: str = "beans") -> KeyStarted:
    return KeyStarted(
        material=material,
        scatter_class="pulses and grains",
        piece_cv_percent=Decimal(20),
        pieces=100,
        at=AT,
    )


def key_mass(key: KeyStarted, role: str, grams: str, *, source: Source = Source.BALANCE) -> KeyMass:
    return KeyMass(key_id=key.id, role=role, weighing=weighing(grams, source=source), at=AT)


def key_made(key: KeyStarted, letter: str = "C") -> KeyMade:
    return KeyMade(
        key_id=key.id,
        letter=letter,
        count=2830,
        low=2742,
        high=2921,
        half_width_percent=Decimal("3.10"),
        piece_mass_g=Decimal("0.03533333333333333"),
        score_effect=Decimal("2.9"),
        warnings=("samples are light", "take more"),
        from_container=False,
        at=AT,
    )


def check_mass(
    check_id: str, grams: str = "100.1", *, role: str = "load", source: Source = Source.BALANCE
) -> CheckMass:
    return CheckMass(
        check_id=check_id,
        role=role,
        row=1,
        name="100 g M1",
        known=Decimal(100),
        tolerance=Decimal("0.005"),
        weighing=weighing(grams, source=source),
        at=AT,
    )


def balance_checked(
    check_id: str, *, balance: str = "bench", verdict: str = "fine", at: datetime = AT
) -> BalanceChecked:
    row = CheckedRow(
        test="load",
        name="100 g M1",
        known=Decimal("100"),
        shown=Decimal("100.10"),
        off=Decimal("0.10"),
        limit=Decimal("0.2"),
        verdict="fine",
    )
    spread = CheckedRow(
        test="repeat",
        name="100 g M1",
        known=None,
        shown=Decimal("0.0"),
        off=Decimal("0.0"),
        limit=Decimal("0.2"),
        verdict=verdict,
    )
    return BalanceChecked(
        id=check_id,
        balance=balance,
        readability=Decimal("0.1"),
        rows=(row, spread),
        verdict=verdict,
        at=at,
    )


def refused(store: Store, *entries: Entry) -> Problem:
    """What the store has against these entries."""
    with pytest.raises(RecordsError) as caught:
        store.save(*entries)
    return caught.value.problem
