"""What the pan shows, and when it is covered."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.hand_in import HandInState
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.ui.presenters.pan_views import closed_pan, pan_view
from kiosk.ui.presenters.views import PanView
from kiosk.weighing.pan_watch import PanPhase, PanState
from tests.helpers.sampled import sampled, started
from tests.helpers.scenes import facts, in_container, in_hand_in, in_weigh_empty

E, H, C = WeighEmptyState, HandInState, ContainerState


def pan(
    procedure: Procedure | None = None,
    *,
    shown: str | None = "12.3",
    hindrance: Hindrance | None = None,
    out: int = 0,
    phase: PanPhase = PanPhase.STABLE,
    flowing: bool = True,
    **known: object,
) -> PanView:
    grams = None if shown is None else Decimal(shown)
    state = PanState(phase=phase, grams=grams, progress=0.5, readings_flow=flowing)
    table = facts(out, **({"simulated": False} | known))
    return pan_view(procedure, table, state, hindrance, grams)


@pytest.mark.parametrize(
    ("phase", "look", "word"),
    [
        (PanPhase.EMPTY, "empty", "empty"),
        (PanPhase.MOVING, "moving", "moving"),
        (PanPhase.SETTLING, "settling", "settling"),
        (PanPhase.STABLE, "stable", "stable"),
    ],
)
def test_each_phase_has_its_look_and_word(phase: PanPhase, look: str, word: str) -> None:
    view = pan(phase=phase)
    assert (view.phase, view.word, view.number, view.unit) == (look, word, "12.3", "g")


def test_the_ring_follows_the_settling() -> None:
    assert pan(phase=PanPhase.SETTLING).progress == 0.5


@pytest.mark.parametrize(("step", "number"), [("0.1", "12.3"), ("0.01", "12.30"), ("1", "12")])
def test_masses_have_the_digits_of_the_balance(step: str, number: str) -> None:
    assert pan(readability=Decimal(step)).number == number


def test_before_the_first_reading_nothing_is_invented() -> None:
    view = pan(shown=None)
    assert (view.word, view.number) == ("waiting", "")


# The cover -----------------------------------------------------------------------------------


def test_while_cups_are_out_the_pan_is_covered() -> None:
    view = pan(out=1)
    assert (view.phase, view.hidden_text) == ("hidden", "cups are out")
    assert (view.number, view.line1, view.progress) == ("", "", 0.0)


def test_a_coach_who_samples_sees_the_pan_while_cups_are_out() -> None:
    assert pan(started(), out=3).phase == "stable"


def test_a_coach_who_pours_sees_the_pan_while_cups_are_out() -> None:
    assert pan(in_container(C.POUR), out=3, shown="300.0").phase == "stable"


def test_a_covered_key_covers_the_pan() -> None:
    view = pan(in_container(C.KEY), covered=True)
    assert (view.phase, view.hidden_text) == ("hidden", "covered")


def test_while_it_pours_the_cover_of_the_key_hides_nothing() -> None:
    assert pan(in_container(C.POUR), covered=True, shown="300.0").number != ""


def test_while_something_waits_to_be_written_down_the_pan_is_closed() -> None:
    view = closed_pan(facts(simulated=False))
    assert (view.phase, view.number) == ("hidden", "")


# What is captured ----------------------------------------------------------------------------


def test_a_weighed_cup_stands_still_on_the_pan() -> None:
    view = in_weigh_empty(E.WEIGHED, 0).pan
    assert (view.phase, view.label, view.number) == ("captured", "empty cup", "112.3")


def test_a_second_weighed_cup_stays_covered() -> None:
    assert in_weigh_empty(E.WEIGHED, 3).pan.phase == "hidden"


def test_a_score_shows_what_is_inside_and_with_the_cup() -> None:
    view = in_hand_in(H.SCORED, 3).pan
    assert (view.phase, view.label, view.number) == ("captured", "inside", "93.4")
    assert view.line1 == "with the cup 205.7 g"


def test_after_the_scored_cup_is_lifted_the_cover_closes_over_the_others() -> None:
    assert in_hand_in(H.LIFTED, 3).pan.phase == "hidden"


# Tray and jar --------------------------------------------------------------------------------


def test_the_tray_is_taken_off() -> None:
    view = pan(sampled(1), shown="124.9")
    assert (view.label, view.number, view.line1) == (
        "on the tray",
        "103.5",
        "tray 21.4 g taken off",
    )


def test_without_the_tray_no_negative_mass_confuses() -> None:
    view = pan(sampled(1), shown="0.0", phase=PanPhase.EMPTY)
    assert (view.label, view.number, view.line1) == ("on the pan", "0.0", "")


def test_without_the_jar_nothing_is_counted() -> None:
    view = pan(in_container(C.POUR), shown="0.0", phase=PanPhase.EMPTY)
    assert (view.label, view.number, view.unit, view.line1) == ("on the pan", "0.0", "g", "")


def test_the_coach_sees_the_pan_of_the_scale_itself_open() -> None:
    grams = Decimal("12.3")
    state = PanState(phase=PanPhase.STABLE, grams=grams, readings_flow=True)
    assert pan_view(None, facts(3), state, None, grams, coach=True).number == "12.3"


def test_the_jar_counts_pieces_with_their_interval() -> None:
    view = pan(in_container(C.POUR), shown="659.9", phase=PanPhase.MOVING)
    assert (view.phase, view.unit, view.unit_below) == ("pouring", "pieces", True)
    assert " to " in view.line1
    assert view.line2 == "inside 500.0 g"


def test_an_empty_jar_holds_no_pieces() -> None:
    view = pan(in_container(C.POUR), shown="159.9")
    assert (view.number, view.line1) == ("0", "inside 0.0 g")


def test_a_key_keeps_its_number_whatever_the_pan_shows() -> None:
    procedure = in_container(C.KEY)
    assert pan(procedure, shown="0.0") == pan(procedure, shown="900.0")


# In the way ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("hindrance", "look", "words"),
    [
        (Hindrance.UNPLUGGED, "unplugged", "no scale"),
        (Hindrance.ASLEEP, "unplugged", "no scale"),
        (Hindrance.TOO_HEAVY, "too heavy", "take something off"),
        (Hindrance.BELOW_ZERO, "no mass", "empty it, press zero"),
        (Hindrance.TARED, "no mass", "empty it, press zero"),
        (Hindrance.NO_MASS, "no mass", "no number"),
    ],
)
def test_a_hindered_pan_shows_no_mass(hindrance: Hindrance, look: str, words: str) -> None:
    view = pan(hindrance=hindrance, flowing=False)
    assert (view.phase, view.hidden_text, view.number) == (look, words, "")


def test_a_scale_that_is_back_shows_what_it_sees_while_the_pan_is_to_be_emptied() -> None:
    assert pan(hindrance=Hindrance.UNPLUGGED, flowing=True).number == "12.3"


def test_a_scale_that_is_back_stays_covered_while_cups_are_out() -> None:
    assert pan(hindrance=Hindrance.UNPLUGGED, flowing=True, out=1).phase == "hidden"


# Simulated -----------------------------------------------------------------------------------


def test_a_simulated_mass_says_so() -> None:
    view = pan(simulated=True)
    assert (view.simulated, view.line1) == (True, "simulated")


def test_the_word_goes_to_the_second_line_where_the_first_is_taken() -> None:
    assert pan(sampled(1), shown="124.9", simulated=True).line2 == "simulated"


def test_a_typed_mass_says_so() -> None:
    view = pan(typed=True)
    assert (view.simulated, view.line1) == (False, "typed")


def test_a_covered_simulated_pan_keeps_its_rim() -> None:
    view = pan(out=1, simulated=True)
    assert (view.simulated, view.line1) == (True, "")


def test_a_real_pan_has_no_such_word() -> None:
    view = pan()
    assert (view.simulated, view.line1) == (False, "")
