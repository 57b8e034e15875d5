from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.estimating.count_key import CountInput, CountKey, count_key
from kiosk.estimating.live_count import live_count
from kiosk.estimating.samples import Samples

LENTILS = Samples(
    pieces=100,
    masses=(Decimal("3.5"), Decimal("3.6"), Decimal("3.5")),
    readability=Decimal("0.1"),
)


def test_it_says_what_the_key_will_say() -> None:
    live = live_count(LENTILS, Decimal("379.0"))
    made = count_key(
        CountInput(
            pieces=100,
            samples=LENTILS.masses,
            filled=Decimal("379.0"),
            readability=LENTILS.readability,
        )
    )
    assert live is not None
    assert isinstance(made, CountKey)
    assert (live.count, live.low, live.high, live.half_width_percent) == (
        made.count,
        made.low,
        made.high,
        made.half_width_percent,
    )


def test_it_counts_what_would_be_refused_as_a_key() -> None:
    live = live_count(LENTILS, Decimal("0.2"))
    assert live is not None
    assert (live.count, live.low, live.high) == (6, 2, 9)


@pytest.mark.parametrize("net", ["-3.0", "0.0"])
def test_nothing_inside_is_no_count(net: str) -> None:
    assert live_count(LENTILS, Decimal(net)) is None


def test_less_than_half_a_piece_is_no_count() -> None:
    bolts = Samples(pieces=10, masses=(Decimal(120), Decimal(121)), readability=Decimal(1))
    assert live_count(bolts, Decimal(5)) is None


def test_a_count_never_stands_without_its_interval() -> None:
    one = Samples(pieces=100, masses=(Decimal("3.5"),), readability=Decimal("0.1"))
    assert live_count(one, Decimal(98)) is None
