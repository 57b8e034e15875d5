"""Verdicts on a balance against the limits of public law."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.estimating.balance_check import (
    Verdict,
    judge,
    judge_spread,
    judge_zero,
    limit,
    off_by_one_share,
    overall,
)
from kiosk.estimating.known_masses import KnownMass, check_weight, coins

STEP = Decimal("0.1")
FINE, NOT_FINE, CANNOT_TELL = Verdict.FINE, Verdict.NOT_FINE, Verdict.CANNOT_TELL


def masses(*shown: str) -> list[Decimal]:
    return [Decimal(mass) for mass in shown]


# OIML R 76-1:2006, Table 6, class III, doubled for use in service; the same limits stand in
# Canada's Specifications Relating to Non-automatic Weighing Devices (SI/98-81). NIST Handbook 44,
# Scales, Table 6, maintenance, class III, agrees up to 4 000 divisions.
@pytest.mark.parametrize(
    ("divisions", "steps"),
    [(0, 1), (500, 1), (501, 2), (2_000, 2), (2_001, 3), (4_000, 3), (10_000, 3), (20_000, 3)],
)
def test_limits_grow_with_the_load(divisions: int, steps: int) -> None:
    assert limit(divisions * STEP, STEP) == steps * STEP


@pytest.mark.parametrize(
    ("nominal", "shown", "verdict"),
    [
        (100, "100.0", FINE),
        (100, "100.1", FINE),
        (100, "100.2", CANNOT_TELL),  # true error 0.15 to 0.25, limit 0.2
        (100, "100.3", NOT_FINE),
        (50, "50.0", FINE),
        (50, "50.1", CANNOT_TELL),
        (50, "50.2", NOT_FINE),
        (50, "49.8", NOT_FINE),
    ],
)
def test_a_verdict_stands_only_where_rounding_cannot_change_it(
    nominal: int, shown: str, verdict: Verdict
) -> None:
    assert judge(check_weight(nominal, "M1"), Decimal(shown), STEP).verdict is verdict


def test_a_load_is_off_with_its_sign_and_has_its_own_limit() -> None:
    found = judge(check_weight(100, "M1"), Decimal("99.7"), STEP)
    assert (found.off, found.limit) == (Decimal("-0.3"), Decimal("0.2"))


# OIML R 111-1:2004: 200 g M1 is good to 10 mg, M3 to 100 mg. At a step of 0.01 g, 200 g are
# 20 000 divisions and may be off by 0.03 g: the one weight can tell, the other cannot.
@pytest.mark.parametrize(("weight_class", "verdict"), [("M1", FINE), ("M3", CANNOT_TELL)])
def test_a_coarse_weight_cannot_judge_a_fine_balance(weight_class: str, verdict: Verdict) -> None:
    known = check_weight(200, weight_class)
    assert judge(known, Decimal("200.01"), Decimal("0.01")).verdict is verdict


# Five US five-cent coins: 25.000 g and 0.97 g (31 USC 5112(a), 5113(a)).
@pytest.mark.parametrize(
    ("shown", "verdict"),
    [("25.0", CANNOT_TELL), ("25.3", CANNOT_TELL), ("26.0", CANNOT_TELL), ("0.9", NOT_FINE)],
)
def test_coins_cannot_tell_a_gram_but_find_a_wrong_unit(shown: str, verdict: Verdict) -> None:
    assert judge(coins("us_5_cents", 5), Decimal(shown), STEP).verdict is verdict


@pytest.mark.parametrize(
    ("shown", "verdict"),
    [
        (("100.0", "100.0", "100.1"), FINE),
        (("100.0", "100.2", "100.1"), CANNOT_TELL),
        (("100.0", "100.4", "100.1"), NOT_FINE),
    ],
)
def test_repeated_weighings_may_differ_by_the_limit(
    shown: tuple[str, ...], verdict: Verdict
) -> None:
    assert judge_spread(masses(*shown), Decimal(100), STEP).verdict is verdict


def test_one_weighing_shows_no_spread() -> None:
    with pytest.raises(ValueError, match="spread"):
        judge_spread(masses("100"), Decimal(100), STEP)


@pytest.mark.parametrize(
    ("shown", "verdict"),
    [
        (("0.0", "0.0"), FINE),
        (("0.0", "-0.1", "0.0"), CANNOT_TELL),
        (("0.0", "0.2"), NOT_FINE),
        (("-0.2", "0.1"), NOT_FINE),
    ],
)
def test_the_worst_zero_counts(shown: tuple[str, ...], verdict: Verdict) -> None:
    assert judge_zero(masses(*shown), STEP).verdict is verdict


@pytest.mark.parametrize(
    ("loads", "tests", "verdict"),
    [
        ([FINE, CANNOT_TELL], [FINE], FINE),
        ([FINE], [NOT_FINE], NOT_FINE),
        ([NOT_FINE, FINE], [], NOT_FINE),
        ([], [FINE, FINE], CANNOT_TELL),
        ([CANNOT_TELL], [FINE], CANNOT_TELL),
    ],
)
def test_only_a_known_load_makes_a_balance_fine(
    loads: list[Verdict], tests: list[Verdict], verdict: Verdict
) -> None:
    assert overall(loads, tests) is verdict


@pytest.mark.parametrize(
    ("shown", "same"),
    [
        (("50.5", "101.0", "202.0"), True),  # 1 % heavy throughout
        (("50.5", "101.0", "200.0"), False),
        (("50.5",), None),
    ],
)
def test_an_error_of_one_share_is_told_from_others(shown: tuple[str, ...], same: bool) -> None:
    known = [check_weight(nominal, "M1") for nominal in (50, 100, 200)]
    loads = list(zip(known, masses(*shown), strict=False))
    assert off_by_one_share(loads, STEP) is same


def test_zero_is_judged_like_any_load() -> None:
    nothing = KnownMass(grams=Decimal(0), tolerance=Decimal(0))
    assert judge_zero(masses("0.1"), STEP) == judge(nothing, Decimal("0.1"), STEP)
