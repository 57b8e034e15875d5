"""What remains of the way in, for creeps whose end is known."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from kiosk.weighing.approach import Level, remainder
from kiosk.weighing.stretch import Stretch
from kiosk.weighing.trace import Sample
from tests.helpers.samples import along

SIZE = 5
REST = 500.0


def remains(path: list[Sample], noise: float = 0.0, size: int = SIZE) -> tuple[float, float]:
    """What remains from the mean of the newest readings."""
    stretch = Stretch(path[-1])
    for sample in reversed(path[-size:]):
        stretch.add(sample)
    level = Level(stretch.middle, stretch.mean, stretch.climb, stretch.seconds, size)
    return remainder(path[: 1 - size], level, noise)


def creep(time_constant: float, start: float = 0.0) -> Callable[[float], float]:
    return lambda t: REST + (start - REST) * math.exp(-t / time_constant)


@pytest.mark.parametrize("time_constant", [0.8, 1.5, 3.0])
@pytest.mark.parametrize("left", [2.0, 5.0])
def test_the_true_remainder_of_a_creep_lies_between_the_bounds(
    time_constant: float, left: float
) -> None:
    seconds = time_constant * math.log(REST / left) + 2 * 0.1
    way_in = along(creep(time_constant), seconds)
    low, high = remains(way_in)
    truth = REST - sum(sample.y for sample in way_in[-SIZE:]) / SIZE
    assert 0 <= low <= truth + 0.5
    assert truth - 0.5 <= high


def test_a_load_that_fell_at_once_has_nothing_left_to_go() -> None:
    assert remains(along(lambda t: 0.0 if t < 1.0 else REST, 2.0)) == (0.0, 0.0)


def test_a_creep_that_is_long_over_leaves_hardly_anything() -> None:
    low, high = remains(along(creep(0.3), 5.0))
    assert (low, high) == (0.0, 0.0)


def test_an_even_pour_shows_no_sign_of_an_end() -> None:
    _, high = remains(along(lambda t: 4.0 * t, 12.0))
    assert high > 10


def pour_that_ends(still: float) -> list[Sample]:
    """Four divisions a second for fifteen seconds, then stillness."""
    return along(lambda t: 4.0 * min(t, 15.0), 15.0 + still)


def test_a_pour_that_ended_is_known_by_a_long_level() -> None:
    _, high = remains(pour_that_ends(still=6.0), size=56)
    assert high < 2.0


def test_a_short_level_after_a_pour_proves_nothing() -> None:
    _, high = remains(pour_that_ends(still=1.0), size=6)
    assert high > 10


def test_what_comes_from_above_remains_below() -> None:
    low, high = remains(along(creep(1.0, start=2 * REST), 1.0 * math.log(REST / 3)))
    assert high < low <= 0


def test_noise_alone_is_no_way_in() -> None:
    low, high = remains(along(lambda t: REST + (1 if round(10 * t) % 2 else -1), 4.0), noise=1.0)
    assert (low, high) == (0.0, 0.0)
