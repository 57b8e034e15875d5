from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.simulated.units import count_by, rounded


@pytest.mark.parametrize(
    ("unit", "readability", "step"),
    [
        ("g", "0.1", "0.1"),
        ("g", "5", "5"),
        ("kg", "1", "0.001"),
        ("kg", "0.5", "0.0005"),
        ("oz", "0.1", "0.005"),
        ("oz", "1", "0.05"),
        ("lb", "1", "0.005"),
        ("lb", "0.2", "0.0005"),
    ],
)
def test_counts_by_the_next_one_two_or_five(unit: str, readability: str, step: str) -> None:
    assert count_by(unit, Decimal(readability)) == Decimal(step)


@pytest.mark.parametrize(
    ("grams", "shown"), [(0.5, "1"), (1.5, "2"), (-0.5, "0"), (-0.4, "0"), (-0.6, "-1")]
)
def test_halves_go_up(grams: float, shown: str) -> None:
    assert str(rounded(grams, "g", Decimal(1))) == shown


def test_a_pound_is_a_pound() -> None:
    assert rounded(453.59237, "lb", Decimal("0.001")) == Decimal("1.000")
