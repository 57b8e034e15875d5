from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kiosk.estimating.score import Side, score
from kiosk.settings import Over, Rules

RULES = Rules()
MASSES = st.decimals(min_value="0.001", max_value="100000", places=3)


def points(actual: str, estimate: str, rules: Rules = RULES) -> str:
    return str(score(Decimal(actual), Decimal(estimate), rules).points)


@pytest.mark.parametrize(
    ("actual", "estimate", "expected"),
    [
        ("4000", "3500", "87.5"),  # common practice, no source
        ("100", "300", "0.0"),  # 25 large bolts in the cup; common practice, no source
        ("100", "100", "100.0"),
        ("100", "112", "88.0"),
        ("100", "200", "0.0"),
        ("100", "0", "0.0"),
        ("3", "2", "66.7"),
        ("2000", "1", "0.1"),  # 0.05 is a half and goes up
        ("1000000", "499", "0.0"),
    ],
)
def test_points(actual: str, estimate: str, expected: str) -> None:
    assert points(actual, estimate) == expected


@pytest.mark.parametrize(("empty", "gross"), [("12", "112"), ("30", "130")])
def test_a_cup_is_right_at_its_own_mass_and_the_goal(empty: str, gross: str) -> None:
    # common practice, no source
    scored = score(RULES.cup_target_g, Decimal(gross) - Decimal(empty), RULES)
    assert (scored.points, scored.side) == (Decimal("100.0"), Side.EXACT)


@pytest.mark.parametrize(
    ("estimate", "error", "side"),
    [
        ("3500", "-12.500000", Side.UNDER),
        ("4500", "12.500000", Side.OVER),
        ("4000", "0.000000", Side.EXACT),
    ],
)
def test_the_error_is_signed(estimate: str, error: str, side: Side) -> None:
    scored = score(Decimal(4000), Decimal(estimate), RULES)
    assert (str(scored.error_percent), scored.side) == (error, side)


def test_leagues_may_give_nothing_for_an_over_guess() -> None:
    rules = Rules(over=Over.ZERO)
    assert (points("100", "100.1", rules), points("100", "99.9", rules)) == ("0.0", "99.9")


@pytest.mark.parametrize(("decimals", "expected"), [(0, "67"), (1, "66.7"), (3, "66.667")])
def test_leagues_choose_the_digits(decimals: int, expected: str) -> None:
    assert points("3", "2", Rules(decimals=decimals)) == expected


def test_a_miss_by_less_than_a_digit_is_not_exact() -> None:
    scored = score(Decimal(100), Decimal("100.0001"), RULES)
    assert (str(scored.points), scored.side) == ("100.0", Side.OVER)


def test_an_enormous_estimate_is_over_and_earns_nothing() -> None:
    scored = score(Decimal(1), Decimal("9" * 40), RULES)
    assert (str(scored.points), scored.side) == ("0.0", Side.OVER)


@pytest.mark.parametrize("actual", ["0", "-1", "-0"])
def test_nothing_is_scored_against_nothing(actual: str) -> None:
    with pytest.raises(ValueError, match="actual value must be above zero"):
        score(Decimal(actual), Decimal(1), RULES)


def test_an_estimate_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot be below zero"):
        score(Decimal(1), Decimal("-0.1"), RULES)


@given(MASSES, st.decimals(min_value=0, max_value="1e9", places=3))
def test_points_lie_between_0_and_100(actual: Decimal, estimate: Decimal) -> None:
    assert 0 <= score(actual, estimate, RULES).points <= 100


@given(MASSES, st.decimals(min_value=0, max_value=1, places=4))
def test_as_far_over_as_under_earns_the_same(actual: Decimal, off: Decimal) -> None:
    under, over = (score(actual, actual * (1 + sign * off), RULES) for sign in (-1, 1))
    assert under.points == over.points


@given(MASSES, *[st.decimals(min_value=0, max_value=1, places=4)] * 2)
def test_nearer_never_earns_less(actual: Decimal, one: Decimal, other: Decimal) -> None:
    near, far = sorted((one, other))
    for sign in (-1, 1):
        nearer, farther = (score(actual, actual * (1 + sign * off), RULES) for off in (near, far))
        assert nearer.points >= farther.points
