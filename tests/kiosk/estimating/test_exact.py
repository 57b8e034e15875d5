from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from kiosk.estimating.exact import exact, half_up, significant


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [
        (Fraction(25, 100), 1, "0.3"),
        (Fraction(-25, 100), 1, "-0.3"),
        (Fraction(24999, 100000), 1, "0.2"),
        (Fraction(7), 0, "7"),
        (Fraction(-1, 100), 1, "0.0"),
        (Fraction(10**40 + 1, 2), 0, str((10**40 + 2) // 2)),
    ],
)
def test_halves_go_away_from_zero_at_any_size(value: Fraction, decimals: int, text: str) -> None:
    assert f"{half_up(value, decimals):f}" == text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (Fraction(35, 1000), "0.035"),
        (Fraction("2.25823333"), "2.25823"),
        (Fraction(1, 3), "0.333333"),
        (Fraction(10), "10"),
        (Fraction(12345678), "12345678"),
        (Fraction("9.9999996"), "10"),
    ],
)
def test_significant_digits(value: Fraction, text: str) -> None:
    assert f"{significant(value, 6):f}" == text


@pytest.mark.parametrize("text", ["nan", "inf", "1e61", "1e-61", "-1e999999"])
def test_what_cannot_be_weighed_is_no_number(text: str) -> None:
    with pytest.raises(ValueError, match=r"not a number|beyond anything"):
        exact(Decimal(text))
