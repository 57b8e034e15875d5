"""Published masses and how well they are known."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.estimating.known_masses import COINS, check_weight, coins


# OIML R 111-1:2004, limits of error in mg.
@pytest.mark.parametrize(
    ("nominal", "weight_class", "milligrams"),
    [
        (20, "M1", "2.5"), (20, "M2", "8"), (20, "M3", "25"),
        (50, "M1", "3"), (50, "M2", "10"), (50, "M3", "30"),
        (100, "M1", "5"), (100, "M2", "16"), (100, "M3", "50"),
        (200, "M1", "10"), (200, "M2", "30"), (200, "M3", "100"),
    ],
)  # fmt: skip
def test_weights_have_the_limits_of_their_class(
    nominal: int, weight_class: str, milligrams: str
) -> None:
    known = check_weight(nominal, weight_class)
    assert known.grams == nominal
    assert known.tolerance * 1000 == Decimal(milligrams)
    assert not known.gross_check


# US: 31 USC 5112(a). Euro: summary of Regulation (EC) 975/98. UK: as quoted from the mint.
# Canada: Royal Canadian Mint Act, schedule, and SOR/2011-324.
@pytest.mark.parametrize(
    ("kind", "grams"),
    [
        ("us_5_cents", "5.000"), ("us_25_cents", "5.670"), ("euro_1", "7.5"), ("euro_2", "8.5"),
        ("uk_10_pence", "6.50"), ("uk_1_pound", "8.75"),
        ("canada_1_dollar", "6.27"), ("canada_2_dollars", "6.92"),
    ],
)  # fmt: skip
def test_coins_have_their_published_mass(kind: str, grams: str) -> None:
    assert coins(kind, 1).grams == Decimal(grams)


def test_the_tolerance_of_a_law_is_used_where_there_is_one() -> None:
    # 31 USC 5113(a): 0.194 g on a five-cent coin; twenty of them may all be light.
    assert coins("us_5_cents", 20).tolerance == Decimal("3.880")


@pytest.mark.parametrize("kind", COINS)
def test_coins_are_a_gross_check_and_known_no_better_than_three_percent(kind: str) -> None:
    # Canada allows about 3 % on 1 kg of its 1 and 2 dollars (SOR/2011-324), the US near 4 %.
    known = coins(kind, 10)
    assert known.gross_check
    assert Decimal("0.03") <= known.tolerance / known.grams <= Decimal("0.04")


# Thirty circulated dimes average 0.43 % under their published mass (mosaicData, "Dimes").
def test_worn_coins_stay_inside_the_tolerance() -> None:
    known = coins("us_5_cents", 10)
    assert known.grams * Decimal("0.0043") < known.tolerance
