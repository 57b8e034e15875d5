"""Running sums against the plain formulas."""

from __future__ import annotations

from itertools import pairwise
from statistics import fmean, linear_regression, stdev

import pytest

from kiosk.weighing.stretch import Stretch
from tests.helpers.samples import sample

TIMES = [5.0, 5.1, 5.25, 5.3, 5.4, 5.6]
YS = [1003.0, 1001.0, 1004.0, 1002.0, 1006.0, 1004.0]


@pytest.fixture
def stretch() -> Stretch:
    oldest_first = [sample(at, y) for at, y in zip(TIMES, YS, strict=True)]
    grown = Stretch(oldest_first[-1])
    for one in reversed(oldest_first):
        grown.add(one)
    return grown


def test_its_size_and_length(stretch: Stretch) -> None:
    assert (stretch.size, stretch.seconds) == (6, pytest.approx(0.6))


def test_its_range(stretch: Stretch) -> None:
    assert stretch.range == 5.0


def test_its_means(stretch: Stretch) -> None:
    assert stretch.mean == pytest.approx(fmean(YS))
    assert stretch.middle == pytest.approx(fmean(TIMES))


def test_its_scatter(stretch: Stretch) -> None:
    assert stretch.scatter == pytest.approx(stdev(YS))


def test_its_jumps_between_neighbours(stretch: Stretch) -> None:
    squares = [(a - b) ** 2 for a, b in pairwise(YS)]
    assert stretch.jump == pytest.approx(fmean(squares) ** 0.5)


def test_its_climb_is_slope_times_length(stretch: Stretch) -> None:
    assert stretch.climb == pytest.approx(linear_regression(TIMES, YS).slope * 0.6)


def test_readings_of_one_moment_do_not_climb() -> None:
    stretch = Stretch(sample(1.0, 5.0))
    stretch.add(sample(1.0, 5.0))
    stretch.add(sample(1.0, 9.0))
    assert stretch.climb == 0.0
