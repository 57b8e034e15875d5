"""The noise of a balance, learned in blocks."""

from __future__ import annotations

from statistics import stdev

import pytest

from kiosk.weighing.noise import BLOCK, Noise

BLOCK_YS = [100.0, 101, 99, 100, 102, 100, 99, 101]
QUIET_YS = [100.0] * BLOCK


def taught(*ys: float) -> Noise:
    noise = Noise()
    for y in ys:
        noise.rests_at(y)
    return noise


def test_nothing_is_known_before_a_whole_block() -> None:
    assert taught(*BLOCK_YS[:-1]).level is None


def test_the_first_block_is_believed() -> None:
    assert taught(*BLOCK_YS).level == pytest.approx(stdev(BLOCK_YS))


def test_further_blocks_count_by_a_quarter_of_their_variance() -> None:
    expected = (0.75 * stdev(BLOCK_YS) ** 2) ** 0.5
    assert taught(*BLOCK_YS, *QUIET_YS).level == pytest.approx(expected)


def test_slow_drift_between_blocks_is_no_noise() -> None:
    drifting = [float(place // BLOCK) for place in range(10 * BLOCK)]
    assert taught(*drifting).level == 0.0


def test_readings_from_before_an_interruption_are_not_mixed_with_later_ones() -> None:
    noise = taught(*[0.0] * (BLOCK - 1))
    noise.interrupt()
    for y in QUIET_YS:
        noise.rests_at(y)
    assert noise.level == 0.0


def test_a_finer_division_makes_the_same_noise_larger() -> None:
    noise = taught(*BLOCK_YS)
    noise.rescale(10.0)
    assert noise.level == pytest.approx(10 * stdev(BLOCK_YS))


def test_rescaling_what_is_unknown_leaves_it_unknown() -> None:
    noise = Noise()
    noise.rescale(10.0)
    assert noise.level is None
