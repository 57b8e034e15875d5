"""What fingers reach: each press goes to the desk or to the bench, and to nobody else."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from drivers.simulated.table import simulated_table
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui.controls import FULL_SHEETS, Controls
from kiosk.ui.desk_base import Place
from kiosk.ui.presenters.bench import BenchModel
from kiosk.ui.presenters.views import PutOnView, SheetView, button
from tests.helpers.pan import press
from tests.helpers.sampled import started
from tests.helpers.scenes import facts, weigh_empty

HOME = button("Home", Person.HOME)


class Heard:
    """Stands in for a desk: notes what reaches it."""

    failure: str | None = None
    locked = False
    teaching = None
    in_room = False

    def __init__(self, procedure: object = None, place: Place = Place.HOME) -> None:
        self.procedure = procedure
        self.place = place
        self.calls: list[tuple[Any, ...]] = []

    def __getattr__(self, name: str) -> Callable[..., None]:
        def call(*words: Any) -> None:
            self.calls.append((name, *words))

        return call


class HeardStation:
    """Stands in for a station: Controls want its desk only."""

    def __init__(self, desk: Heard) -> None:
        self.desk = desk


def controls(
    procedure: object = None, place: Place = Place.HOME, bench: object = None
) -> tuple[Controls, Heard]:
    desk = Heard(procedure, place)
    made = Controls(HeardStation(desk), bench, lambda: None)  # type: ignore[arg-type]
    return made, desk


@pytest.fixture
def bench() -> BenchModel:
    with simulated_table(clock=lambda: 0.0) as table:
        return BenchModel(table, facts(), lambda: None)


# Presses -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("person", "call"), [(Person.COVER, ("cover",)), (Person.AGAIN, ("try_again",))]
)
def test_some_presses_are_not_for_the_procedure(person: Person, call: tuple[str, ...]) -> None:
    made, desk = controls(weigh_empty())
    made.press(press(person))
    assert desk.calls == [call]


def test_other_presses_are_for_the_procedure() -> None:
    made, desk = controls(weigh_empty())
    made.press(press(Person.YES))
    assert desk.calls == [("press", press(Person.YES))]


def test_home_without_a_procedure_leads_to_the_table() -> None:
    made, desk = controls()
    made.press(press(Person.HOME))
    assert desk.calls == [("go_home",)]


def test_home_beside_a_failure_is_for_the_desk() -> None:
    made, desk = controls(weigh_empty())
    desk.failure = "All numbers are out."
    made.press(press(Person.HOME))
    assert desk.calls == [("go_home",)]


def test_home_in_a_procedure_is_for_the_procedure() -> None:
    made, desk = controls(weigh_empty())
    made.press(press(Person.HOME))
    assert desk.calls == [("press", press(Person.HOME))]


@pytest.mark.parametrize(
    ("procedure", "place", "call"),
    [
        (None, Place.TEAMS, ("team_chosen", "rice")),
        (None, Place.MATERIALS, ("material_chosen", "rice")),
        (started(), Place.HOME, ("press", press(Person.CHOOSE, "rice"))),
    ],
)
def test_a_chosen_card_means_what_was_asked(
    procedure: object, place: Place, call: tuple[Any, ...]
) -> None:
    made, desk = controls(procedure, place)
    made.chosen("rice")
    assert desk.calls == [call]


@pytest.mark.parametrize(
    ("procedure", "place", "call"),
    [
        (None, Place.TEAMS, ("go_home",)),
        (None, Place.MATERIALS, ("fill_cup",)),
        (started(), Place.HOME, ("press", press(Person.HOME))),
    ],
)
def test_the_way_back_from_cards_leads_to_where_they_came_from(
    procedure: object, place: Place, call: tuple[Any, ...]
) -> None:
    made, desk = controls(procedure, place)
    made.leave_choice()
    assert desk.calls == [call]


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("fill_cup", ()),
        ("hand_in", (7,)),
        ("hand_in", (None,)),
        ("turn_page", ()),
        ("letter_chosen", ("C",)),
    ],
)
def test_the_rest_goes_straight_to_the_desk(name: str, words: tuple[Any, ...]) -> None:
    made, desk = controls()
    getattr(made, name)(*words)
    assert desk.calls == [(name, *words)]


# Things --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("drawer", "label", "opens"),
    [
        ("make_count_key", "home.count_key", "make_count_key"),
        ("open_scale", "home.scale", "open_scale"),
        ("throw_away", "home.throw", "throw_away"),
    ],
)
def test_a_drawer_opens_for_the_coach_only(drawer: str, label: str, opens: str) -> None:
    made, desk = controls()
    getattr(made, drawer)()
    ((call, told, then),) = desk.calls
    assert (call, told) == ("as_coach", label)
    then()
    assert desk.calls[-1] == (opens,)


def test_while_the_code_is_asked_for_every_press_is_for_the_lock() -> None:
    made, desk = controls(started())
    desk.locked = True
    for kind in (Person.TYPE, Person.HOME, Person.KEEP):
        made.press(press(kind))
    assert [call[0] for call in desk.calls] == ["code_press"] * 3


def test_things_are_laid_out_and_put_away(bench: BenchModel) -> None:
    made, desk = controls(weigh_empty(), bench=bench)
    made.press(press(Person.THINGS))
    assert made.things_out
    made.press(press(Person.THINGS))
    assert not made.things_out
    assert desk.calls == []


def test_a_real_scale_has_no_things() -> None:
    made, _ = controls()
    sheet = PutOnView(home=HOME)
    assert not made.things_out
    assert made.dressed(sheet) is sheet


def test_the_key_for_the_things_stands_beside_home(bench: BenchModel) -> None:
    made, _ = controls(bench=bench)
    words = []
    for _ in range(2):
        beside = made.dressed(PutOnView(home=HOME)).beside_home
        assert beside is not None
        words.append(beside.text)
        made.press(press(Person.THINGS))
    assert words == ["Things", "Put away"]


def test_where_that_place_is_taken_it_stays_so(bench: BenchModel) -> None:
    made, _ = controls(bench=bench)
    sheet = PutOnView(home=HOME, beside_home=button("Cover"))
    assert made.dressed(sheet) is sheet


@pytest.mark.parametrize("screen", FULL_SHEETS)
def test_a_sheet_that_needs_its_width_puts_the_things_away(bench: BenchModel, screen: str) -> None:
    made, _ = controls(bench=bench)
    bench.out = True
    made.follow(SheetView(screen="put on"))
    assert made.things_out
    made.follow(SheetView(screen=screen))
    assert not made.things_out


def test_once_it_is_there_the_things_may_be_laid_over_it(bench: BenchModel) -> None:
    made, _ = controls(bench=bench)
    made.follow(SheetView(screen="score"))
    made.press(press(Person.THINGS))
    made.follow(SheetView(screen="score"))
    assert made.things_out


def test_the_bench_knows_what_is_being_done(bench: BenchModel) -> None:
    procedure = started()
    made, _ = controls(procedure, bench=bench)
    made.follow(SheetView(screen="samples"))
    assert bench.procedure is procedure


def test_beside_a_round_that_runs_the_coach_goes_on() -> None:
    made, desk = controls(place=Place.ROUND_RUNS)
    made.press(PersonEvent(Person.GO_ON))
    assert desk.calls == [("let_on",)]
