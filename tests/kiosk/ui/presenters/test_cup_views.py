"""Cups on their way, as finished views."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person
from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.settings import KioskSettings, Rules
from kiosk.ui.presenters.cup_views import error_percent, hand_in_view, side_of
from kiosk.ui.presenters.views import (
    HandInView,
    LeaveView,
    PutOnView,
    QuestionView,
    ScoreView,
    SheetView,
    TakeCupView,
)
from tests.helpers.pan import PLACED, feed, press, settled, surroundings
from tests.helpers.scenes import MANY, cups, facts, in_hand_in, in_weigh_empty, scored
from tests.helpers.weighings import weighed

E, H = WeighEmptyState, HandInState


def empty_cup(state: WeighEmptyState, out: int = 0) -> SheetView:
    return in_weigh_empty(state, out).sheet


def handed_in(state: HandInState, out: int = 1) -> SheetView:
    return in_hand_in(state, out).sheet


def score_of(gross: str, errors: tuple[float, ...] = (-1.0,)) -> ScoreView:
    """The score of a cup of 112.3 g."""
    sheet = scored(gross, errors).sheet
    assert isinstance(sheet, ScoreView)
    return sheet


# The empty cup -------------------------------------------------------------------------------


def test_the_first_cup_is_weighed_where_all_can_see() -> None:
    view = empty_cup(E.WEIGHED)
    assert isinstance(view, PutOnView)
    assert (view.title, view.cup_number) == ("Cup 99 weighs 112.3\u00a0g.", 99)


def test_with_cups_out_the_mass_of_an_empty_cup_is_not_told() -> None:
    assert empty_cup(E.WEIGHED, MANY).title == "This is cup 99."


def test_it_is_said_beforehand_that_the_cover_is_on() -> None:
    open_pan, covered = empty_cup(E.PUT_ON), empty_cup(E.PUT_ON, MANY)
    assert isinstance(open_pan, PutOnView)
    assert isinstance(covered, PutOnView)
    assert (open_pan.sign, covered.sign) == ("ring", "eye")


def test_a_pan_to_be_cleared_shows_no_cup_to_put_on() -> None:
    view = empty_cup(E.CLEAR)
    assert isinstance(view, PutOnView)
    assert (view.art, view.arrows, view.cup_number) == ("none", "up", None)


@pytest.mark.parametrize("state", [E.PUT_ON, E.SETTLING, E.WEIGHED])
def test_nothing_needs_to_be_pressed_to_weigh_an_empty_cup(state: WeighEmptyState) -> None:
    assert empty_cup(state).main is None


def test_a_taken_cup_shows_the_goal_of_the_rules() -> None:
    view = empty_cup(E.FILL, MANY)
    assert isinstance(view, TakeCupView)
    assert (view.number, view.goal, view.goal_unit) == (99, "100", "g")


@pytest.mark.parametrize("out", [1, 3, MANY])
def test_ones_own_cup_is_always_among_the_cups_out(out: int) -> None:
    view = empty_cup(E.FILL, out)
    assert isinstance(view, TakeCupView)
    assert [mark.number for mark in view.cups if mark.look == "yours"] == [99]
    assert len(view.cups) == min(out, 7)


def test_before_a_cup_is_left_both_answers_are_given() -> None:
    view = empty_cup(E.LEAVING, MANY)
    assert isinstance(view, LeaveView)
    assert view.main is not None
    assert view.second is not None
    assert (view.main.says, view.second.says) == (press(Person.STAY), press(Person.LEAVE))


def test_a_heavy_cup_is_asked_about_with_both_answers() -> None:
    view = empty_cup(E.REALLY_EMPTY)
    assert isinstance(view, QuestionView)
    assert view.main is not None
    assert view.second is not None
    assert (view.main.says, view.second.says) == (press(Person.YES), press(Person.NO))


def test_where_nothing_is_left_behind_the_way_home_reads_back() -> None:
    home = empty_cup(E.PUT_ON).home
    assert home is not None
    assert home.text == "Back"


# Hand in -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("state", "wait"),
    [
        (H.CHOOSE, "Tap a number first"),
        (H.WHOSE, "Tap a number first"),
        (H.PUT_ON, "Waiting for cup\u00a099"),
        (H.WEIGHING, "Hands off cup 99"),
        (H.LIGHTER, "Take it off, or tap its number"),
    ],
)
def test_the_waiting_button_says_what_is_waited_for(state: HandInState, wait: str) -> None:
    main = handed_in(state).main
    assert main is not None
    assert (main.text, main.state, main.says) == (wait, "waiting", None)


def test_the_chosen_cup_is_marked() -> None:
    view = handed_in(H.PUT_ON, MANY)
    assert isinstance(view, HandInView)
    assert view.chosen == 99
    assert [mark.number for mark in view.cups if mark.look == "chosen"] == [99]


def test_a_choice_that_was_not_made_leaves_nothing_behind() -> None:
    chosen, open_choice = handed_in(H.PUT_ON).home, handed_in(H.CHOOSE).home
    assert chosen is not None
    assert open_choice is not None
    assert (chosen.text, open_choice.text) == ("Home", "Back")


@pytest.mark.parametrize("state", [H.PUT_ON, H.WEIGHING, H.LIGHTER, H.NOTHING_INSIDE, H.OTHER_CUP])
def test_no_mass_is_told_before_it_is_written_down(state: HandInState) -> None:
    view = handed_in(state)
    assert " g" not in view.title + view.body


# The score -----------------------------------------------------------------------------------


def test_the_sum_of_the_score_adds_up() -> None:
    view = score_of("205.7")
    assert view.sum_text == "cup [b]112.3[/b]  +  inside [b]93.4[/b] g"
    assert (view.points, view.error, view.side) == ("93.4", "6.6 g", "under")


@pytest.mark.parametrize(
    ("gross", "side", "words"),
    [
        ("210.2", "under", "under"),
        ("210.3", "on target", "on target"),
        ("212.3", "on target", "on target"),
        ("214.3", "on target", "on target"),
        ("214.4", "over", "over"),
        ("312.2", "over", "over"),
        ("312.3", "over", "double or more"),
    ],
)
def test_the_side_is_told_in_a_word(gross: str, side: str, words: str) -> None:
    view = score_of(gross)
    assert (view.side, view.side_text) == (side, words)


def test_the_tent_spans_from_nothing_to_double_the_goal() -> None:
    view = score_of("205.7")
    assert (view.left, view.peak, view.right) == ("0 g", "100 g", "200 g")
    assert (view.true_value, view.estimate) == (100.0, 93.4)


def test_another_goal_of_the_rules_is_the_peak() -> None:
    rules = Rules(cup_target_g=Decimal(50))
    out = [replace(cups(1)[0], empty=weighed("12.0"))]
    procedure = HandIn(surroundings(rules), cups=out, number=99, pan=PanMemory())
    feed(procedure, PLACED, settled("59.0"))
    view = hand_in_view(procedure, facts(1, settings=KioskSettings(rules=rules)))
    assert isinstance(view, ScoreView)
    assert (view.peak, view.points) == ("50 g", "94.0")


@pytest.mark.parametrize(
    ("errors", "words"),
    [((-1.0,), "this\ntry"), ((3.0, -1.0), "last\n2 tries"), ((9.0,) * 7, "last\n5 tries")],
)
def test_the_last_five_tries_are_shown(errors: tuple[float, ...], words: str) -> None:
    view = score_of("205.7", errors)
    assert (view.errors, view.tries_text) == (errors[-5:], words)


def test_each_scored_cup_lets_the_marker_climb_once() -> None:
    assert score_of("205.7").cup_key != ""


def test_errors_are_signed_per_cent() -> None:
    assert error_percent(Decimal("93.4"), Decimal(100)) == pytest.approx(-6.6)
    assert error_percent(Decimal(60), Decimal(50)) == pytest.approx(20.0)


@pytest.mark.parametrize(
    ("percent", "side"), [(-2.1, "under"), (-2.0, "on target"), (2.0, "on target"), (2.1, "over")]
)
def test_within_two_per_cent_is_on_target(percent: float, side: str) -> None:
    assert side_of(percent) == side
