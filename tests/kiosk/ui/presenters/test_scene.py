"""The whole picture of one moment: which sheet wins, and what the strip says."""

from __future__ import annotations

import pytest

from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.hand_in import HandInState
from kiosk.procedures.pan_memory import Hindrance, PanMemory
from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.records.errors import Problem
from kiosk.ui.desk_base import Place
from kiosk.ui.presenters.scene import Scene, scene_of
from kiosk.ui.reading_off import ReadingOff
from kiosk.weighing.pan_watch import PanPhase, PanState
from tests.helpers.pan import LOST, PLACED, feed, settled
from tests.helpers.scenes import (
    RefusingWriter,
    desk,
    facts,
    in_container,
    in_hand_in,
    in_weigh_empty,
    of_container,
    refusing_to_say,
    sampled,
    scene,
    started,
    table,
    weigh_empty,
)


def weighing(seconds: float, hindrance: Hindrance | None = None) -> Scene:
    """A cup lies on the pan and has not come to rest for so long."""
    procedure = weigh_empty()
    feed(procedure, PLACED)
    procedure.pan.hindrance = hindrance
    return scene(desk(facts(), procedure), phase=PanPhase.MOVING, restless_for=seconds)


# Which sheet ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("place", "screen"),
    [(Place.HOME, "home"), (Place.TEAMS, "choices"), (Place.MATERIALS, "choices")],
)
def test_without_a_procedure_the_place_is_shown(place: Place, screen: str) -> None:
    assert table(place, 0).sheet.screen == screen


def test_what_cannot_be_written_down_comes_before_everything_else() -> None:
    procedure = weigh_empty()
    made = desk(facts(), procedure, writer=RefusingWriter(Problem.FULL))
    for event in (PLACED, settled("12.3"), LOST):
        made.pan_event(event)
    sheet = scene(made).sheet
    assert (sheet.title, sheet.home) == ("Not written down yet.", None)


def test_a_question_that_the_records_refuse_can_be_left() -> None:
    sheet = refusing_to_say().sheet
    assert sheet.title == "That did not work."
    assert sheet.home is not None


def test_a_hindrance_comes_before_the_step() -> None:
    assert weighing(0.0, Hindrance.UNPLUGGED).sheet.screen == "trouble"


def test_a_hindrance_comes_before_restlessness() -> None:
    assert weighing(9.0, Hindrance.TARED).sheet.title == "The scale was tared by its key."


@pytest.mark.parametrize(("seconds", "screen"), [(5.9, "put on"), (6.0, "trouble")])
def test_causes_are_named_after_six_seconds(seconds: float, screen: str) -> None:
    assert weighing(seconds).sheet.screen == screen


def test_a_pour_that_does_not_rest_is_no_trouble() -> None:
    made = desk(facts(), in_container(ContainerState.POUR))
    assert scene(made, phase=PanPhase.MOVING, restless_for=60.0).sheet.screen == "pour"


def test_a_hindrance_does_not_hide_what_needs_no_pan() -> None:
    procedure = in_container(ContainerState.KEY)
    procedure.pan.hindrance = Hindrance.UNPLUGGED
    assert scene(desk(facts(), procedure)).sheet.screen == "key"


def test_a_hindrance_does_not_hide_the_table() -> None:
    made = desk(facts(), pan=PanMemory(hindrance=Hindrance.UNPLUGGED))
    assert scene(made).sheet.screen == "home"


def test_a_trouble_stays_on_the_step_of_the_way() -> None:
    procedure = sampled(1)
    procedure.pan.hindrance = Hindrance.UNPLUGGED
    sheet = scene(desk(facts(), procedure)).sheet
    assert (sheet.step, sheet.steps, sheet.step_text) == (2, 5, "Step 2 of 5: samples")


def test_a_trouble_always_has_a_way_home() -> None:
    assert weighing(9.0).sheet.home is not None
    assert weighing(0.0, Hindrance.ASLEEP).sheet.home is not None


# The strip -----------------------------------------------------------------------------------


def test_the_table_names_the_place() -> None:
    assert table(Place.HOME, 0).strip.words == ("Scale connected", "Larch Hill Middle School")


def test_a_pair_and_its_cup_are_named() -> None:
    words = in_weigh_empty(WeighEmptyState.PUT_ON, 0).strip.words
    assert words[1:] == ("Team Hummingbirds A", "cup 99")


def test_a_hand_in_names_its_cup_once_it_is_chosen() -> None:
    assert in_hand_in(HandInState.CHOOSE, 1).strip.words[1:] == ("Hand in",)
    assert in_hand_in(HandInState.PUT_ON, 1).strip.words[1:] == ("Team Hummingbirds A", "cup 99")


def test_a_key_is_the_coachs_and_names_its_material() -> None:
    strip = of_container(ContainerState.POUR).strip
    assert strip.words[1:] == ("Count key", "lentils")
    assert (strip.lock, strip.lock_text) == ("coach", "coach")


def test_the_students_side_has_no_lock() -> None:
    assert in_hand_in(HandInState.PUT_ON, 1).strip.lock == ""


@pytest.mark.parametrize(
    ("connected", "hindrance", "words"),
    [
        (True, None, "Scale connected"),
        (False, Hindrance.UNPLUGGED, "Scale unplugged"),
        (True, Hindrance.ASLEEP, "Scale asleep"),
        (True, Hindrance.TARED, "Scale connected"),
    ],
)
def test_the_strip_tells_how_the_scale_is(
    connected: bool, hindrance: Hindrance | None, words: str
) -> None:
    made = desk(facts(), started())
    made.memory.hindrance = hindrance
    strip = scene_of(made, PanState(), connected=connected, shown=None).strip
    assert strip.words[0] == words
    assert strip.connected == (words == "Scale connected")


@pytest.mark.parametrize("simulated", [True, False])
def test_a_simulated_scale_says_so_on_every_screen(simulated: bool) -> None:
    made = desk(facts(simulated=simulated), in_container(ContainerState.KEY))
    shown = scene(made)
    assert (shown.strip.simulated, shown.pan.simulated) == (simulated, simulated)


def test_typed_readings_say_so_instead_of_a_plug() -> None:
    made = desk(facts(simulated=False, typed=True), started())
    strip = scene_of(made, PanState(), connected=False, shown=None).strip
    assert strip.typed
    assert strip.words[0] == "Typed readings"


def test_nothing_is_typed_while_something_waits_to_be_written_down() -> None:
    made = desk(facts(typed=True), weigh_empty(), writer=RefusingWriter(Problem.FULL))
    pad = ReadingOff(lambda _events: None, lambda: 0.0)
    assert scene(made, typing=pad).pad is not None
    for event in (PLACED, settled("12.3")):
        made.pan_event(event)
    assert scene(made, typing=pad).pad is None
