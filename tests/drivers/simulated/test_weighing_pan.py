from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest

from drivers.simulated.profile import Profile
from drivers.simulated.tracks import Hand
from drivers.simulated.weighing_pan import Sample, WeighingPan
from tests.helpers.simulated_desk import quiet_profile

AT_ONCE = Hand(landing_seconds=(1e-6, 1e-6), press_share=(0.0, 0.0), release_seconds=(1e-6, 1e-6))


def run(pan: WeighingPan, seconds: float, start: float = 0.0) -> list[Sample]:
    return pan.advance(start + seconds + 1e-9)


def test_settles_on_the_mass() -> None:
    pan = WeighingPan(quiet_profile())
    pan.load(112.34, 0.0)

    assert run(pan, 5)[-1].grams == pytest.approx(112.34, abs=1e-6)


def test_default_profile_rests_about_a_second_after_the_hand() -> None:
    pan = WeighingPan(Profile())
    pan.load(112.3, 0.0)
    samples = run(pan, 4)
    hand_gone = next(s.at for s in samples if not s.touched)
    at_rest = next(s.at for s in samples if not s.touched and s.off_rest <= 0.05)

    assert 0.3 <= at_rest - hand_gone <= 1.2


def test_a_bare_pan_rings_like_a_damped_spring() -> None:
    zeta, hertz = 0.2, 4.0
    pan = WeighingPan(
        quiet_profile(ring_hz=hertz, damping=zeta, filter_seconds=0.0, readings_per_second=50),
        hand=AT_ONCE,
    )
    pan.load(100.0, 0.0)
    w = 2 * math.pi * hertz
    wd = w * math.sqrt(1 - zeta**2)

    for sample in run(pan, 2):
        t = sample.at - 1e-3  # the shortest filter delays by its time constant
        wave = math.cos(wd * t) + zeta * w / wd * math.sin(wd * t)
        assert sample.grams == pytest.approx(100 * (1 - math.exp(-zeta * w * t) * wave), abs=0.1)


def test_the_filter_follows_with_its_time_constant() -> None:
    pan = WeighingPan(quiet_profile(ring_hz=500, damping=1.0, filter_seconds=0.4), hand=AT_ONCE)
    pan.load(100.0, 0.0)

    for sample in run(pan, 3):
        t = sample.at - 2 / (2 * math.pi * 500)  # the stiff spring's own delay
        assert sample.grams == pytest.approx(100 * (1 - math.exp(-t / 0.4)), abs=0.01)


def test_ringing_decays() -> None:
    pan = WeighingPan(quiet_profile(damping=0.1))
    pan.load(500.0, 0.0)
    off = [s.off_rest for s in run(pan, 6) if not s.touched]
    each_half_second = [max(off[k : k + 5]) for k in range(0, 25, 5)]

    assert each_half_second[0] > 1.0
    assert all(later < earlier / 3 for earlier, later in pairwise(each_half_second))


def test_the_result_does_not_depend_on_how_time_is_cut_up() -> None:
    whole, cut = WeighingPan(Profile()), WeighingPan(Profile())
    for pan in (whole, cut):
        pan.load(50.0, 0.31)
    often = [s for k in range(1, 401) for s in cut.advance(k * 0.01)]
    once = whole.advance(4.0)

    assert [s.grams for s in often] == pytest.approx([s.grams for s in once], abs=1e-9)


@pytest.mark.parametrize("seeds", [(7, 7, True), (7, 8, False)])
def test_the_seed_decides_every_reading(seeds: tuple[int, int, bool]) -> None:
    first, second = (WeighingPan(Profile(seed=seed)) for seed in seeds[:2])
    for pan in (first, second):
        pan.load(80.0, 0.0)
        pan.lean(20.0, 8.0, 1.0)
        pan.let_go(2.0)

    assert (run(first, 3) == run(second, 3)) is seeds[2]


def test_noise_has_the_stated_spread() -> None:
    pan = WeighingPan(Profile(noise=0.5, readings_per_second=25))
    grams = np.array([s.grams for s in run(pan, 59)])

    assert grams.std() == pytest.approx(0.05, rel=0.06)  # 1475 readings: 2 % standard error
    assert abs(np.corrcoef(grams[:-1], grams[1:])[0, 1]) < 0.1


def test_air_wanders_with_the_stated_spread() -> None:
    pan = WeighingPan(quiet_profile(air=2.0))
    grams = np.array([s.grams for k in range(60) for s in pan.advance(50.0 * (k + 1))])

    assert grams.std() == pytest.approx(0.2, rel=0.15)
    assert np.corrcoef(grams[:-1], grams[1:])[0, 1] > 0.7


def test_drift_adds_up() -> None:
    pan = WeighingPan(quiet_profile(drift_g_per_minute=1.5))

    assert run(pan, 40)[-1].grams == pytest.approx(1.0, abs=1e-6)


def test_a_hand_presses_on_what_it_puts_down() -> None:
    pan = WeighingPan(
        quiet_profile(damping=1.0, readings_per_second=50),
        hand=Hand(landing_seconds=(0.2, 0.2), press_share=(0.3, 0.3), release_seconds=(0.4, 0.4)),
    )
    pan.load(100.0, 0.0)
    samples = run(pan, 3)

    assert 105 < max(s.grams for s in samples) < 130
    assert next(s.at for s in samples if not s.touched) == pytest.approx(0.6, abs=0.021)


def test_a_pour_rises_at_its_rate() -> None:
    pan = WeighingPan(quiet_profile())
    pan.pour_to(100.0, 20.0, 0.0)
    samples = run(pan, 8)
    rising = [s for s in samples if 2.0 <= s.at <= 4.9]
    slopes = np.diff([s.grams for s in rising]) * 10

    assert slopes == pytest.approx(np.full(len(slopes), 20.0), rel=0.02)
    assert all(s.touched for s in rising)
    assert samples[-1].grams == pytest.approx(100.0, abs=1e-6)


def test_a_leaning_hand_is_never_at_rest_until_it_goes() -> None:
    pan = WeighingPan(quiet_profile())
    pan.lean(60.0, 8.0, 0.0)
    leaning = [s for s in run(pan, 20) if s.at > 2]
    pan.let_go(20.0)

    assert all(s.touched for s in leaning)
    assert np.mean([s.grams for s in leaning]) == pytest.approx(60.0, abs=1.0)
    assert 0.2 < np.std([s.grams for s in leaning]) < 0.8  # tremor 0.8 g before the filter
    assert pan.advance(24.0)[-1].grams == pytest.approx(0.0, abs=1e-6)


def test_a_touch_between_readings_starts_at_its_own_time() -> None:
    pan = WeighingPan(quiet_profile(ring_hz=500, damping=1.0, filter_seconds=0.0), hand=AT_ONCE)
    pan.pour_to(100.0, 100.0, 0.25)

    assert [s.grams for s in run(pan, 0.6)] == pytest.approx([0, 0, 5, 15, 25, 35], abs=0.2)


def test_a_long_gap_is_crossed_without_living_through_it() -> None:
    pan = WeighingPan(quiet_profile())
    pan.load(100.0, 1.0)
    samples = pan.advance(1e6)

    assert 100 <= len(samples) <= 111  # a second before the touch, ten at the end
    assert samples[-1].grams == pytest.approx(100.0, abs=1e-6)
    assert samples[-1].at == pytest.approx(1e6, abs=0.11)


def test_time_never_goes_back() -> None:
    pan = WeighingPan(quiet_profile())
    run(pan, 5)

    assert pan.advance(3.0) == []


@pytest.mark.parametrize(
    ("knobs", "says"),
    [
        ({"readability": "0.3"}, "1, 2 or 5"),
        ({"readability": "0"}, "1, 2 or 5"),
        ({"readability": "1", "capacity": "50"}, "hundred divisions"),
        ({"damping": 0.0}, "above zero"),
        ({"noise": -1.0}, "negative"),
    ],
)
def test_a_profile_that_makes_no_sense_is_refused(knobs: dict[str, str], says: str) -> None:
    with pytest.raises(ValueError, match=says):
        quiet_profile(**knobs)
