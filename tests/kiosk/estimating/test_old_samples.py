"""Samples of another day widen the count, by how long ago and on which balance."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.estimating.count_key import CountInput, CountKey, count_key
from kiosk.estimating.old_samples import MOST_MOISTURE, OTHER_BALANCE, drift, moisture
from kiosk.estimating.scatter import ScatterClass
from kiosk.estimating.uncertainty import Part

GRAINS = ScatterClass.GRAINS
GIVEN = CountInput(
    pieces=100, samples=(Decimal("50.1"), Decimal("50.3"), Decimal("49.9")), filled=Decimal(600),
    readability=Decimal("0.1"), piece_cv_percent=Decimal(5),
)  # fmt: skip


def key(added: float) -> CountKey:
    found = count_key(replace(GIVEN, drift=added))
    assert isinstance(found, CountKey)
    return found


def test_within_a_day_nothing_changes() -> None:
    assert drift(GRAINS, 0.9, other_balance=False) == 0


def test_grains_take_up_moisture_day_by_day_up_to_what_a_store_can_do() -> None:
    added = [moisture(GRAINS, days) for days in (2, 7, 14, 100)]
    assert added == sorted(added)
    assert added[-1] == MOST_MOISTURE
    # from 12.60 to 13.41 g a thousand: the middle, and as much to either side
    half_range = (13.41 - 12.60) / (13.41 + 12.60)
    assert half_range == pytest.approx(MOST_MOISTURE, abs=0.002)


def test_beads_stay_what_they_are() -> None:
    assert moisture(ScatterClass.BEADS, 100) == 0


@pytest.mark.parametrize("kind", [kind for kind in ScatterClass if kind is not ScatterClass.BEADS])
def test_whatever_may_be_food_is_taken_for_food(kind: ScatterClass) -> None:
    assert moisture(kind, 7) > 0


def test_another_balance_is_added_even_on_the_same_day() -> None:
    assert drift(GRAINS, 0, other_balance=True) == OTHER_BALANCE
    assert drift(GRAINS, 100, other_balance=True) > MOST_MOISTURE


def test_it_adds_to_the_interval_as_a_part_of_its_own() -> None:
    fresh, old = key(0), key(0.02)
    assert old.count == fresh.count
    assert old.budget.half_width == pytest.approx((fresh.budget.half_width**2 + 0.02**2) ** 0.5)
    assert (old.low, old.high) < (fresh.low, old.high)
    assert old.budget.dominant is Part.OLD_SAMPLES


def test_the_key_says_so() -> None:
    assert any("another day or scale" in warning for warning in key(0.02).warnings)
    assert "2.0 %" in key(0.02).warnings[0]
    assert not any("another day" in warning for warning in key(0).warnings)
