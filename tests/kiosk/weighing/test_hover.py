"""Since when a reading hovers, and how it trembled meanwhile."""

from __future__ import annotations

import math

import pytest

from kiosk.weighing.hover import hovering_since, tremor
from tests.helpers.samples import along, samples

REST = 1000.0
LONG_AGO = float("-inf")


def test_a_load_that_fell_at_once_hovers_since_then() -> None:
    way_in = along(lambda t: 0.0 if t < 1.0 else REST, 4.0)
    assert hovering_since(way_in, REST, 0.2, LONG_AGO) == pytest.approx(0.9, abs=0.11)


def test_a_slow_load_hovers_only_when_at_its_pace_it_would_be_at_rest() -> None:
    way_in = along(lambda t: REST * (1 - math.exp(-t)), 9.0)
    at_rest = math.log(REST / 0.5)  # a time constant of one second
    assert hovering_since(way_in, REST, 0.2, LONG_AGO) == pytest.approx(at_rest, abs=0.6)


def test_nothing_hovers_before_it_was_restless() -> None:
    assert hovering_since(along(lambda t: REST, 4.0), REST, 0.2, 2.5) == 2.5


def test_where_no_way_in_was_seen_it_hovers_since_the_first_reading() -> None:
    assert hovering_since(along(lambda t: REST, 4.0), REST, 0.2, LONG_AGO) == 0.0


def test_a_hand_that_trembles_on_a_noisy_balance_has_not_left_again() -> None:
    trembles = along(lambda t: REST + (36 if round(10 * t) == 30 else 0), 5.0)
    assert hovering_since(trembles, REST, 1.5, LONG_AGO) == 0.0
    assert hovering_since(trembles, REST, 0.2, LONG_AGO) > 0.0


def test_a_tremor_is_the_root_mean_square_of_what_came_since() -> None:
    assert tremor(samples([90, 3, -3, 3, -3]), 0.0, 0.0) == pytest.approx(3.0)


def test_without_a_reading_there_is_no_tremor() -> None:
    assert tremor(samples([90, 3]), 5.0, 0.0) == 0.0
