from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from math import sqrt

import GTC
import numpy as np
import pytest
from GTC import type_a
from uncertainties import ufloat

from kiosk.estimating.samples import Samples
from kiosk.estimating.uncertainty import (
    NORMAL_FACTOR,
    Budget,
    Part,
    Sampling,
    budget,
    pooled,
    t_factor,
)

# NIST Technical Note 1297 (1994), Table B.1, column 95 %
TABLE_B1 = {
    1: 12.71, 2: 4.30, 3: 3.18, 4: 2.78, 5: 2.57, 6: 2.45, 7: 2.36, 8: 2.31, 9: 2.26, 10: 2.23,
    20: 2.09, 50: 2.01,
}  # fmt: skip

THREE = Sampling(
    pieces=100,
    number=3,
    mean=50.0,
    deviation=0.2,
    dof=2,
    readability=0.1,
    averaging=True,
    in_fill=False,
)


@pytest.mark.parametrize(("dof", "published"), TABLE_B1.items())
def test_t_factors_are_the_published_ones(dof: int, published: float) -> None:
    assert round(t_factor(dof), 2) == published


def test_many_degrees_of_freedom_end_in_the_normal_factor() -> None:
    # NIST TN 1297, Table B.1, last row: 1.960
    assert round(NORMAL_FACTOR, 3) == 1.960
    assert t_factor(20_000) == pytest.approx(NORMAL_FACTOR, abs=2e-4)


def test_no_degree_of_freedom_has_no_factor() -> None:
    with pytest.raises(ValueError, match="at least one degree"):
        t_factor(0)


def test_three_values_give_the_textbook_interval() -> None:
    # Mercury determination; limits as printed by the Boost.Math students_t example, which cites
    # Miller & Miller, Statistics for Analytical Chemistry, 3rd ed., pp. 54-55
    samples = Samples(
        pieces=1,
        masses=(Decimal("38.9"), Decimal("37.4"), Decimal("37.1")),
        readability=Decimal("1e-9"),
    )
    sampling = samples.sampling()
    assert sampling is not None
    reach = budget(sampling, None).half_width * float(samples.mean)
    assert float(samples.mean) - reach == pytest.approx(35.40438, abs=1e-5)
    assert float(samples.mean) + reach == pytest.approx(40.19562, abs=1e-5)


def reference_count() -> Samples:
    return Samples(
        pieces=100,
        masses=(Decimal("50.1"), Decimal("49.8"), Decimal("50.2")),
        readability=Decimal("0.1"),
    )


def test_the_part_of_the_pieces_is_that_of_gtc() -> None:
    # The whole count made by GTC: every displayed value uniform over a step, tare subtracted.
    # N 1998.6676, u 5.0711 without the scatter of the fill's own pieces.
    samples = reference_count()
    of_sample = type_a.estimate([float(mass) for mass in samples.masses])
    step = GTC.type_b.uniform(0.05)
    rounded = [GTC.ureal(0, step) for _ in range(4)]
    mean = of_sample + rounded[0] - rounded[1]
    net = (1150.0 + rounded[2]) - (150.0 + rounded[3])
    count = 100 * net / mean
    assert GTC.value(count) == pytest.approx(1998.6676, abs=1e-4)
    assert GTC.uncertainty(count) == pytest.approx(5.0711, abs=1e-4)

    sampling = samples.sampling()
    assert sampling is not None
    ours = budget(sampling, None).pieces / t_factor(2) * GTC.value(count)
    assert ours == pytest.approx(GTC.component(count, of_sample), rel=1e-9)


def spread(sampling: Sampling, net: float) -> float:
    """The relative standard uncertainty that the pieces bring, by ``uncertainties``.

    The masses of the samples and of the pieces that were not counted are independent; whether the
    fill is the counted pieces and the rest, or other pieces, makes the difference.
    """
    true = sampling.pieces * net / sampling.mean
    of_piece = sampling.deviation / sqrt(sampling.pieces)
    counted = [ufloat(sampling.mean, sampling.deviation) for _ in range(sampling.number)]
    total = sum(counted)
    if sampling.in_fill:
        rest = true - sampling.number * sampling.pieces
        fill = total + ufloat(net - total.nominal_value, of_piece * sqrt(rest))
    else:
        fill = ufloat(net, of_piece * sqrt(true))
    count = sampling.pieces * fill / (total / sampling.number)
    return float(count.std_dev / count.nominal_value)


@pytest.mark.parametrize("in_fill", [False, True])
@pytest.mark.parametrize("net", [350.0, 1000.0, 7000.0])
def test_pieces_propagate_as_by_uncertainties(net: float, in_fill: bool) -> None:
    sampling = replace(THREE, in_fill=in_fill)
    part = budget(sampling, net).pieces / t_factor(2)
    assert part == pytest.approx(spread(sampling, net), rel=1e-6)


def test_not_more_than_half_is_taken_off_for_pieces_in_the_fill() -> None:
    sampling = replace(THREE, in_fill=True)
    nearly_all = budget(sampling, 3.2 * THREE.mean).pieces
    assert nearly_all == pytest.approx(t_factor(2) * 0.2 / 50 * sqrt(1 / 6))


def test_pieces_counted_more_than_once_take_nothing_off() -> None:
    sampling = replace(THREE, in_fill=True)
    assert budget(sampling, 2 * THREE.mean).pieces == budget(sampling, None).pieces


def test_the_rounding_of_one_tray_never_averages_out() -> None:
    # one reading of the tray and k of the samples, each uniform over a step: (1 + 1/k) d^2/12
    part = budget(replace(THREE, deviation=0.0, number=8), 1e9).sample_rounding
    assert part == pytest.approx(1.96 * 0.1 / 50 * sqrt((1 + 1 / 8) / 12), rel=1e-4)


def test_a_rounding_that_repeats_counts_a_whole_step() -> None:
    parts = budget(replace(THREE, averaging=False), 1000.0)
    assert (parts.sample_rounding, parts.fill_rounding) == pytest.approx((0.1 / 50, 0.1 / 1000))


@pytest.mark.parametrize(("number", "chains"), [(3, 1), (10, 1), (6, 3), (10, 4)])
def test_readings_between_added_samples_cancel(number: int, chains: int) -> None:
    # against simulated readings: chains that all begin with one reading of the tray
    rng = np.random.default_rng(number)
    lengths = [len(part) for part in np.array_split(range(number), chains)]
    tray = rng.uniform(0, 1, 20_000)
    off = np.zeros_like(tray)
    for length in lengths:
        load = rng.normal(30.0, 0.8, (len(tray), length)).sum(axis=1)
        off += np.floor(tray + load + 0.5) - np.floor(tray + 0.5) - load
    averaged = replace(THREE, number=number, chains=chains)
    part = budget(averaged, None).sample_rounding * THREE.mean / THREE.readability
    assert part / NORMAL_FACTOR == pytest.approx(float(np.std(off / number)), rel=0.02)
    limit = budget(replace(averaged, averaging=False), None).sample_rounding
    assert limit * THREE.mean / THREE.readability == pytest.approx(chains / number)
    assert np.abs(off / number).max() <= chains / number


def test_parts_add_as_squares() -> None:
    parts = Budget(pieces=0.02, sample_rounding=0.03, fill_rounding=0.06)
    assert parts.half_width == pytest.approx(0.07)


@pytest.mark.parametrize(
    ("parts", "largest"),
    [
        (Budget(pieces=0.3, sample_rounding=0.2, fill_rounding=0.1), Part.PIECES),
        (Budget(pieces=0.2, sample_rounding=0.3, fill_rounding=0.1), Part.SAMPLE_ROUNDING),
        (Budget(pieces=0.2, sample_rounding=0.1, fill_rounding=0.3), Part.FILL_ROUNDING),
    ],
)
def test_the_largest_part_is_named(parts: Budget, largest: Part) -> None:
    assert parts.dominant is largest


def test_pooling_weighs_by_degrees_of_freedom() -> None:
    # (20 x 0.3^2 + 2 x 0.7^2) / 22
    assert pooled(0.7, 2, 0.3, 20) == pytest.approx(sqrt(2.78 / 22))


def test_a_possible_miscount_is_a_rectangular_error_of_each_sample() -> None:
    # JCGM 100:2008, 4.3.7: limits of +-a are a/sqrt(3); 3 samples of 100, each up to 1 piece off
    parts = budget(replace(THREE, miscount=1), 1000.0)
    assert parts.miscount == pytest.approx(1.96 * (1 / sqrt(3)) / sqrt(3) / 100, rel=1e-4)
    assert budget(THREE, 1000.0).miscount == 0
