"""What is in the way: each trouble with its own sentence, its way back, and what is kept."""

from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.errors import Reason
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.trouble_views import (
    failure_view,
    hindrance_view,
    restless_view,
    zero_text,
)
from kiosk.ui.presenters.views import TroubleView
from tests.helpers.pan import press
from tests.helpers.scenes import facts


def trouble(
    hindrance: Hindrance = Hindrance.UNPLUGGED,
    *,
    flowing: bool = False,
    lost: Reason | None = None,
    masses: int = 0,
    out: int = 0,
    **known: object,
) -> TroubleView:
    return hindrance_view(
        hindrance,
        facts(out, **known),
        readings_flow=flowing,
        lost=lost,
        masses_kept=masses,
        home=None,
    )


@pytest.mark.parametrize(
    ("hindrance", "title"),
    [
        (Hindrance.UNPLUGGED, "The scale is unplugged or asleep."),
        (Hindrance.ASLEEP, "The scale is silent."),
        (Hindrance.BELOW_ZERO, "Below zero. Empty the pan."),
        (Hindrance.TARED, "The scale was tared by its key."),
        (Hindrance.NO_MASS, "The scale shows no number."),
        (Hindrance.TOO_HEAVY, "Too heavy. Take something off."),
    ],
)
def test_each_hindrance_has_its_own_sentence_and_three_things_to_do(
    hindrance: Hindrance, title: str
) -> None:
    view = trouble(hindrance)
    assert view.title == title
    assert len([line for line in view.lines if line]) == 3
    assert view.kind.count(",") == 2


@pytest.mark.parametrize("hindrance", Hindrance)
def test_nothing_can_be_pressed_but_the_way_home(hindrance: Hindrance) -> None:
    main = trouble(hindrance).main
    assert main is not None
    assert (main.state, main.says) == ("waiting", None)


@pytest.mark.parametrize("hindrance", [Hindrance.UNPLUGGED, Hindrance.ASLEEP])
def test_a_scale_that_is_back_wants_an_empty_pan(hindrance: Hindrance) -> None:
    view = trouble(hindrance, flowing=True)
    assert view.title == "The scale is back."
    assert view.main is not None
    assert view.main.text == "Waiting for an empty pan"


@pytest.mark.parametrize(
    ("lost", "title", "first"),
    [
        (Reason.NOT_ALLOWED, "The kiosk may not use the port.", "Tell the coach."),
        (Reason.BUSY, "Another program uses the scale.", "Tell the coach."),
        (Reason.MISSING, "The scale is unplugged or asleep.", "Empty the pan."),
        (Reason.UNPLUGGED, "The scale is unplugged or asleep.", "Empty the pan."),
    ],
)
def test_a_port_that_cannot_be_opened_says_what_is_to_be_done(
    lost: Reason, title: str, first: str
) -> None:
    view = trouble(lost=lost)
    assert (view.title, view.lines[0]) == (title, first)


def test_once_the_scale_is_back_the_port_of_before_is_no_matter() -> None:
    assert trouble(flowing=True, lost=Reason.BUSY) == trouble(flowing=True)


@pytest.mark.parametrize(("step", "zero"), [("0.1", "0.0"), ("0.01", "0.00"), ("1", "0")])
def test_the_zero_to_wait_for_is_the_one_of_this_balance(step: str, zero: str) -> None:
    known = facts(readability=Decimal(step))
    assert zero_text(known) == zero
    assert trouble(Hindrance.TARED, readability=Decimal(step)).lines[2] == f"Wait for {zero}."


def test_a_balance_that_never_spoke_is_taken_to_step_by_a_tenth() -> None:
    assert zero_text(facts(readability=None)) == "0.0"


def test_cups_that_are_out_are_kept() -> None:
    view = trouble(out=2)
    assert (view.kept, view.kept_more) == ("Nothing is lost.", "Cups out are kept:")
    assert len(view.cups) == 2


def test_masses_of_a_key_are_kept() -> None:
    view = trouble(masses=4, out=2)
    assert view.kept_more == "4 masses are kept."
    assert view.cups == ()


def test_where_nothing_is_out_nothing_is_named() -> None:
    assert trouble().kept_more == ""


def test_a_restless_pan_gets_its_causes_named_hands_first() -> None:
    view = restless_view(facts(), home=None)
    assert view.lines[0] == "Hands off the table?"
    assert len(view.lines) == 3


def test_a_failure_says_why_and_offers_to_try_again() -> None:
    view = failure_view("The disk is full.", at_stake=True, home=None)
    assert view.title == "Not written down yet."
    assert view.lines[0] == "The disk is full."
    assert view.main is not None
    assert (view.main.text, view.main.says) == ("Try again", press(Person.AGAIN))


def test_where_nothing_is_at_stake_nobody_is_alarmed() -> None:
    view = failure_view("All numbers are out.", at_stake=False, home=None)
    assert (view.title, view.lines) == ("That did not work.", ("All numbers are out.",))
