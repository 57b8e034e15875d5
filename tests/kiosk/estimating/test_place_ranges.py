from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from itertools import permutations
from math import sqrt
from statistics import NormalDist

import numpy as np
import pytest
from scipy.stats import rankdata

from kiosk.estimating.place_ranges import (
    DRAWS,
    Floats,
    TaskAnswers,
    _rank,
    drawn_totals,
    place_ranges,
)
from kiosk.estimating.standings import Answers, Key, Standing, standings
from kiosk.settings import Over, Rules, Task
from tests.helpers.rounds import crowd, keys, perfect

RULES = Rules()
ONE_KEY = {Task.COUNT_MIDDLE: "5"}  # 4000 pieces, 95 % sure to 200


def ranges(found: list[Standing]) -> dict[str, tuple[int, int]]:
    return {row.team: (row.place_low, row.place_high) for row in found}


def task(*ratios: float, half_width: float = 0.05, one_error_each: bool = False) -> TaskAnswers:
    return TaskAnswers(
        ratios=tuple(map(Fraction, ratios)), half_width=half_width, one_error_each=one_error_each
    )


def totals(*tasks: TaskAnswers, over: Over = Over.MIRRORED, draws: int = DRAWS) -> Floats:
    return np.vstack([piece.copy() for piece in drawn_totals(tasks, over, draws=draws, seed=1)])


def test_without_uncertainty_every_place_is_sure() -> None:
    found = standings(keys(), crowd(50), Rules(decimals=3), draws=20)
    assert [(row.place_low, row.place_high) for row in found] == [
        (row.place, row.place) for row in found
    ]


@pytest.mark.parametrize(("under", "over"), [(0.98, 1.01), (0.99, 1.02), (0.97, 1.04)])
def test_opposite_sides_of_one_key_swap_as_often_as_the_normal_says(
    under: float, over: float
) -> None:
    # Under: 100 u/f, over: 100 (2 - o/f) with the key off by the factor f; under wins if
    # f < (u + o)/2.
    seen = totals(task(under, over))
    expected = NormalDist(1, 0.05 / 1.959964).cdf((under + over) / 2)
    share = np.mean(seen[:, 0] > seen[:, 1])
    assert share == pytest.approx(expected, abs=4 * sqrt(expected * (1 - expected) / DRAWS))


@pytest.mark.parametrize(
    ("over", "heron", "wren"),
    [
        ("4100", (1, 2), (1, 2)),  # the middle is 4000: one is as likely first as the other
        ("4400", (1, 2), (1, 2)),  # the middle is 4150: Wren is first in 7.1 %
        ("4600", (1, 1), (2, 2)),  # the middle is 4250: Wren is first in 0.7 %, less than 2.5 %
    ],
)
def test_two_teams_on_opposite_sides_are_safe_once_the_key_hardly_reaches_between_them(
    over: str, heron: tuple[int, int], wren: tuple[int, int]
) -> None:
    teams = [perfect("Heron", count_middle="3900"), perfect("Wren", count_middle=over)]
    assert ranges(standings(keys(ONE_KEY), teams, RULES)) == {"Heron": heron, "Wren": wren}


def test_on_the_same_side_the_order_never_changes() -> None:
    seen = totals(task(0.7, 0.75, 0.72))
    assert (seen[:, 1] > seen[:, 2]).all()
    assert (seen[:, 2] > seen[:, 0]).all()


def test_one_draw_of_a_key_is_the_same_for_every_team() -> None:
    seen = totals(task(0.9, 0.9, 0.45))
    assert (seen[:, 0] == seen[:, 1]).all()
    assert seen[:, 2] == pytest.approx(seen[:, 0] / 2)


def test_each_cup_has_an_error_of_its_own() -> None:
    seen = totals(task(0.8, 0.8, one_error_each=True))
    assert np.std(seen[:, 0]) == pytest.approx(80 * 0.05 / 1.96, rel=0.05)
    assert abs(np.corrcoef(seen.T)[0, 1]) < 4 / sqrt(DRAWS)


def test_only_the_mass_has_one_error_each() -> None:
    teams = [perfect(name, mass="90", count_low="700") for name in ("Heron", "Wren")]
    assert ranges(standings(keys({Task.COUNT_LOW: "9"}), teams, RULES)) == {
        "Heron": (1, 1), "Wren": (1, 1),
    }  # fmt: skip
    assert ranges(standings(keys({Task.MASS: "1"}), teams, RULES)) == {
        "Heron": (1, 2), "Wren": (1, 2),
    }  # fmt: skip


def test_half_width_is_that_of_95_per_cent() -> None:
    seen = totals(task(0.5, half_width=0.02), draws=20_000)
    inside = np.abs(50 / seen[:, 0] - 1) <= 0.02
    assert np.mean(inside) == pytest.approx(0.95, abs=4 * sqrt(0.95 * 0.05 / 20_000))


def test_draws_are_scored_without_rounding() -> None:
    # 2000 and 2001 of 4000 both show 50.0
    teams = [perfect("Heron", count_middle="2000"), perfect("Wren", count_middle="2001")]
    found = standings(keys(), teams, RULES)
    assert [row.place for row in found] == [1, 1]
    assert ranges(found) == {"Heron": (2, 2), "Wren": (1, 1)}


def test_exact_ties_share_the_better_place_whatever_the_scores_are_made_of() -> None:
    # Sevenths in any order: sums of floats would differ in their last digit.
    boxes = (Task.VOLUME_1, Task.VOLUME_2, Task.VOLUME_3)
    same = keys() | dict.fromkeys(boxes, Key(actual=Decimal(7), half_width_percent=Decimal(0)))
    teams = [
        Answers(team=str(order), estimates=dict(zip(boxes, map(Decimal, order), strict=True)))
        for order in permutations((1, 3, 6))
    ]
    found = standings(same, [*teams, Answers(team="Teal", estimates={})], RULES, draws=40)
    assert set(ranges(found[:-1]).values()) == {(1, 1)}
    assert ranges(found[-1:]) == {"Teal": (7, 7)}


def test_nothing_for_an_estimate_over_a_drawn_key_if_the_rules_say_so() -> None:
    seen = totals(task(1.0), over=Over.ZERO)
    assert np.mean(seen[:, 0] == 0) == pytest.approx(0.5, abs=4 * 0.5 / sqrt(DRAWS))
    assert seen.max() <= 100


def test_a_very_uncertain_key_is_never_zero_or_less() -> None:
    seen = totals(task(0.001, half_width=0.999))
    assert (seen > 0).all()


def test_the_same_round_has_the_same_ranges() -> None:
    teams = crowd(40)
    assert standings(keys("4"), teams, RULES) == standings(keys("4"), teams, RULES)


def test_another_seed_draws_otherwise() -> None:
    tasks = [task(0.9, 1.05)]
    first, second = (next(drawn_totals(tasks, Over.MIRRORED, draws=9, seed=seed)).copy()
                     for seed in (1, 2))  # fmt: skip
    assert (first != second).all()


def test_quantiles_are_numpys_inverted_cdf() -> None:
    rng = np.random.default_rng(5)
    tasks = [task(*rng.normal(1, 0.05, 70).tolist()), task(*rng.normal(1, 0.05, 70).tolist())]
    drawn = totals(*tasks)
    seen = np.array([rankdata(-row, method="min") for row in drawn])
    low, high = place_ranges(tasks, Over.MIRRORED, seed=1)
    expected = np.quantile(seen, [0.025, 0.975], axis=0, method="inverted_cdf")
    assert [low.tolist(), high.tolist()] == expected.astype(int).tolist()


def test_places_in_a_draw_agree_with_ranks() -> None:
    rng = np.random.default_rng(6)
    drawn = rng.integers(0, 30, (50, 40)).astype(float)
    expected = np.array([rankdata(-row, method="min") for row in drawn])
    places = np.empty(drawn.shape, dtype=np.uint16)
    _rank(drawn, places)
    assert (places == expected).all()


def test_many_teams_do_not_take_many_times_the_memory() -> None:
    crowded = [task(*[0.9] * 3000)]
    drawn = drawn_totals(crowded, Over.MIRRORED, draws=DRAWS, seed=1)
    pieces = [piece.size for piece in drawn]
    assert max(pieces) <= 100_000
    assert sum(pieces) == 3000 * DRAWS
