from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from math import erf, exp, pi, sqrt

import numpy as np
import pytest

from kiosk.estimating.count_key import CountInput, CountKey, count_key
from kiosk.estimating.samples import RANGE_FACTOR, Samples
from kiosk.estimating.scatter import PriorScatter

TRIED = 800


def samples(*masses: str, step: str = "0.1", prior: float | None = None) -> Samples:
    return Samples(
        pieces=100,
        masses=tuple(map(Decimal, masses)),
        readability=Decimal(step),
        prior=None if prior is None else PriorScatter(relative=prior),
    )


def test_mean_and_deviation() -> None:
    three = samples("3.4", "3.5", "3.6")
    assert (three.mean, three.piece_mass) == (Decimal("3.5"), Decimal("0.035"))
    assert three.deviation == pytest.approx(0.1)


def test_the_thousand_seed_example_of_the_aosa_tutorial() -> None:
    # AOSA Rules, Appendix 4, as explained in a public tutorial: eight hundreds of seeds
    eight = samples(
        *("0.2224", "0.2134", "0.2130", "0.2116", "0.2145", "0.2071", "0.2116", "0.2125"),
        step="0.0001",
    )
    assert float(eight.mean) == 0.2132625
    assert 100 * eight.deviation / float(eight.mean) == pytest.approx(2.014, abs=5e-4)


def test_one_sample_alone_is_worth_nothing() -> None:
    assert samples("3.5").sampling() is None


def test_one_sample_with_a_prior_is_worth_the_prior() -> None:
    sampling = samples("3.5", prior=0.2).sampling()
    assert sampling is not None
    assert (sampling.dof, sampling.deviation) == (20, pytest.approx(0.2 / 10 * 3.5))


def test_two_samples_that_agree_still_scatter_a_little() -> None:
    sampling = samples("3.5", "3.5").sampling()
    assert sampling is not None
    assert sampling.deviation == pytest.approx(0.2 * 0.1)


def test_measured_and_known_scatter_are_pooled() -> None:
    sampling = samples("3.4", "3.5", "3.6", prior=0.2).sampling()
    assert sampling is not None
    assert sampling.dof == 22
    assert sampling.deviation == pytest.approx(sqrt((2 * 0.1**2 + 20 * 0.07**2) / 22))


@pytest.mark.parametrize(
    ("masses", "averaging"),
    [
        (("3.4", "3.5", "3.5"), True),  # 0.58 of a step
        (("3.5", "3.5", "3.5"), False),
        (("3.5", "3.5", "3.5", "3.5", "3.5", "3.5", "3.6"), False),  # 0.38 of a step
        (("3.4", "3.6"), False),  # two readings are too few to tell
    ],
)
def test_rounding_averages_only_where_samples_scatter(
    masses: tuple[str, ...], averaging: bool
) -> None:
    sampling = samples(*masses).sampling()
    assert sampling is not None
    assert sampling.averaging is averaging


def test_added_samples_are_granted_no_averaging_and_no_scatter_of_nothing() -> None:
    added = replace(samples("3.4", "3.5", "3.5"), chains=1).sampling()
    assert added is not None
    assert not added.averaging
    alike = replace(samples("3.5", "3.5", "3.5"), chains=1).sampling()
    assert alike is not None
    assert alike.deviation == pytest.approx(0.02)  # a fifth of a step


def test_the_reading_between_two_samples_may_set_them_apart() -> None:
    # pieces that hardly differ: 2.772 x 0.1 g x sqrt(1/6) = 0.113 g apart, or sqrt(1/4): 0.139 g
    apart = replace(samples("3.38", "3.5", prior=0.0001), readability=Decimal("0.1"))
    assert apart.differ_too_much
    assert not replace(apart, chains=1).differ_too_much


def test_a_scatter_that_known_pieces_cannot_have_is_no_proof_of_averaging() -> None:
    sampling = samples("3.4", "3.5", "3.5", prior=0.005).sampling()
    assert sampling is not None
    assert not sampling.averaging


@pytest.mark.parametrize(("number", "factor"), RANGE_FACTOR.items())
def test_range_factors_are_the_95_percent_points(number: int, factor: float) -> None:
    # The distribution of the range of normal values, integrated here: k phi(x) (P(x)-P(x-q))^(k-1)
    x = np.linspace(-8, 8 + factor, 20_001)
    normal = np.vectorize(lambda value: (1 + erf(value / sqrt(2))) / 2)
    density = np.vectorize(lambda value: exp(-(value**2) / 2) / sqrt(2 * pi))
    inside = number * density(x) * (normal(x) - normal(x - factor)) ** (number - 1)
    assert np.trapezoid(inside, x) == pytest.approx(0.95, abs=1e-4)


def test_samples_that_differ_as_pieces_do_are_fine() -> None:
    assert not samples("3.4", "3.5", "3.6").differ_too_much


def test_a_miscount_shows_against_a_known_scatter() -> None:
    # pieces of 0.5 g that differ by 1 %: one sample of 99 weighs 0.5 g less
    assert samples("50.0", "50.0", "49.5", prior=0.01).differ_too_much


def test_the_same_difference_is_nothing_among_rough_pieces() -> None:
    assert not samples("50.0", "50.0", "49.5", prior=0.2).differ_too_much


def test_without_knowledge_a_gross_difference_still_shows() -> None:
    assert samples("50.0", "50.0", "40.0").differ_too_much


def test_one_step_of_a_coarse_balance_is_no_difference() -> None:
    assert not samples("50", "51", step="1", prior=0.01).differ_too_much


@pytest.mark.parametrize(
    ("masses", "place"),
    [
        (("3.5", "3.6", "4.5"), 2),
        (("2.5", "3.6", "3.5", "3.4"), 0),
        (("3.4", "3.5", "3.6"), None),
        (("3.4", "4.6"), None),
    ],
)
def test_the_farthest_sample_is_named_if_it_can_be(
    masses: tuple[str, ...], place: int | None
) -> None:
    assert samples(*masses).farthest == place


@pytest.mark.parametrize(("slip", "flagged"), [(0, 0.05), (1, 0.83)])
def test_a_miscounted_piece_is_found_as_often_as_the_range_can(slip: int, flagged: float) -> None:
    # One piece of 25 that differ by 5 % is four standard deviations of a sample.
    rng, trials = np.random.default_rng(7), 1000
    nets = rng.normal(12.5, 0.125, (trials, 3))
    nets[:, 0] += 0.5 * slip
    found = sum(
        Samples(
            pieces=25,
            masses=tuple(Decimal(f"{net:.3f}") for net in row),
            readability=Decimal("0.001"),
            prior=PriorScatter(relative=0.05),
        ).differ_too_much
        for row in nets
    )
    assert found / trials == pytest.approx(flagged, abs=0.025)


def test_a_miscount_is_allowed_for_where_known_pieces_differ_too_much() -> None:
    flagged = samples("50.0", "50.0", "49.5", prior=0.01).sampling()
    fine = samples("50.0", "50.1", "49.9", prior=0.01).sampling()
    assert flagged is not None
    assert fine is not None
    assert (flagged.miscount, fine.miscount) == (1, 0)


def test_without_knowledge_a_miscount_is_in_the_samples_own_scatter() -> None:
    sampling = samples("50.0", "50.0", "40.0").sampling()
    assert sampling is not None
    assert sampling.miscount == 0


@pytest.mark.parametrize(("cv", "pieces"), [(0.015, 100), (0.05, 25)])
def test_keys_of_people_who_miscount_cover_too(cv: float, pieces: int) -> None:
    # every tenth sample holds a piece more or less; without the allowance 86 and 87 % hold
    rng = np.random.default_rng(12)
    held = 0
    for _ in range(TRIED):
        slips = np.where(rng.random(3) < 0.1, rng.choice([-1, 1], 3), 0)
        masses = rng.gamma((pieces + slips) / cv**2, 0.4 * cv**2)
        fill = rng.gamma(2000 / cv**2, 0.4 * cv**2)
        key = count_key(
            CountInput(
                pieces=pieces,
                samples=tuple(Decimal(f"{mass:.3f}") for mass in masses),
                filled=Decimal(f"{fill:.3f}"),
                piece_cv_percent=Decimal(str(100 * cv)),
            )
        )
        assert isinstance(key, CountKey)
        held += key.low <= 2000 <= key.high
    assert held / TRIED > 0.93  # 0.945 less two standard deviations of so many trials
