"""The goal, the gauge and the lots, as finished views."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.fill_goal import IN_LOTS
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.pour_views import goals_view, lots_view, number_view, pour_view
from kiosk.ui.presenters.views import PourView
from tests.helpers.pan import PLACED, TOO_HEAVY, feed, press, settled
from tests.helpers.scenes import facts, in_container, in_lots

C = ContainerState
EMPTY_JAR = Decimal("159.9")


def pour(inside: str, goal: str = "high", capacity: str | None = None) -> PourView:
    """An empty jar of 159.9 g, pieces of 50.6 mg."""
    known = facts()
    known.scale.capacity = None if capacity is None else Decimal(capacity)
    return pour_view(in_container(C.POUR, goal=goal), known, EMPTY_JAR + Decimal(inside))


# The goals -----------------------------------------------------------------------------------


def test_there_are_three_bands_a_number_and_none() -> None:
    view = goals_view(in_container(C.GOAL))
    assert [choice.value for choice in view.choices] == [
        "low", "middle", "high", "number", "any", IN_LOTS,
    ]  # fmt: skip
    assert view.choices[2].text == "12\u2009000 to 20\u2009000"


def test_each_band_says_what_it_will_weigh() -> None:
    notes = [choice.note for choice in goals_view(in_container(C.GOAL)).choices[:3]]
    assert notes == ["from about 5.1 g", "from about 51 g", "from about 610 g"]


def test_what_was_chosen_is_seen() -> None:
    procedure = in_container(C.POUR, goal="1500")
    feed(procedure, press(Person.CHOOSE), press(Person.CHOOSE, IN_LOTS))
    choices = goals_view(procedure).choices
    chosen = {choice.value: choice.note for choice in choices if choice.chosen}
    assert chosen == {"number": "1\u2009500 pieces", IN_LOTS: "yes, one after the other"}


def test_more_than_the_event_allows_is_pointed_out() -> None:
    procedure = in_container(C.NUMBER)
    feed(procedure, *(press(Person.TYPE, digit) for digit in "20001"))
    view = number_view(procedure)
    assert view.hint == "At most 20\u2009000 in the event."
    assert view.main is not None
    assert view.main.state == "off"


# The gauge -----------------------------------------------------------------------------------


def test_before_the_goal_it_says_how_far_it_is() -> None:
    view = pour("500.0")
    assert view.title == "Pour until the arrow is in the tall box."
    assert view.to_go == "about 110 g to go"
    assert (view.band, view.target) == ("high", None)


def test_inside_the_goal_it_says_stop() -> None:
    view = pour("800.0")
    assert (view.title, view.to_go) == ("Stop here.", "")
    assert view.main is not None
    assert view.main.says == press(Person.STOP)


def test_past_the_goal_it_says_by_how_much() -> None:
    view = pour("600.0", "middle")
    assert view.title == "Too many. Take some out."
    assert view.to_go == "about 95 g over"


def test_more_than_the_limit_is_said_whatever_the_goal() -> None:
    told = "More than 20\u2009000 pieces: too many for the event."
    assert pour("1200.0").warning == pour("1200.0", "any").warning == told


def test_a_number_is_a_narrow_box() -> None:
    assert pour("500.0", "1500").target == (1470, 1530)
    assert pour("500.0", "1500").goal_text == "Goal: about 1\u2009500"


def test_without_a_goal_nothing_is_to_go() -> None:
    view = pour("500.0", "any")
    assert (view.to_go, view.goal_text, view.band, view.target) == ("", "", None, None)


@pytest.mark.parametrize(("capacity", "offered"), [("600", True), ("1000", False), (None, False)])
def test_lots_are_offered_where_the_goal_is_too_heavy(capacity: str | None, offered: bool) -> None:
    view = pour("100.0", capacity=capacity)
    assert view.second is not None
    assert (view.second.says == press(Person.MORE)) is offered
    assert (view.warning == "Too heavy for this scale: weigh in lots.") is offered


def test_lots_are_offered_after_it_was_too_heavy() -> None:
    procedure = in_container(C.POUR)
    feed(procedure, TOO_HEAVY)
    view = pour_view(procedure, facts(), EMPTY_JAR + 200)
    assert view.second is not None
    assert view.second.says == press(Person.MORE)


def test_near_the_capacity_a_lot_is_enough() -> None:
    procedure = in_container(C.GOAL)
    feed(procedure, press(Person.CHOOSE, IN_LOTS), press(Person.CHOOSE, "high"))
    known = facts()
    known.scale.capacity = Decimal(600)
    feed(procedure, PLACED, settled("159.9"))
    assert pour_view(procedure, known, Decimal(530)).title != "Stop here: enough for one lot."
    assert pour_view(procedure, known, Decimal(545)).title == "Stop here: enough for one lot."


# The lots ------------------------------------------------------------------------------------


def test_each_lot_has_its_row_and_its_undo() -> None:
    view = lots_view(in_lots(3))
    assert [(row.name, row.mass_text, row.state) for row in view.rows] == [
        ("lot 1", "100.0 g", "kept"), ("lot 2", "100.0 g", "kept"), ("lot 3", "100.0 g", "kept"),
    ]  # fmt: skip
    assert view.undo_text == "Undo"


@pytest.mark.parametrize(
    ("lots", "main", "ends"),
    [(3, Person.GO_ON, "About 310 g to go."), (7, Person.STOP, "The goal is reached.")],
)
def test_the_main_button_leads_towards_the_goal(lots: int, main: Person, ends: str) -> None:
    view = lots_view(in_lots(lots))
    assert view.main is not None
    assert view.main.says == press(main)
    assert view.advice.endswith(ends)
    assert f"in {lots} lots, 95 % sure: " in view.advice
