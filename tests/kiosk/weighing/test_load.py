"""The story of what lies on the pan, told reading by reading and rest by rest."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.weighing.load import Load
from kiosk.weighing.pan_events import PanKind
from kiosk.weighing.settling import Move

BAND, NOISE = Decimal("0.3"), Decimal("0.2")
PLACED, SETTLED, DISTURBED = PanKind.LOAD_PLACED, PanKind.SETTLED, PanKind.DISTURBED
REMOVED, EMPTY = PanKind.LOAD_REMOVED, PanKind.PAN_EMPTY


def shown(load: Load, *grams: str, move: Move | None = None) -> list[PanKind]:
    """Readings in a row, the first of which may have ended a rest."""
    told = []
    for one in grams:
        told += load.shown(Decimal(one), BAND, NOISE, move)
        move = None
    return told


def rested(load: Load, grams: str) -> list[PanKind]:
    return load.rested(Decimal(grams), BAND)


@pytest.fixture
def empty() -> Load:
    load = Load()
    rested(load, "0.0")
    return load


@pytest.fixture
def cup(empty: Load) -> Load:
    """A cup of 12.3 g that has settled."""
    shown(empty, "12.3", "12.3")
    rested(empty, "12.3")
    return empty


def test_a_first_rest_at_zero_is_an_empty_pan() -> None:
    load = Load()
    assert rested(load, "0.3") == [EMPTY]
    assert (load.present, load.gone) == (False, True)


def test_an_empty_pan_is_told_once(empty: Load) -> None:
    assert rested(empty, "0.1") == []


def test_a_small_load_takes_two_readings_to_be_believed(empty: Load) -> None:
    assert shown(empty, "0.6") == []
    assert shown(empty, "0.6") == [PLACED]


def test_one_reading_off_is_noise(empty: Load) -> None:
    assert shown(empty, "0.6", "0.1", "0.6") == []


def test_a_large_load_is_told_at_once(empty: Load) -> None:
    assert shown(empty, "12.3") == [PLACED]
    assert empty.present


def test_what_rests_unannounced_is_placed_and_settled(empty: Load) -> None:
    assert rested(empty, "0.5") == [PLACED, SETTLED]


def test_a_placed_load_settles(empty: Load) -> None:
    shown(empty, "12.3")
    assert rested(empty, "12.3") == [SETTLED]


def test_what_is_added_is_placed(cup: Load) -> None:
    assert shown(cup, "30.0", move=Move.UP) == [PLACED]
    assert rested(cup, "30.0") == [SETTLED]


def test_any_other_move_disturbs(cup: Load) -> None:
    assert shown(cup, "11.0", move=Move.OTHERWISE) == [DISTURBED]


def test_noise_on_a_resting_load_tells_nothing(cup: Load) -> None:
    assert shown(cup, "12.4", "0.0", "0.0") == []


def test_a_load_is_gone_after_two_readings_near_zero(cup: Load) -> None:
    assert shown(cup, "0.1", move=Move.OTHERWISE) == []
    assert shown(cup, "0.0") == [REMOVED]
    assert (cup.present, cup.gone) == (False, False)
    assert rested(cup, "0.0") == [EMPTY]


def test_a_load_that_goes_between_two_rests_is_removed_and_the_pan_empty(cup: Load) -> None:
    assert rested(cup, "0.0") == [REMOVED, EMPTY]


def test_judged_again_it_settles_once_more_without_a_new_load(cup: Load) -> None:
    cup.judge_again()
    assert shown(cup, "12.3") == []
    assert rested(cup, "12.3") == [SETTLED]


def test_judged_again_an_empty_pan_is_told_once_more(empty: Load) -> None:
    empty.judge_again()
    assert shown(empty, "0.1") == []
    assert rested(empty, "0.1") == [EMPTY]
    assert rested(empty, "0.1") == []


@pytest.mark.parametrize("present", [True, False])
def test_what_came_between_is_forgotten_but_for_the_load(cup: Load, present: bool) -> None:
    cup.forget(present=present)
    assert (cup.present, cup.gone) == (present, False)
    assert rested(cup, "12.3") == ([SETTLED] if present else [PLACED, SETTLED])
