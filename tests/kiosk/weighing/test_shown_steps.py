"""The step of a balance, from its digits."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.weighing.shown_steps import ENOUGH_VALUES, ShownSteps
from tests.helpers.loads import reading


def shown(*values: str, unit: str = "g") -> ShownSteps:
    steps = ShownSteps()
    for value in values:
        steps.learn(replace(reading(Decimal(value), 0.0), unit=unit))
    return steps


def going_by(step: str) -> list[str]:
    return [str(Decimal(step) * place) for place in range(7, 7 + ENOUGH_VALUES)]


def test_nothing_is_known_before_the_first_reading() -> None:
    assert ShownSteps().grams is None


@pytest.mark.parametrize("value", ["12.34", "0.00", "-3.10"])
def test_the_last_digit_is_the_finest_step(value: str) -> None:
    assert shown(value).grams == Decimal("0.01")


@pytest.mark.parametrize("step", ["0.02", "0.05", "0.5", "0.2"])
def test_a_display_that_counts_by_more_gives_itself_away(step: str) -> None:
    assert shown(*going_by(step)).grams == Decimal(step)


def test_zeros_beyond_what_it_can_weigh_do_not_count() -> None:
    assert shown(*[f"{value}.00" for value in range(1, 1 + ENOUGH_VALUES)]).grams == 1


def test_a_few_even_values_prove_nothing() -> None:
    assert shown("0.02", "0.04", "0.08", "0.04", "0.02").grams == Decimal("0.01")


def test_one_odd_value_refutes_a_larger_step() -> None:
    assert shown(*going_by("0.02"), "0.31").grams == Decimal("0.01")


def test_the_step_is_told_in_grams() -> None:
    assert shown("1.763", unit="oz").grams == Decimal("0.028349523125")


def test_another_unit_or_format_is_learned_anew() -> None:
    steps = shown(*going_by("0.5"))
    steps.learn(replace(reading(Decimal("0.0123"), 0.0), unit="kg"))
    assert steps.grams == Decimal("0.1000")


def test_an_unknown_unit_teaches_nothing() -> None:
    assert shown("1.2", unit="tael").grams is None
