"""What the cup table shows: whose turn it is, what is to be done, and never a mass."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.procedures.queue_steps import QueueState
from kiosk.rounds.contents import ClockNote, ClockTurn, CupTurn
from kiosk.rounds.cups import Pass
from kiosk.ui.presenters.queue_views import QueueView, queue_pan, queue_view, set_aside_view
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    HandInView,
    MessageView,
    PanView,
    QuestionView,
    TroubleView,
)
from kiosk.weighing.pan_state import PanPhase, PanState
from tests.helpers.pan import PLACED, feed, press
from tests.helpers.queue_hands import CLEAN, handing_in, off, on, pan_at, table, weighed_empty
from tests.helpers.round_notes import said

S = QueueState
P = Person
FACTS = TableFacts(readability=Decimal("0.1"))
LATE, ASIDE = (press(P.CHOOSE, turn) for turn in (CupTurn.LATE, CupTurn.SET_ASIDE))


def sheet(procedure: CupQueue, *, simulated: bool = False) -> QueueView:
    view = queue_view(procedure, TableFacts(simulated=simulated))
    assert isinstance(view, QueueView)
    return view


def pair(procedure: CupQueue) -> list[tuple[str, str]]:
    return [(step.text, step.look) for step in sheet(procedure).pair]


def pan(procedure: CupQueue, shown: str | None, phase: PanPhase = PanPhase.EMPTY) -> PanView:
    state = PanState(phase=phase, readings_flow=True)
    return queue_pan(procedure, FACTS, state, None if shown is None else Decimal(shown))


def test_the_list_is_told_in_words_and_dots() -> None:
    view = sheet(handing_in(*on("110.0"), *off(), ASIDE))
    assert (view.progress.done, view.progress.aside) == ("1 of 3", "1 set aside")
    assert view.progress.dots == ("done", "aside", "now")
    assert (view.number, view.team, view.then) == (3, "Teal", "then Heron")


def test_a_cup_without_a_mass_has_a_dot_of_its_own() -> None:
    assert sheet(handing_in(LATE)).progress.dots == ("without", "now", "to come")


def test_a_cup_that_was_set_aside_comes_back_and_says_so() -> None:
    view = sheet(handing_in(ASIDE, LATE, LATE))
    assert (view.number, view.when, view.then) == (1, "comes back", "the last one")


@pytest.mark.parametrize(
    ("events", "wanted"),
    [
        ((), [("The pan is empty.", "done"), ("Put cup 1 on.", "now")]),
        ((PLACED,), [("Cup 1 is on.", "done"), ("Hands off cup 1.", "now")]),
        (on("110.0"), [("Cup 1 is on.", "done"), ("Take it off.", "now")]),
        ((pan_at("0.3"),), [("Brush the pan.", "now"), ("Put cup 1 on.", "then")]),
        (
            (*on("110.0"), off()[0]),
            [("The pan is seen empty.", "now"), ("Put cup 2 on.", "then")],
        ),
        ((PLACED, *off()), [("The pan is empty.", "done"), ("Too soon. Put it back on.", "now")]),
    ],
)
def test_two_steps_say_what_is_to_be_done(
    events: tuple[object, ...], wanted: list[tuple[str, str]]
) -> None:
    assert pair(handing_in(*events)) == wanted  # type: ignore[arg-type]  # events of two kinds


def test_an_empty_cup_is_asked_for_empty() -> None:
    procedure = table(weighed_empty(), Pass.EMPTY)
    feed(procedure, CLEAN)
    assert pair(procedure)[1] == ("Put cup 1 on, empty.", "now")
    assert [button.text for button in sheet(procedure).outcomes] == ["Set\naside"]


def test_a_recorded_cup_is_signed_and_sounded_once() -> None:
    procedure = handing_in(*on("110.0"))
    view = sheet(procedure)
    assert (view.kept, view.number, view.team, view.title) == (
        True, 1, "Wren", "Cup 1 is recorded.",
    )  # fmt: skip
    before = view.signal
    feed(procedure, *off(), *on("99.0"))
    assert before
    assert sheet(procedure).signal not in ("", before)


def test_the_other_outcomes_are_buttons() -> None:
    said_ = [button.says for button in sheet(handing_in()).outcomes]
    assert said_ == [
        PersonEvent(P.MISHAP),
        PersonEvent(P.CHOOSE, CupTurn.LATE),
        PersonEvent(P.CHOOSE, CupTurn.NOT_HANDED_IN),
        PersonEvent(P.CHOOSE, CupTurn.SET_ASIDE),
    ]


def test_spilled_is_asked_about() -> None:
    view = sheet(handing_in(press(P.MISHAP)))
    assert view.else_text == "What happened to cup 1?"
    assert [button.says.value for button in view.outcomes if button.says] == [
        CupTurn.SPILLED_BEFORE, CupTurn.SPILLED_AFTER, CupTurn.CRACKED,
    ]  # fmt: skip


def test_a_cup_without_an_empty_mass_says_so_and_offers_a_way_out() -> None:
    procedure = table(weighed_empty())
    feed(procedure, CLEAN)
    view = sheet(procedure)
    assert [step.text for step in view.pair] == ["No empty weight yet.", "It cannot be handed in."]
    assert view.main
    assert view.main.says == PersonEvent(P.GO_ON)


def test_undo_names_the_cup_and_leaves_the_bench_its_key() -> None:
    procedure = handing_in(*on("110.0"), *off())
    view = sheet(procedure)
    assert view.beside_home
    assert view.beside_home.text == "Undo cup 1"
    simulated = sheet(procedure, simulated=True)
    assert simulated.beside_home is None
    assert simulated.second == view.beside_home


def test_nothing_can_be_undone_at_the_start() -> None:
    assert sheet(handing_in()).beside_home is None


def test_the_cups_that_have_to_come_are_offered_by_number() -> None:
    view = queue_view(handing_in(*on("110.0"), *off(), press(P.MORE)), FACTS)
    assert isinstance(view, HandInView)
    assert [(mark.number, mark.name) for mark in view.cups] == [(2, "Heron"), (3, "Teal")]
    assert view.title == "Which cup comes next?"


def test_an_odd_cup_is_asked_about_without_its_mass() -> None:
    view = queue_view(handing_in(*on("10.4")), FACTS)
    assert isinstance(view, QuestionView)
    assert view.title == "Is this cup 1, filled?"
    assert "10" not in view.body


def test_when_all_are_done_those_without_a_mass_are_counted() -> None:
    view = queue_view(handing_in(LATE, LATE, *on("99.0"), *off()), FACTS)
    assert isinstance(view, MessageView)
    assert view.lines[0] == "2 of them without a mass."


def test_a_cup_that_ended_is_offered_with_its_outcome() -> None:
    done = queue_view(handing_in(LATE, LATE, *on("99.0"), *off()), FACTS)
    assert done.main
    assert (done.main.text, done.main.says) == ("Another cup", PersonEvent(P.MORE))
    view = queue_view(handing_in(LATE, press(P.MORE)), FACTS)
    assert isinstance(view, HandInView)
    assert [(mark.number, mark.name) for mark in view.cups] == [
        (2, "Heron"), (3, "Teal"), (1, "late"),
    ]  # fmt: skip


def test_when_no_cup_ended_no_other_one_is_offered() -> None:
    cups = [event for grams in ("110.0", "99.0", "88.0") for event in (*on(grams), *off())]
    view = queue_view(handing_in(*cups), FACTS)
    assert isinstance(view, MessageView)
    assert view.main is None


@pytest.mark.parametrize(
    ("begun", "words"),
    [
        (False, "The teams may take them and fill them when the clock starts."),
        (True, "Now the teams may take them and fill them."),
    ],
)
def test_cups_are_filled_when_the_clock_runs(*, begun: bool, words: str) -> None:
    state = weighed_empty("12.3", teams=("Wren",))
    start = [ClockNote(sitting=1, turn=ClockTurn.START)] if begun else []
    view = queue_view(table(said(state, *start), Pass.EMPTY), FACTS)
    assert isinstance(view, MessageView)
    assert view.lines == (words,)


def test_in_a_protest_nothing_but_a_mass_is_offered() -> None:
    state = handing_in(*on("110.0"), *off()).list.round
    procedure = table(state, again="wren", protest="p")
    feed(procedure, CLEAN)
    view = sheet(procedure)
    assert (view.outcomes, view.else_text, view.other, view.other_text) == ((), "", None, "")
    trouble = TroubleView(title="", lines=())
    assert set_aside_view(trouble, procedure) == trouble


# The pan -------------------------------------------------------------------------------------


def test_the_empty_pan_is_open() -> None:
    view = pan(handing_in(), "0.1")
    assert (view.phase, view.number, view.label) == ("empty", "0.1", "empty pan")


def test_a_dirty_pan_says_what_it_should_show() -> None:
    view = pan(handing_in(pan_at("0.3")), "0.3", PanPhase.SETTLING)
    assert (view.phase, view.number, view.line1) == ("not zero", "0.3", "should be 0.0 g")


@pytest.mark.parametrize("events", [(PLACED,), on("110.0"), on("10.0")])
def test_from_the_moment_a_cup_is_on_the_pan_is_covered(events: tuple[object, ...]) -> None:
    procedure = handing_in(*events)  # type: ignore[arg-type]  # events of two kinds
    assert pan(procedure, "1.0").phase == "hidden"


@pytest.mark.parametrize("events", [(), (pan_at("0.3"),), (press(P.MORE),)])
def test_what_is_as_heavy_as_a_cup_is_covered_before_anything_else_is_known(
    events: tuple[object, ...],
) -> None:
    procedure = handing_in(*events)  # type: ignore[arg-type]  # events of two kinds
    assert pan(procedure, "2.0", PanPhase.MOVING).phase == "hidden"


def test_a_pan_of_which_nothing_is_known_is_covered() -> None:
    assert pan(handing_in(), None).phase == "hidden"
