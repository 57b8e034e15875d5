"""A fill that is weighed in lots: its sum, and how far its rounding may reach."""

from __future__ import annotations

from decimal import Decimal
from math import sqrt

import numpy as np
import pytest
from uncertainties import ufloat

from kiosk.estimating.count_key import CountInput, CountKey, Lot, Refused, Why, count_key
from kiosk.estimating.live_count import live_count
from kiosk.estimating.uncertainty import steps_off

SAMPLES = (Decimal("5.2"), Decimal("5.3"), Decimal("5.1"))


def in_lots(*lots: tuple[str, str]) -> CountInput:
    """Lentils; the first lot is the plain fill."""
    (filled, empty), *others = lots
    return CountInput(
        pieces=100,
        samples=SAMPLES,
        filled=Decimal(filled),
        empty=Decimal(empty),
        more_lots=tuple(Lot(filled=Decimal(full), empty=Decimal(bare)) for full, bare in others),
        readability=Decimal("0.1"),
    )


def key(*lots: tuple[str, str]) -> CountKey:
    made = count_key(in_lots(*lots))
    assert isinstance(made, CountKey), made
    return made


def test_the_lots_add_up() -> None:
    assert key(("194.0", "90.0"), ("246.1", "90.1")).count == key(("260.0", "0.0")).count == 5000


def test_one_lot_is_what_it_always_was() -> None:
    assert steps_off(1) == 1.0


@pytest.mark.parametrize("lots", [1, 2, 3, 7])
def test_the_rounding_spreads_as_its_readings_do(lots: int) -> None:
    # Every reading uniform over a step; the container is one and the same, so is its rounding.
    step = 0.1
    uniform = step / sqrt(12)
    empty = ufloat(90, uniform)
    total = sum(ufloat(190, uniform) - empty for _ in range(lots))
    triangle = sqrt(6)  # from its standard deviation to its end, as for a single lot
    assert steps_off(lots) * step == pytest.approx(triangle * total.std_dev)


def test_the_same_fill_in_lots_is_known_less_well() -> None:
    parts = [key(("200.0", "90.0"), ("200.0", "90.0")), key(("310.0", "90.0"))]
    assert parts[0].budget.fill_rounding == pytest.approx(sqrt(3) * parts[1].budget.fill_rounding)
    assert parts[0].budget.pieces == parts[1].budget.pieces


@pytest.mark.parametrize("lots", [2, 5])
def test_sums_of_lots_lie_within_their_steps(lots: int) -> None:
    # A container anywhere between two steps, and full ones too: 95 of 100 sums are within reach.
    rng = np.random.default_rng(11)
    empty = rng.uniform(0, 1, (4_000, 1))
    loads = rng.uniform(100, 900, (4_000, lots))
    shown = np.floor(empty + loads + 0.5) - np.floor(empty + 0.5)
    off = np.abs(shown.sum(axis=1) - loads.sum(axis=1))
    assert 0.95 <= np.mean(off <= steps_off(lots)) <= 1.0
    assert np.mean(off <= 0.6 * steps_off(lots)) < 0.95


def test_the_live_count_of_lots_is_the_key_of_lots() -> None:
    given = in_lots(("194.0", "90.0"), ("246.1", "90.1"))
    live, made = live_count(given.measured(), given.net, lots=2), count_key(given)
    assert live is not None
    assert isinstance(made, CountKey)
    assert (live.count, live.low, live.high) == (made.count, made.low, made.high)


def test_a_lot_with_nothing_in_it_is_refused() -> None:
    made = count_key(in_lots(("194.0", "90.0"), ("90.0", "90.0")))
    assert isinstance(made, Refused)
    assert made.why is Why.EMPTY_FILL
