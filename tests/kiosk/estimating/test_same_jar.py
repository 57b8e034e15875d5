"""Closed jars weighed twice: what may lie between, and how many pieces make up a change."""

from __future__ import annotations

import random
from decimal import Decimal

import pytest

from kiosk.estimating.same_jar import JarChange, allowed_change, jar_change

RICE, TENTH = Decimal("0.0356"), Decimal("0.1")


def change(now: str, *, other_balance: bool = False) -> JarChange:
    return jar_change(
        Decimal("732.1"), Decimal(now), step=TENTH, piece_mass=RICE, other_balance=other_balance
    )


def test_two_weighings_may_differ_by_the_limit_in_service_a_step_and_a_little_moisture() -> None:
    # 7 321 divisions: three of them in service; one step of rounding; two parts in ten thousand
    allowed = allowed_change(Decimal("732.1"), TENTH, other_balance=False)
    assert allowed == Decimal("0.3") + Decimal("0.1") + Decimal("0.14642")


def test_another_balance_may_be_off_as_well() -> None:
    allowed = allowed_change(Decimal("732.1"), TENTH, other_balance=True)
    assert allowed - allowed_change(Decimal("732.1"), TENTH, other_balance=False) == Decimal("0.3")


@pytest.mark.parametrize(("now", "same"), [("732.1", True), ("731.6", True), ("731.5", False),
                                           ("732.6", True), ("732.7", False)])  # fmt: skip
def test_a_jar_is_the_same_within_that(now: str, *, same: bool) -> None:
    assert change(now).same is same


def test_a_change_is_told_in_pieces_and_how_far_that_may_be_off() -> None:
    lost = change("728.9")
    assert (lost.grams, lost.pieces) == (Decimal("-3.2"), 90)
    assert (lost.fewest, lost.most) == (74, 106)
    assert change("732.1").unseen == 16


def test_the_pieces_lost_lie_between_the_bounds() -> None:
    dice = random.Random(7)
    for _ in range(500):
        before, lost = dice.uniform(300, 900), dice.randrange(30, 300)
        now = before - lost * float(RICE) + dice.uniform(-0.3, 0.3)  # what a balance is off by
        told = jar_change(
            round(Decimal(before), 1), round(Decimal(now), 1), step=TENTH, piece_mass=RICE
        )
        assert told.fewest <= lost <= told.most


@pytest.mark.parametrize(("step", "piece"), [("0", "0.0356"), ("0.1", "0")])
def test_a_step_and_a_piece_are_above_zero(step: str, piece: str) -> None:
    with pytest.raises(ValueError, match=r"step|piece"):
        jar_change(Decimal(1), Decimal(1), step=Decimal(step), piece_mass=Decimal(piece))
