"""What is in the way: each trouble with its own sentence, its way back, and what is kept."""

from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.errors import Reason
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.scale_facts import FoundScale, ScaleFacts, ScaleKind
from kiosk.ui.presenters.trouble_views import (
    creeping_view,
    failure_view,
    hindrance_view,
    noted,
    pan_note,
    restless_view,
    zero_text,
)
from kiosk.ui.presenters.views import PutOnView, SamplesView, TroubleView
from kiosk.weighing.pan_state import PanState, Press
from tests.helpers.pan import press
from tests.helpers.scenes import facts


def trouble(
    hindrance: Hindrance = Hindrance.UNPLUGGED,
    *,
    flowing: bool = False,
    taken_off: bool = False,
    lost: Reason | None = None,
    masses: int = 0,
    out: int = 0,
    **known: object,
) -> TroubleView:
    return hindrance_view(
        hindrance,
        facts(out, **known),
        PanState(readings_flow=flowing, taken_off=taken_off),
        lost=lost,
        masses_kept=masses,
        home=None,
    )


TITLES = {
    Hindrance.UNPLUGGED: "The scale is unplugged.",
    Hindrance.ASLEEP: "The scale is silent.",
    Hindrance.LATE: "The numbers come too late.",
    Hindrance.QUIET: "Print the empty pan first.",
    Hindrance.GARBLED: "It speaks, but not at this speed.",
    Hindrance.BELOW_ZERO: "Below zero. Empty the pan.",
    Hindrance.TARED: "The scale was tared by its key.",
    Hindrance.NO_MASS: "The scale shows no number.",
    Hindrance.UNIT: "The scale shows no grams.",
    Hindrance.CALIBRATION: "The scale asks to be calibrated.",
    Hindrance.NO_ZERO: "The scale found no zero.",
    Hindrance.ERROR: "The scale reports an error.",
    Hindrance.TOO_HEAVY: "Too heavy. Take something off.",
}


@pytest.mark.parametrize("hindrance", Hindrance)
def test_each_hindrance_has_its_own_sentence_and_three_things_to_do(hindrance: Hindrance) -> None:
    view = trouble(hindrance)
    assert view.title == TITLES[hindrance]
    assert len([line for line in view.lines if line]) == 3
    assert view.kind.count(",") == 2


@pytest.mark.parametrize("hindrance", Hindrance)
def test_nothing_can_be_pressed_but_the_way_home(hindrance: Hindrance) -> None:
    main = trouble(hindrance).main
    assert main is not None
    assert (main.state, main.says) == ("waiting", None)


@pytest.mark.parametrize(
    "hindrance",
    [
        Hindrance.UNPLUGGED, Hindrance.ASLEEP, Hindrance.LATE, Hindrance.GARBLED,
        Hindrance.CALIBRATION, Hindrance.NO_ZERO,
    ],
)  # fmt: skip
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
        (Reason.MISSING, "The scale is not found.", "Empty the pan."),
        (Reason.ELSEWHERE, "The scale is in another socket.", "Empty the pan."),
        (Reason.UNPLUGGED, "The scale is unplugged.", "Empty the pan."),
        (Reason.CLOSED, "Nothing answers at its address.", "Empty the pan."),
        (Reason.NOT_ANSWERING, "Nothing answers at its address.", "Empty the pan."),
        (Reason.OTHER, "The port failed.", "Empty the pan."),
    ],
)
def test_a_port_that_cannot_be_opened_says_what_is_to_be_done(
    lost: Reason, title: str, first: str
) -> None:
    view = trouble(lost=lost)
    assert (view.title, view.lines[0]) == (title, first)


def test_a_usb_scale_that_may_not_be_read_wants_a_rule_and_no_group() -> None:
    usb = ScaleFacts(chosen=FoundScale(where="hid:1209:0001", kind=ScaleKind.HID))
    assert "dialout" in trouble(lost=Reason.NOT_ALLOWED).lines[1]
    assert "udev rule" in trouble(lost=Reason.NOT_ALLOWED, scale=usb).lines[1]


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


@pytest.mark.parametrize("hindrance", [Hindrance.TARED, Hindrance.BELOW_ZERO])
def test_once_everything_is_off_its_key_is_what_is_to_be_done(hindrance: Hindrance) -> None:
    assert trouble(hindrance).now == 1
    assert trouble(hindrance, taken_off=True).now == 2


def test_a_balance_of_another_unit_is_told_to_show_grams() -> None:
    assert trouble(Hindrance.UNIT).lines[:2] == ("Press its unit key.", "Again, until it shows g.")


def test_a_silent_balance_may_wait_for_its_print_key() -> None:
    assert trouble(Hindrance.ASLEEP).lines[2] == "Has it a print key? Press it twice."


@pytest.mark.parametrize(
    ("next_press", "words"),
    [
        (Press.LOAD, "press its print key twice"),
        (Press.ONCE_MORE, "print once more"),
        (Press.EMPTY, "Take it off, then press print"),
    ],
)
def test_a_balance_that_prints_at_its_key_says_when_to_press_it(
    next_press: Press, words: str
) -> None:
    assert words in pan_note(PanState(press=next_press))


def test_after_a_silence_over_a_load_the_pan_is_to_be_looked_at() -> None:
    assert pan_note(PanState(look=True)) == "Something on it already? Take it off first."


def test_a_pan_of_which_all_is_known_needs_no_note() -> None:
    assert pan_note(PanState()) == ""
    assert noted(PutOnView(body="as ever"), PanState()) == PutOnView(body="as ever")


def test_where_a_key_is_to_be_pressed_no_ring_is_promised() -> None:
    view = noted(PutOnView(sign="ring", sign_text="by itself"), PanState(press=Press.LOAD))
    assert isinstance(view, PutOnView)
    assert (view.sign, view.sign_text) == ("", "")
    assert view.body == "Put it on, press its print key twice."


def test_among_samples_the_note_stands_where_the_advice_does() -> None:
    view = noted(SamplesView(), PanState(press=Press.EMPTY))
    assert isinstance(view, SamplesView)
    assert view.advice == "Take it off, then press print."


def test_a_creeping_reading_gets_other_causes_than_a_restless_one() -> None:
    view = creeping_view(home=None)
    assert view.title == "The number keeps creeping."
    assert [line.split("?")[0] for line in view.lines] == [
        "Switched on just now",
        "Air over the pan",
        "Wet or warm cup",
    ]


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
