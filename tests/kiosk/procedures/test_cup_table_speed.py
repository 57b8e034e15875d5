"""A slice of the benchmark of the cup table (tests/benchmarks/cup_table_speed.py)."""

from __future__ import annotations

import numpy as np
import pytest

from tests.benchmarks.cup_table_speed import MOST_S
from tests.helpers.queue_trials import Balance, Times, hand_in

CUPS = 8
NOISES = (0.0, 0.15, 0.3)


@pytest.fixture(scope="module")
def handed_in() -> dict[float, Times]:
    """Eight cups on usual balances, from quiet to noisy."""
    return {
        noise: hand_in(Balance(noise=noise, filter_seconds=0.12, damping=0.3), CUPS, seed=20)
        for noise in NOISES
    }


@pytest.mark.parametrize("noise", NOISES)
def test_hands_wait_for_the_kiosk_no_longer_than_allowed(
    handed_in: dict[float, Times], noise: float
) -> None:
    times = handed_in[noise]
    assert np.median(times.to_recorded) <= MOST_S
    assert np.median(times.to_next) <= MOST_S


@pytest.mark.parametrize("noise", NOISES)
def test_quick_does_not_mean_wrong(handed_in: dict[float, Times], noise: float) -> None:
    off = np.abs(handed_in[noise].off)
    assert len(off) == CUPS
    assert max(off) <= 1 + noise
