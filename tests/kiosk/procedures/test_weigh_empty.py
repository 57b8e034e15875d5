"""Weighing the empty cup: the straight way and every wrong turn."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.evidence import Source
from kiosk.procedures.pan_memory import Hindrance, PanMemory
from kiosk.procedures.procedure import NotOfferedError, Person, WeighAgain
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.records.entries import CupTaken
from tests.helpers.pan import (
    BELOW_ZERO,
    DISTURBED,
    EMPTY,
    LOST,
    PLACED,
    REMOVED,
    TOO_HEAVY,
    feed,
    memory,
    press,
    settled,
    surroundings,
)

S = WeighEmptyState


def empty_cup(*, pan: PanMemory | None = None, others_out: bool = False) -> WeighEmpty:
    return WeighEmpty(
        surroundings(),
        number=7,
        team="Heron",
        material="rice",
        others_out=others_out,
        pan=pan or PanMemory(),
    )


def test_a_resting_cup_is_kept_under_its_number_with_its_evidence() -> None:
    procedure = empty_cup()
    (cup,) = feed(procedure, PLACED, settled("12.3"))
    assert isinstance(cup, CupTaken)
    assert (cup.number, cup.team, cup.material) == (7, "Heron", "rice")
    assert cup.empty.grams == Decimal("12.3")
    assert cup.empty.raw == b"\n 1G 12.3 g \r"
    assert cup.empty.readability == Decimal("0.1")
    assert cup.empty.source is Source.SIMULATED
    assert procedure.state is S.WEIGHED


def test_lifting_the_weighed_cup_frees_the_pan() -> None:
    procedure = empty_cup()
    feed(procedure, PLACED, settled("12.3"), REMOVED, EMPTY)
    assert procedure.state is S.FILL
    feed(procedure, press(Person.GO_ON))
    assert procedure.state is S.NEXT


def test_the_same_cup_is_not_captured_twice() -> None:
    procedure = empty_cup()
    effects = feed(procedure, PLACED, settled("12.3"), settled("12.3"))
    assert len(effects) == 1


def test_a_cup_lifted_too_early_is_asked_for_again() -> None:
    procedure = empty_cup()
    assert feed(procedure, PLACED, REMOVED) == []
    assert procedure.state is S.LIFTED_EARLY
    feed(procedure, EMPTY, PLACED, settled("12.3"))
    assert procedure.state is S.WEIGHED


def test_crumbs_are_no_cup() -> None:
    procedure = empty_cup()
    assert feed(procedure, PLACED, settled("0.8")) == []
    assert procedure.state is S.TOO_LIGHT
    feed(procedure, EMPTY)
    assert procedure.state is S.PUT_ON


def test_a_heavy_cup_is_asked_about_and_kept_on_yes() -> None:
    procedure = empty_cup()
    assert feed(procedure, PLACED, settled("180.0")) == []
    assert procedure.state is S.REALLY_EMPTY
    (cup,) = feed(procedure, press(Person.YES))
    assert isinstance(cup, CupTaken)
    assert cup.empty.grams == Decimal("180.0")


def test_a_heavy_cup_that_is_not_empty_is_taken_away() -> None:
    procedure = empty_cup()
    assert feed(procedure, PLACED, settled("180.0"), press(Person.NO)) == []
    assert procedure.state is S.CLEAR


def test_a_used_load_must_go_before_the_cup_comes() -> None:
    pan = memory(PLACED, settled("50.0"))
    pan.used = True
    procedure = empty_cup(pan=pan)
    assert procedure.state is S.CLEAR
    feed(procedure, EMPTY)
    assert procedure.state is S.PUT_ON


def test_a_cup_put_on_early_is_judged_from_fresh_readings() -> None:
    procedure = empty_cup(pan=memory(PLACED, settled("12.3")))
    assert procedure.take_effects() == [WeighAgain()]
    assert procedure.state is S.SETTLING


def test_with_cups_out_a_loaded_pan_may_hold_one_of_them() -> None:
    procedure = empty_cup(pan=memory(PLACED, settled("112.3")), others_out=True)
    assert procedure.state is S.CLEAR


def test_a_balance_lost_under_the_cup_wants_an_empty_pan_first() -> None:
    procedure = empty_cup()
    assert feed(procedure, PLACED, LOST) == []
    assert procedure.state is S.CLEAR
    assert procedure.pan.hindrance is Hindrance.UNPLUGGED
    feed(procedure, EMPTY)
    assert procedure.state is S.PUT_ON
    assert procedure.pan.hindrance is None


def test_overload_and_below_zero_have_their_own_hindrance() -> None:
    procedure = empty_cup()
    feed(procedure, PLACED, TOO_HEAVY)
    assert procedure.pan.hindrance is Hindrance.TOO_HEAVY
    feed(procedure, BELOW_ZERO)
    assert procedure.pan.hindrance is Hindrance.BELOW_ZERO


def test_home_before_the_cup_is_weighed_leaves_nothing_behind() -> None:
    procedure = empty_cup()
    assert feed(procedure, PLACED, press(Person.HOME)) == []
    assert procedure.state is S.LEFT


def test_home_after_it_asks_first() -> None:
    procedure = empty_cup()
    feed(procedure, PLACED, settled("12.3"), press(Person.HOME))
    assert procedure.state is S.LEAVING
    feed(procedure, press(Person.STAY))
    assert procedure.state is S.FILL


def test_the_next_cup_on_the_pan_ends_the_filling_screen() -> None:
    procedure = empty_cup()
    feed(procedure, PLACED, settled("12.3"), EMPTY, PLACED)
    assert procedure.state is S.SOMEBODY_ELSE


def test_a_key_that_is_not_offered_raises() -> None:
    with pytest.raises(NotOfferedError):
        feed(empty_cup(), press(Person.KEEP))


@pytest.mark.parametrize("grams", ["1.0", "180.0"])
def test_what_is_no_empty_cup_is_lifted_rightly(grams: str) -> None:
    procedure = empty_cup()
    feed(procedure, PLACED, settled(grams), DISTURBED, REMOVED)
    assert procedure.state is S.PUT_ON
    feed(procedure, EMPTY, PLACED, REMOVED)
    assert procedure.state is S.LIFTED_EARLY
