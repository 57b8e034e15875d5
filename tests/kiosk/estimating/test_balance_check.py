"""Verdicts on a balance against the limits of public law."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.estimating.balance_check import (
    KnownMass,
    Verdict,
    judge,
    judge_spread,
    judge_zero,
    limit,
    weight,
)

STEP = Decimal("0.1")


# OIML R 76-1:2006, Table 6, class III, doubled for use in service; the same limits stand in
# Canada's Specifications Relating to Non-automatic Weighing Devices (SI/98-81), section 6.
@pytest.mark.parametrize(
    ("divisions", "steps"),
    [(0, 1), (500, 1), (501, 2), (2_000, 2), (2_001, 3), (10_000, 3)],
)
def test_limits_grow_with_the_load(divisions: int, steps: int) -> None:
    assert limit(divisions * STEP, STEP) == steps * STEP


# OIML R 111-1:2004: 100 g M1 is good to 5 mg, M3 to 50 mg.
@pytest.mark.parametrize(("name", "tolerance"), [("M1", "0.005"), ("M2", "0.016"), ("M3", "0.05")])
def test_weights_have_the_limits_of_their_class(name: str, tolerance: str) -> None:
    assert weight(100, name).tolerance == Decimal(tolerance)


@pytest.mark.parametrize(
    ("nominal", "shown", "verdict"),
    [
        (100, "100.0", Verdict.FINE),
        (100, "100.1", Verdict.FINE),
        (100, "100.2", Verdict.CANNOT_TELL),  # true error 0.15 to 0.25, limit 0.2
        (100, "100.3", Verdict.NOT_FINE),
        (50, "50.0", Verdict.FINE),
        (50, "50.1", Verdict.CANNOT_TELL),
        (50, "50.2", Verdict.NOT_FINE),
        (50, "49.8", Verdict.NOT_FINE),
    ],
)
def test_a_verdict_stands_only_where_rounding_cannot_change_it(
    nominal: int, shown: str, verdict: Verdict
) -> None:
    assert judge(weight(nominal, "M1"), Decimal(shown), STEP) is verdict


def test_coins_cannot_tell_a_gram_but_find_a_wrong_unit() -> None:
    # US five-cent coins: 5.000 g, tolerance 0.194 g each (31 USC 5112, 5113).
    coins = KnownMass(
        name="five coins", grams=Decimal(25), tolerance=Decimal("0.97"), gross_check=True
    )
    assert judge(coins, Decimal("25.3"), STEP) is Verdict.CANNOT_TELL
    assert judge(coins, Decimal("708.7"), STEP) is Verdict.NOT_FINE


@pytest.mark.parametrize(
    ("shown", "verdict"),
    [
        (("100.0", "100.0", "100.1"), Verdict.FINE),
        (("100.0", "100.2", "100.1"), Verdict.CANNOT_TELL),
        (("100.0", "100.4", "100.1"), Verdict.NOT_FINE),
    ],
)
def test_repeated_weighings_may_differ_by_the_limit(
    shown: tuple[str, ...], verdict: Verdict
) -> None:
    assert judge_spread([Decimal(mass) for mass in shown], Decimal(100), STEP) is verdict


def test_one_weighing_shows_no_spread() -> None:
    with pytest.raises(ValueError, match="spread"):
        judge_spread([Decimal(100)], Decimal(100), STEP)


@pytest.mark.parametrize(
    ("shown", "verdict"),
    [("0.0", Verdict.FINE), ("-0.1", Verdict.CANNOT_TELL), ("0.2", Verdict.NOT_FINE)],
)
def test_the_zero_comes_back(shown: str, verdict: Verdict) -> None:
    assert judge_zero(Decimal(shown), STEP) is verdict
