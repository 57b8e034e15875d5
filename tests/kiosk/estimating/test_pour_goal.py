"""How far a pour is from its goal."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kiosk.estimating.live_count import live_count
from kiosk.estimating.pour_goal import (
    AS_IT_COMES,
    BANDS,
    PourGoal,
    Stand,
    fill_mass,
    goal_named,
    way_to,
)
from kiosk.estimating.samples import Samples

LENTILS = Samples(  # 0.035 g a piece
    pieces=100,
    masses=(Decimal("3.5"), Decimal("3.6"), Decimal("3.4")),
    readability=Decimal("0.1"),
)
HIGH = BANDS[2]


def test_the_bands_of_the_event() -> None:
    assert [(band.low, band.high) for band in BANDS] == [(100, 999), (1000, 9999), (12000, 20000)]


@pytest.mark.parametrize("name", [None, AS_IT_COMES])
def test_as_it_comes_is_no_goal(name: str | None) -> None:
    assert goal_named(name) is None


def test_a_number_is_met_within_two_per_cent() -> None:
    assert goal_named("1500") == PourGoal(name="1500", low=1470, high=1530)
    assert goal_named("7") == PourGoal(name="7", low=7, high=7)


def test_another_name_is_no_goal() -> None:
    with pytest.raises(ValueError, match="huge"):
        goal_named("huge")


@pytest.mark.parametrize(
    ("net", "stand"),
    [("379.0", Stand.BEFORE), ("420.0", Stand.INSIDE), ("700.0", Stand.INSIDE),
     ("700.1", Stand.PAST), ("0.0", Stand.BEFORE)],
)  # fmt: skip
def test_where_a_pour_stands(net: str, stand: Stand) -> None:
    way = way_to(HIGH, LENTILS, Decimal(net))
    assert way is not None
    assert way.stand is stand


def test_the_way_is_rounded_to_what_the_interval_allows() -> None:
    # 41 g are missing of 420, whose interval is some 33 g to either side: steps of 20 g
    way = way_to(HIGH, LENTILS, Decimal("379.0"))
    assert way is not None
    assert way.grams == 60


def test_a_finer_count_tells_a_finer_way() -> None:
    fine = Samples(
        pieces=500,
        masses=tuple(map(Decimal, ("17.50", "17.51", "17.49", "17.50", "17.50"))),
        readability=Decimal("0.01"),
    )
    way = way_to(HIGH, fine, Decimal("379.00"))
    assert way is not None
    assert Decimal(41) <= way.grams < Decimal("41.5")


@given(net=st.decimals(min_value=0, max_value=900, places=1))
def test_only_inside_is_there_nothing_to_go(net: Decimal) -> None:
    way, live = way_to(HIGH, LENTILS, net), live_count(LENTILS, net)
    assert way is not None
    count = live.count if live else 0
    assert (way.stand is Stand.INSIDE) == (HIGH.low <= count <= HIGH.high)
    assert (way.grams == 0) == (way.stand is Stand.INSIDE)


def test_one_sample_alone_tells_no_way() -> None:
    one = Samples(pieces=100, masses=(Decimal("3.5"),), readability=Decimal("0.1"))
    assert way_to(HIGH, one, Decimal(98)) is None


def test_what_the_fewest_pieces_weigh() -> None:
    assert fill_mass(HIGH, LENTILS) == 420
