from __future__ import annotations

from collections.abc import Sequence

import pytest

from drivers.learning.rests import (
    Rest,
    Series,
    counts_on,
    flickers,
    follows_load,
    moves_with_load,
    rests_of,
)

LOAD = [0.0] * 20 + [12.0, 44.0, 51.0] + [52.0] * 20 + [30.0, 4.0] + [0.0] * 20


def series(values: Sequence[float], step: float = 0.1) -> Series:
    return Series([at / 10 for at in range(len(values))], list(values), step)


def follows(values: Sequence[float], step: float = 0.1) -> bool:
    one = series(values, step)
    return follows_load(one, rests_of(one))


def test_a_load_has_three_rests() -> None:
    assert rests_of(series(LOAD)) == [Rest(0, 20, 0.0), Rest(22, 43, 52.0), Rest(45, 65, 0.0)]


def test_the_deep_of_a_rest_is_its_later_half_without_its_end() -> None:
    assert Rest(20, 40, 0.0).deep == range(30, 37)


def test_a_rest_that_slips_by_a_step_is_one() -> None:
    values = [0.0, 0.1] * 10 + [0.1, 0.2] * 10
    assert len(rests_of(series(values))) == 1


@pytest.mark.parametrize("edge", [2, 20])
def test_the_pan_may_be_empty_for_a_moment_only(edge: int) -> None:
    assert follows([0.0] * edge + [52.0] * 20 + [0.0] * edge)


@pytest.mark.parametrize(
    "values",
    [
        LOAD[:40],
        [0.0] * 60,
        [at % 60 for at in range(200)],
        [10 * at // 100 for at in range(300)],
        [0.0] * 20 + [0.7] * 20 + [0.0] * 20,
        [(at * 7919) % 97 for at in range(200)],
    ],
    ids=["only put on", "nothing", "counter", "clock", "too light", "check"],
)
def test_what_follows_no_load(values: Sequence[float]) -> None:
    assert not follows(values)


def test_seconds_that_pass_the_full_minute_come_back_but_weigh_nothing() -> None:
    seconds = series([(50 + at // 10) % 60 for at in range(1300)], 1.0)
    assert counts_on(seconds)
    assert not follows_load(seconds, rests_of(seconds))


def test_a_load_that_goes_up_slowly_and_down_at_once_does_not_count_on() -> None:
    values = [0.0] * 20 + [float(at) for at in range(1, 53)] + [52.0] * 20 + [0.0] * 20
    assert not counts_on(series(values))
    assert follows(values)


def test_a_load_that_stays_has_moved_but_not_come_back() -> None:
    stays = series(LOAD[:40])
    assert moves_with_load(stays, rests_of(stays))


def test_a_display_that_goes_to_and_fro_flickers() -> None:
    assert flickers(series([0.5 * (at % 3 == 0) for at in range(60)]))
    assert not flickers(series([0.0] * 20 + [52.0] * 20 + [0.0] * 20))
