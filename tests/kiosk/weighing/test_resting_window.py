"""Which stretch of readings rests, each demand by itself."""

from __future__ import annotations

import math

import pytest

from kiosk.weighing.resting_window import LEAST_READINGS, Demands, Window, resting_window
from kiosk.weighing.trace import Sample
from tests.helpers.samples import along, samples

KNOWN_QUIET = Demands(noise=0.1)
NOISY_YS = [500, 502, 499, 501, 498, 500, 501, 499, 502, 498, 500, 501, 499, 500, 502, 498] * 2


def window(ys: list[float], demands: Demands = KNOWN_QUIET, every: float = 0.1) -> Window | None:
    return resting_window(samples(ys, every=every), demands)


def readings_needed(ys: list[float], demands: Demands, every: float = 0.1) -> int:
    """How many of the readings it takes until they rest."""
    return next(n for n in range(1, len(ys) + 1) if window(ys[:n], demands, every))


def test_five_equal_readings_rest() -> None:
    rest = window([500.0] * 5)
    assert rest is not None
    assert (rest.size, rest.mean, rest.scatter) == (5, 500.0, 0.0)


def test_four_are_too_few() -> None:
    assert window([500.0] * (LEAST_READINGS - 1)) is None


def test_many_in_no_time_are_too_short() -> None:
    assert readings_needed([500.0] * 60, KNOWN_QUIET, every=0.02) == 19


def test_a_display_between_two_values_rests() -> None:
    rest = window([500.0, 501.0, 500.0, 501.0, 500.0])
    assert rest is not None
    assert rest.shown.y in (500.0, 501.0)


def test_what_is_kept_is_the_shown_reading_nearest_to_the_mean() -> None:
    rest = window([float(y) for y in NOISY_YS], Demands(noise=1.4))
    assert rest is not None
    assert rest.shown.y == round(rest.mean)


def test_the_newest_readings_count_not_those_before() -> None:
    rest = window([0.0] * 20 + [500.0] * 9)
    assert rest is not None
    assert rest.mean == 500.0


def test_a_climb_does_not_rest() -> None:
    assert window([float(y) for y in range(400, 440)]) is None


def test_a_slow_climb_by_single_divisions_does_not_rest() -> None:
    assert resting_window(along(lambda t: 300 + 8 * t, 6.0), KNOWN_QUIET) is None


def test_scatter_beyond_what_the_balance_is_known_for_does_not_rest() -> None:
    rough = [float(y) for y in NOISY_YS]
    assert window(rough, Demands(noise=0.3)) is None
    assert window(rough, Demands(noise=1.4)) is not None


def test_doubt_lets_the_noise_have_grown() -> None:
    rough = [float(y) for y in NOISY_YS]
    assert window(rough, Demands(noise=0.3, doubt=3.0)) is not None


def test_a_noisy_balance_takes_more_readings() -> None:
    calm = [500.0] * 40
    assert readings_needed(calm, Demands(noise=1.5)) > readings_needed(calm, KNOWN_QUIET)


def test_a_rest_rougher_than_known_takes_twice_as_long() -> None:
    rough = [float(y) for y in NOISY_YS]
    assert readings_needed(rough, Demands(noise=0.8)) > readings_needed(rough, Demands(noise=1.4))


@pytest.mark.parametrize(("word", "takes"), [(-1, 4), (0, 5), (4, 9)])
def test_the_balances_own_word_adds_and_takes_off(word: int, takes: int) -> None:
    assert readings_needed([500.0] * 40, Demands(noise=0.1, more_readings=word)) == takes


def test_values_that_come_more_than_once_count_once() -> None:
    asked_too_often = Demands(noise=0.1, repeat_interval=0.4)
    assert readings_needed([500.0] * 40, asked_too_often) == 13


def test_a_gap_between_readings_begins_a_new_stretch() -> None:
    before, after = samples([500.0] * 4), samples([500.0] * 4, start=3.0)
    assert resting_window([*before, *after], KNOWN_QUIET) is None


def leaned_on(seconds: float, quiet: float, swing: float = 8.0) -> list[Sample]:
    """A hand that trembles about 500 divisions for so long, and then is quiet."""
    return along(
        lambda t: (
            0.0 if t < 1.0 else 500 + (swing * math.sin(17 * t) if t < 1.0 + seconds else 0.0)
        ),
        1.0 + seconds + quiet,
    )


def test_what_trembled_must_be_still_for_twice_as_long() -> None:
    assert resting_window(leaned_on(1.5, 2.0), KNOWN_QUIET) is None
    assert resting_window(leaned_on(1.5, 3.6), KNOWN_QUIET) is not None


def test_what_trembled_for_a_moment_need_not_be_still_for_longer() -> None:
    assert resting_window(leaned_on(0.4, 0.5), KNOWN_QUIET) is not None
