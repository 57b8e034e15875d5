"""The cup table: cup after cup without a press, and every way in which it can go otherwise."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import NotOfferedError, Person, PersonEvent, WeighAgain
from kiosk.procedures.queue_steps import QueueState
from kiosk.rounds.contents import CupNote, CupTurn, Stage, Step
from kiosk.rounds.cups import CupStand, Pass, cup_of, net_mass
from kiosk.weighing.pan_events import PanEvent
from tests.helpers.pan import (
    DISTURBED,
    LOST,
    PLACED,
    REMOVED,
    TOO_HEAVY,
    feed,
    memory,
    press,
    settled,
)
from tests.helpers.queue_hands import (
    CLEAN,
    TEAMS,
    handing_in,
    notes,
    off,
    on,
    pan_at,
    table,
    turn_of,
    weighed_empty,
)
from tests.helpers.round_notes import DIVISION, said, with_teams

S = QueueState
P = Person
LATE = CupTurn.LATE


def outcome(turn: CupTurn) -> PersonEvent:
    return press(P.CHOOSE, turn)


def stands(procedure: CupQueue, label: str) -> CupStand:
    state = procedure.list.round
    return cup_of(state, state.team(label)).stand


# The usual way -------------------------------------------------------------------------------


def test_empty_cups_go_down_the_list_by_themselves() -> None:
    procedure = table(with_teams(TEAMS), Pass.EMPTY)
    effects = feed(procedure, CLEAN, *on("12.3"), *off(), *on("14.0"), *off(), *on("9.9"), *off())
    assert notes(effects) == [
        ("wren", "empty", "12.3"), ("heron", "empty", "14.0"), ("teal", "empty", "9.9"),
    ]  # fmt: skip
    assert procedure.state is S.ALL_DONE


def test_filled_cups_are_handed_in_one_after_the_other() -> None:
    procedure = table(weighed_empty("12.3", "14.0", "9.9"))
    effects = feed(procedure, CLEAN, *on("110.0"), *off(), *on("99.0"))
    assert notes(effects) == [("wren", "filled", "110.0"), ("heron", "filled", "99.0")]
    assert procedure.state is S.RECORDED
    state = procedure.list.round
    assert net_mass(state, state.team("heron")) == Decimal("85.0")


def test_what_is_left_on_the_pan_up_to_two_divisions_is_taken_off() -> None:
    procedure = handing_in(*on("110.0"), *off("0.2"), *on("99.0"))
    state = procedure.list.round
    assert net_mass(state, state.team("heron")) == Decimal("84.8")


def test_a_dirty_pan_is_to_be_brushed_and_looked_at_until_it_is_clean() -> None:
    procedure = handing_in(*on("110.0"), *off())
    assert WeighAgain() in feed(procedure, pan_at("0.3"))
    assert procedure.state is S.DIRTY
    assert WeighAgain() in feed(procedure, pan_at("0.3"))
    feed(procedure, pan_at("0.1"))
    assert (procedure.state, turn_of(procedure)) == (S.PUT_ON, "heron")


def test_crumbs_beyond_the_zero_band_make_the_pan_dirty_too() -> None:
    procedure = handing_in(*on("110.0"), DISTURBED, settled("0.6"))
    assert procedure.state is S.DIRTY
    feed(procedure, REMOVED, CLEAN)
    assert procedure.state is S.PUT_ON


def test_a_hair_that_falls_on_the_empty_pan_is_no_cup() -> None:
    procedure = handing_in(*on("1.5"))
    assert procedure.state is S.DIRTY
    assert stands(procedure, "wren") is CupStand.OUT


def test_a_cup_put_on_before_the_pan_was_seen_empty_has_to_go_first() -> None:
    procedure = handing_in(*on("110.0"), REMOVED, PLACED)
    assert procedure.state is S.CLEAR
    assert notes(feed(procedure, settled("99.0"))) == []
    feed(procedure, *off(), *on("99.0"))
    assert stands(procedure, "heron") is CupStand.IN


def test_a_cup_lifted_before_it_was_recorded_is_asked_for_again() -> None:
    procedure = handing_in(PLACED, *off())
    assert (procedure.state, procedure.early, turn_of(procedure)) == (S.PUT_ON, True, "wren")
    feed(procedure, *on("110.0"))
    assert (procedure.state, procedure.early) == (S.RECORDED, False)


def test_the_next_cup_is_not_called_too_soon_for_the_one_before() -> None:
    procedure = handing_in(PLACED, *off(), outcome(CupTurn.LATE))
    assert (turn_of(procedure), procedure.early) == ("heron", False)


def test_what_lies_there_at_the_start_has_to_go_first() -> None:
    procedure = table(weighed_empty("12.3"), pan=memory(PLACED))
    assert procedure.state is S.CLEAR
    assert notes(feed(procedure, settled("110.0"))) == []
    feed(procedure, CLEAN)
    assert procedure.state is S.PUT_ON


# A pan that cannot be used -------------------------------------------------------------------


@pytest.mark.parametrize("gone", [LOST, TOO_HEAVY])
@pytest.mark.parametrize("before", [(), (PLACED,), on("110.0")])
def test_after_silence_or_overload_an_empty_pan_has_to_be_seen(
    gone: PanEvent, before: tuple[PanEvent, ...]
) -> None:
    procedure = handing_in(*before, gone)
    assert procedure.state is S.CLEAR
    assert notes(feed(procedure, *on("120.0"))) == []
    feed(procedure, *off())
    assert procedure.state is S.PUT_ON


def test_a_cable_pulled_while_a_cup_is_chosen_is_remembered() -> None:
    procedure = handing_in(press(P.MORE), LOST)
    assert procedure.state is S.CHOOSING
    feed(procedure, press(P.CHOOSE, 2))
    assert (procedure.state, turn_of(procedure)) == (S.CLEAR, "heron")


# Another cup than the list says --------------------------------------------------------------


def test_another_cup_comes_first_when_it_is_tapped() -> None:
    procedure = handing_in(press(P.MORE), press(P.CHOOSE, 3), *on("100.0"), *off())
    assert stands(procedure, "teal") is CupStand.IN
    assert turn_of(procedure) == "wren"


def test_a_cup_recorded_for_another_one_is_mended_while_it_lies_there() -> None:
    procedure = handing_in(*on("110.0"))
    effects = feed(procedure, press(P.MORE), press(P.CHOOSE, 2))
    assert notes(effects) == [("wren", "undone", ""), ("heron", "filled", "110.0")]
    assert (procedure.state, stands(procedure, "wren")) == (S.RECORDED, CupStand.OUT)
    feed(procedure, *off())
    assert turn_of(procedure) == "wren"


def test_no_weighing_is_kept_twice_when_a_wrong_order_is_mended() -> None:
    procedure = handing_in(*on("110.0"), press(P.MORE), press(P.CHOOSE, 2))
    state = procedure.list.round
    notes_ = [each.note for name in ("wren", "heron") for each in state.history(f"cup {name}")]
    ids = [each.id for note in notes_ for each in (note.weighing, note.zero) if each]
    assert len(ids) == len(set(ids)) == 6


def test_the_cup_on_the_pan_is_weighed_afresh_for_the_one_that_was_tapped() -> None:
    procedure = handing_in(PLACED, press(P.MORE), settled("99.0"))
    assert WeighAgain() in feed(procedure, press(P.CHOOSE, 2))
    assert procedure.state is S.WEIGHING
    feed(procedure, settled("99.0"))
    assert stands(procedure, "heron") is CupStand.IN


def test_a_cup_that_is_done_cannot_be_tapped() -> None:
    procedure = handing_in(*on("110.0"), *off(), press(P.MORE))
    with pytest.raises(NotOfferedError):
        procedure.step(press(P.CHOOSE, 1))


def test_thinking_better_of_it_leaves_things_as_they_were() -> None:
    procedure = handing_in(*on("110.0"), press(P.MORE), press(P.NO))
    assert procedure.state is S.RECORDED
    assert stands(procedure, "wren") is CupStand.IN


# What else can happen ------------------------------------------------------------------------


@pytest.mark.parametrize("turn", [CupTurn.LATE, CupTurn.NOT_HANDED_IN, CupTurn.SPILLED_AFTER])
def test_an_outcome_without_a_mass_ends_a_cup(turn: CupTurn) -> None:
    happened = (
        (press(P.MISHAP), outcome(turn)) if turn is CupTurn.SPILLED_AFTER else (outcome(turn),)
    )
    procedure = handing_in(*happened)
    assert (stands(procedure, "wren"), turn_of(procedure)) == (CupStand.NO_MASS, "heron")


def test_a_cup_that_will_not_rest_is_set_aside_and_comes_back_at_the_end() -> None:
    procedure = handing_in(PLACED, outcome(CupTurn.SET_ASIDE))
    assert (procedure.state, turn_of(procedure)) == (S.CLEAR, "heron")
    feed(procedure, *off(), *on("99.0"), *off(), *on("88.0"), *off())
    assert turn_of(procedure) == "wren"
    feed(procedure, *on("110.0"), *off())
    assert procedure.state is S.ALL_DONE


def test_what_was_spilled_before_hand_in_may_be_filled_again() -> None:
    procedure = handing_in(press(P.MISHAP), outcome(CupTurn.SPILLED_BEFORE))
    assert [cup.team.team for cup in procedure.list.pending] == ["heron", "teal", "wren"]


def test_a_cracked_cup_is_followed_by_another_one_weighed_empty() -> None:
    procedure = handing_in(press(P.MISHAP), outcome(CupTurn.CRACKED))
    assert (procedure.state, procedure.list.weighs_empty) == (S.PUT_ON, True)
    effects = feed(procedure, *on("8.8"), *off(), *on("108.8"))
    assert notes(effects) == [("wren", "empty", "8.8"), ("wren", "filled", "108.8")]
    state = procedure.list.round
    assert net_mass(state, state.team("wren")) == 100


def test_a_cup_that_nobody_weighed_empty_cannot_be_handed_in() -> None:
    procedure = table(with_teams(TEAMS))
    feed(procedure, CLEAN)
    assert procedure.state is S.NO_EMPTY
    assert notes(feed(procedure, *on("110.0"))) == []
    feed(procedure, press(P.GO_ON))
    assert procedure.state is S.CLEAR
    effects = feed(procedure, *off(), *on("12.3"), *off(), *on("110.0"))
    assert notes(effects) == [("wren", "empty", "12.3"), ("wren", "filled", "110.0")]


@pytest.mark.parametrize("value", [CupTurn.LATE, 2])
def test_what_is_no_outcome_of_an_empty_cup_is_not_taken(value: object) -> None:
    procedure = table(with_teams(TEAMS), Pass.EMPTY)
    with pytest.raises(NotOfferedError):
        procedure.step(press(P.CHOOSE, value))


# Undo ----------------------------------------------------------------------------------------


def test_the_last_cup_can_be_undone_and_comes_again() -> None:
    procedure = handing_in(*on("110.0"), *off())
    assert notes(feed(procedure, press(P.UNDO))) == [("wren", "undone", "")]
    assert (procedure.state, turn_of(procedure)) == (S.PUT_ON, "wren")
    feed(procedure, *on("111.0"))
    state = procedure.list.round
    assert net_mass(state, state.team("wren")) == Decimal("98.7")


def test_undone_under_its_own_cup_the_pan_is_emptied_first() -> None:
    procedure = handing_in(*on("110.0"), press(P.UNDO))
    assert procedure.state is S.CLEAR
    feed(procedure, *off())
    assert turn_of(procedure) == "wren"


def test_an_outcome_can_be_undone_too() -> None:
    procedure = handing_in(outcome(CupTurn.LATE), press(P.UNDO))
    assert (stands(procedure, "wren"), turn_of(procedure)) == (CupStand.OUT, "wren")


def test_only_what_was_noted_here_is_undone() -> None:
    procedure = handing_in(*on("110.0"), *off())
    elsewhere = said(procedure.list.round, CupNote(team="wren", turn=CupTurn.SPILLED_AFTER))
    procedure.see(elsewhere)
    assert procedure.list.last is None
    assert notes(feed(procedure, press(P.UNDO))) == []


# What looks odd ------------------------------------------------------------------------------


@pytest.mark.parametrize("grams", ["10.0", "12.5"])
def test_a_filled_cup_no_heavier_than_its_empty_one_is_asked_about(grams: str) -> None:
    procedure = handing_in(*on(grams))
    assert procedure.state is S.ODD
    assert stands(procedure, "wren") is CupStand.OUT
    feed(procedure, press(P.YES))
    assert stands(procedure, "wren") is CupStand.IN


def test_if_it_is_another_cup_its_number_is_asked_for() -> None:
    procedure = handing_in(*on("10.0"), press(P.NO))
    assert procedure.state is S.CHOOSING


@pytest.mark.parametrize(
    ("others", "grams", "state"),
    [
        ((), "120.0", S.RECORDED),
        ((), "160.0", S.ODD),
        (("12.0", "13.0", "14.0"), "110.0", S.ODD),
        (("72.0", "90.0", "88.0"), "118.0", S.RECORDED),
    ],
)
def test_an_empty_cup_is_asked_about_where_it_seems_filled(
    others: tuple[str, ...], grams: str, state: QueueState
) -> None:
    procedure = table(weighed_empty(*others, teams=(*TEAMS, "Robin")), Pass.EMPTY)
    feed(procedure, CLEAN, *on(grams))
    assert procedure.state is state


# Several kiosks, several sittings ------------------------------------------------------------


def test_a_cup_recorded_elsewhere_does_not_come_here() -> None:
    procedure = handing_in(PLACED)
    procedure.see(said(procedure.list.round, CupNote(team="wren", turn=CupTurn.LATE)))
    assert (procedure.state, turn_of(procedure)) == (S.CLEAR, "heron")


def test_begun_again_the_table_goes_on_where_it_was() -> None:
    state = handing_in(*on("110.0"), *off(), outcome(CupTurn.SET_ASIDE)).list.round
    assert [cup.team.team for cup in table(state).list.pending] == ["teal", "heron"]


# A cup that ended without a mass --------------------------------------------------------------


def test_a_cup_that_ended_can_be_chosen_after_those_that_have_to_come() -> None:
    ended = handing_in(outcome(CupTurn.LATE), outcome(CupTurn.NOT_HANDED_IN)).list.round
    procedure = table(ended)
    assert [cup.team.team for cup in procedure.list.choices] == ["teal", "wren", "heron"]
    effects = feed(procedure, CLEAN, press(P.MORE), press(P.CHOOSE, 1), *on("110.0"), *off())
    assert notes(effects) == [("wren", "filled", "110.0")]
    assert (stands(procedure, "wren"), turn_of(procedure)) == (CupStand.IN, "teal")


def test_when_all_are_done_a_cup_that_ended_can_still_come() -> None:
    late = table(said(weighed_empty("12.3", teams=("Wren",)), CupNote(team="wren", turn=LATE)))
    assert late.state is S.ALL_DONE
    feed(late, CLEAN, press(P.MORE), press(P.NO))
    assert late.state is S.ALL_DONE
    feed(late, press(P.MORE), press(P.CHOOSE, 1), *on("110.0"), *off())
    assert (stands(late, "wren"), late.state) == (CupStand.IN, S.ALL_DONE)
    assert late.list.ended == []


def test_a_cup_that_ended_before_it_was_weighed_empty_comes_empty_first() -> None:
    procedure = table(said(with_teams(["Wren"]), CupNote(team="wren", turn=LATE)))
    feed(procedure, CLEAN, press(P.MORE), press(P.CHOOSE, 1))
    assert procedure.state is S.NO_EMPTY
    effects = feed(procedure, press(P.GO_ON), *on("12.3"), *off(), *on("110.0"))
    assert notes(effects) == [("wren", "empty", "12.3"), ("wren", "filled", "110.0")]


def test_a_cup_of_a_locked_division_stays_without_a_mass() -> None:
    state = said(weighed_empty("12.3", teams=("Wren",)), CupNote(team="wren", turn=LATE))
    state = said(state, Step(division=DIVISION, stage=Stage.LOCKED))
    assert table(state).list.choices == []


# A protest ------------------------------------------------------------------------------------


def weighing_again() -> CupQueue:
    """The first cup is weighed once more in a protest."""
    state = handing_in(*on("110.0"), *off()).list.round
    return table(state, again="wren", protest="p")


def test_of_a_cup_that_is_weighed_again_only_a_mass_is_noted() -> None:
    procedure = weighing_again()
    for turn in CupTurn:
        with pytest.raises(NotOfferedError):
            procedure.step(outcome(turn))
    feed(procedure, CLEAN, *on("111.0"), *off())
    assert procedure.state is S.ALL_DONE
    state = procedure.list.round
    fillings = cup_of(state, state.team("wren")).fillings
    assert [(str(each.net), each.protest) for each in fillings] == [("97.7", ""), ("98.7", "p")]


def test_a_cup_that_seems_another_one_in_a_protest_has_to_go() -> None:
    procedure = weighing_again()
    feed(procedure, CLEAN, *on("10.0"))
    assert procedure.state is S.ODD
    feed(procedure, press(P.NO))
    assert procedure.state is S.CLEAR
