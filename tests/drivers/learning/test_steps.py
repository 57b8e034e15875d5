from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.learning.steps import step_of


@pytest.mark.parametrize(
    ("step", "decimals"),
    [("0.01", 2), ("0.02", 2), ("0.05", 2), ("0.1", 2), ("0.5", 2), ("1", 0), ("2", 0), ("5", 0),
     ("0.0005", 4)],
)  # fmt: skip
def test_the_step_is_found_from_its_multiples(step: str, decimals: int) -> None:
    one = Decimal(step).quantize(Decimal(1).scaleb(-decimals))
    values = [one * n for n in (0, 1, 3, 7, 11, 21, -9)]
    assert step_of(values, decimals) == one


@pytest.mark.parametrize("values", [[], ["0.00"], ["12.34"], ["12.30"], ["12.34", "0.56", "0.78"]])
def test_a_few_values_prove_no_larger_step(values: list[str]) -> None:
    assert step_of(map(Decimal, values), 2) == Decimal("0.01")


def test_the_step_is_written_with_its_digits() -> None:
    assert f"{step_of([Decimal('0.5'), Decimal('1.0')], 1):f}" == "0.5"
