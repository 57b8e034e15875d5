"""Noise and drift of a resting balance."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import linregress

from kiosk.estimating.steadiness import steadiness

SECONDS = list(np.arange(0, 10, 0.1))


def noisy(noise: float, drift_per_minute: float = 0.0) -> list[float]:
    draws = np.random.default_rng(5).normal(0, noise, len(SECONDS))
    return list(50 + drift_per_minute / 60 * np.asarray(SECONDS) + draws)


def test_a_still_balance_neither_rattles_nor_drifts() -> None:
    found = steadiness(SECONDS, [50.0] * len(SECONDS), 0.1)
    assert found is not None
    assert (found.noise, found.drift) == (0.0, 0.0)


# scipy's linear regression is the reference for slope and residuals.
def test_noise_and_drift_are_those_of_a_straight_line() -> None:
    grams = noisy(0.05, drift_per_minute=3.0)
    found = steadiness(SECONDS, grams, 0.01)
    line = linregress(SECONDS, grams)
    left = np.asarray(grams) - line.intercept - line.slope * np.asarray(SECONDS)
    assert found is not None
    assert found.drift == pytest.approx(60 * line.slope)
    assert found.noise == pytest.approx(np.sqrt(np.sum(left**2) / (len(left) - 2)))


@pytest.mark.parametrize("readability", [0.01, 0.1])
def test_noise_alone_is_no_drift(readability: float) -> None:
    found = steadiness(SECONDS, noisy(0.05), readability)
    assert found is not None
    assert found.drift == 0.0


def test_one_step_of_the_display_is_no_drift() -> None:
    found = steadiness(SECONDS[:40], [50.0] * 39 + [50.1], 0.1)
    assert found is not None
    assert found.drift == 0.0


@pytest.mark.parametrize("readings", [0, 14])
def test_too_little_tells_nothing(readings: int) -> None:
    assert steadiness(SECONDS[:readings], [50.0] * readings, 0.1) is None


def test_a_short_rest_tells_nothing() -> None:
    assert steadiness(list(np.arange(0, 2, 0.05)), [50.0] * 40, 0.1) is None
