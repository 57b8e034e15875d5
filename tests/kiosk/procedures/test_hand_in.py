"""Handing a filled cup in: any order, scored at once, nothing told before it is written down."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import NotOfferedError, Person, WeighAgain
from kiosk.records.entries import CupHandedIn, CupOut, new_id
from kiosk.weighing.pan_events import PanEvent
from tests.helpers.pan import (
    BELOW_ZERO,
    DISTURBED,
    EMPTY,
    LOST,
    PLACED,
    REMOVED,
    STARTED,
    feed,
    memory,
    press,
    settled,
    surroundings,
)
from tests.helpers.weighings import weighed

S = HandInState


def out(number: int, grams: str, team: str = "Heron") -> CupOut:
    return CupOut(
        id=new_id(), number=number, team=team, material="rice", empty=weighed(grams), since=STARTED
    )


CUPS = (out(7, "12.3"), out(8, "14.1", "Wren"), out(9, "95.0", "Siskin"))


def hand_in(number: int | None = 7, *, pan: PanMemory | None = None) -> HandIn:
    return HandIn(surroundings(), cups=CUPS, number=number, pan=pan or PanMemory())


def result_of(procedure: HandIn, gross: str) -> CupHandedIn:
    (result,) = feed(procedure, PLACED, settled(gross))
    assert isinstance(result, CupHandedIn)
    return result


def test_the_cup_is_taken_off_and_the_rest_is_scored() -> None:
    procedure = hand_in()
    result = result_of(procedure, "105.7")
    assert result.try_id == CUPS[0].id
    assert result.net == Decimal("93.4")
    assert result.points == Decimal("93.4")
    assert result.side == "under"
    assert not result.confirmed
    assert procedure.state is S.SCORED


# Common practice, no source: a cup of 12 g is right at 112 g gross, one of 30 g at 130 g.
@pytest.mark.parametrize(("cup", "gross"), [("12.0", "112.0"), ("30.0", "130.0")])
def test_the_cups_own_mass_does_not_count(cup: str, gross: str) -> None:
    cups = (replace(CUPS[0], empty=weighed(cup)),)
    procedure = HandIn(surroundings(), cups=cups, number=7, pan=PanMemory())
    result = result_of(procedure, gross)
    assert result.points == 100
    assert result.side == "exact"


# Common practice, no source: 25 large bolts at 300 g score nothing.
def test_double_or_more_scores_nothing_and_says_so() -> None:
    cups = (replace(CUPS[0], empty=weighed("12.0")),)
    procedure = HandIn(surroundings(), cups=cups, number=7, pan=PanMemory())
    result = result_of(procedure, "312.0")
    assert result.points == 0
    assert procedure.double_or_more


def test_any_cup_comes_in_any_order() -> None:
    procedure = hand_in(None)
    feed(procedure, press(Person.CHOOSE, 9))
    assert result_of(procedure, "193.0").try_id == CUPS[2].id


def test_a_cup_that_is_not_out_cannot_be_chosen() -> None:
    with pytest.raises(NotOfferedError):
        feed(hand_in(None), press(Person.CHOOSE, 33))


def test_a_cup_that_nobody_chose_is_not_captured() -> None:
    procedure = hand_in(None)
    assert feed(procedure, PLACED, settled("105.7")) == []
    assert procedure.state is S.WHOSE


def test_the_owner_tells_afterwards_and_it_is_weighed_afresh() -> None:
    procedure = hand_in(None)
    effects = feed(procedure, PLACED, settled("105.7"), press(Person.CHOOSE, 7))
    assert effects == [WeighAgain()]
    (result,) = feed(procedure, settled("105.8"))
    assert isinstance(result, CupHandedIn)
    assert result.filled.grams == Decimal("105.8")


def test_a_load_from_before_the_question_is_weighed_afresh() -> None:
    procedure = hand_in(7, pan=memory(PLACED, settled("105.7")))
    assert procedure.take_effects() == [WeighAgain()]
    assert procedure.state is S.WEIGHING


def test_a_load_that_is_written_down_already_must_go_first() -> None:
    pan = memory(PLACED, settled("105.7"))
    pan.used = True
    procedure = hand_in(8, pan=pan)
    assert procedure.state is S.CLEAR
    assert feed(procedure, settled("105.7")) == []
    feed(procedure, EMPTY)
    assert procedure.state is S.PUT_ON


def test_lifted_too_early_nothing_is_scored() -> None:
    procedure = hand_in()
    assert feed(procedure, PLACED, REMOVED, EMPTY) == []
    assert procedure.state is S.LIFTED_EARLY


def test_lighter_than_its_empty_cup_is_another_cup() -> None:
    procedure = hand_in(8)
    assert feed(procedure, PLACED, settled("12.3")) == []
    assert procedure.state is S.LIGHTER
    feed(procedure, press(Person.CHOOSE, 7), settled("12.3"))
    assert procedure.state is S.NOTHING_INSIDE


@pytest.mark.parametrize("gross", ["12.1", "12.3", "12.5"])
def test_a_cup_within_two_divisions_of_its_empty_mass_holds_nothing(gross: str) -> None:
    procedure = hand_in()
    assert feed(procedure, PLACED, settled(gross)) == []
    assert procedure.state is S.NOTHING_INSIDE


@pytest.mark.parametrize("gross", ["25.0", "320.0"])
def test_far_off_is_asked_about(gross: str) -> None:
    procedure = hand_in()
    assert feed(procedure, PLACED, settled(gross)) == []
    assert procedure.state is S.OTHER_CUP


def test_a_mass_that_fits_another_cup_is_asked_about() -> None:
    # Cup 9 is solid: 95 + 100 g on cup 7 would be 182.7 g inside.
    procedure = hand_in(7)
    assert feed(procedure, PLACED, settled("195.0")) == []
    assert procedure.state is S.OTHER_CUP
    feed(procedure, press(Person.NO))
    assert procedure.state is S.WHOSE
    feed(procedure, press(Person.CHOOSE, 9))
    (result,) = feed(procedure, settled("195.0"))
    assert isinstance(result, CupHandedIn)
    assert result.points == 100


def test_a_person_who_insists_is_believed_and_it_is_noted() -> None:
    procedure = hand_in()
    (result,) = feed(procedure, PLACED, settled("25.0"), press(Person.YES))
    assert isinstance(result, CupHandedIn)
    assert result.confirmed
    assert result.net == Decimal("12.7")


def test_moving_while_asked_about_is_judged_again() -> None:
    procedure = hand_in()
    feed(procedure, PLACED, settled("25.0"), DISTURBED)
    assert procedure.state is S.WEIGHING


@pytest.mark.parametrize("trouble", [LOST, BELOW_ZERO])
def test_trouble_under_the_cup_captures_nothing_until_the_pan_was_empty(trouble: object) -> None:
    procedure = hand_in()
    assert feed(procedure, PLACED, trouble) == []  # type: ignore[arg-type]
    assert procedure.state is S.CLEAR
    assert feed(procedure, settled("105.7")) == []
    feed(procedure, EMPTY)
    assert result_of(procedure, "105.7").points == Decimal("93.4")


def test_the_score_stays_when_the_cup_is_lifted() -> None:
    procedure = hand_in()
    result = result_of(procedure, "105.7")
    feed(procedure, REMOVED, EMPTY)
    assert procedure.state is S.LIFTED
    assert procedure.result is result


def test_the_next_cup_on_the_pan_ends_the_score() -> None:
    procedure = hand_in()
    result_of(procedure, "105.7")
    feed(procedure, EMPTY, PLACED)
    assert procedure.state is S.SOMEBODY_ELSE


def test_leaving_is_asked_about_and_keeps_the_cup_out() -> None:
    procedure = hand_in()
    assert feed(procedure, press(Person.HOME)) == []
    assert procedure.state is S.LEAVING
    feed(procedure, press(Person.LEAVE))
    assert procedure.state is S.LEFT


def test_staying_weighs_what_was_put_on_meanwhile_afresh() -> None:
    procedure = hand_in()
    feed(procedure, press(Person.HOME), PLACED, settled("105.7"))
    assert feed(procedure, press(Person.STAY)) == [WeighAgain()]
    assert procedure.state is S.WEIGHING


@pytest.mark.parametrize("gross", ["8.0", "12.3", "20.0"])
def test_a_cup_that_is_to_be_lifted_is_lifted_rightly(gross: str) -> None:
    procedure = hand_in()
    feed(procedure, PLACED, settled(gross), DISTURBED, REMOVED)
    assert procedure.state is S.PUT_ON


@pytest.mark.parametrize("off", [(DISTURBED, REMOVED, EMPTY), (EMPTY,)])
def test_after_that_too_early_is_too_early_again(off: tuple[PanEvent, ...]) -> None:
    procedure = hand_in()
    feed(procedure, PLACED, settled("8.0"), *off, PLACED, REMOVED)
    assert procedure.state is S.LIFTED_EARLY


def test_another_number_for_what_lies_there_wants_it_to_stay() -> None:
    procedure = hand_in()
    feed(procedure, PLACED, settled("8.0"), press(Person.CHOOSE, 8), REMOVED)
    assert procedure.state is S.LIFTED_EARLY
