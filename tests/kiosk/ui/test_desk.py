"""The desk: what starts what, and that nothing is shown before it is written down."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.estimating.pour_goal import AS_IT_COMES
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Person
from kiosk.procedures.throw_away import ThrowAway
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.records.entries import new_id
from kiosk.records.errors import Problem
from kiosk.records.store import Store
from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import Place
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.weighing.pan_events import PanEvent
from tests.helpers.held_writer import HeldWriter
from tests.helpers.pan import (
    DISTURBED,
    EMPTY,
    LOST,
    PLACED,
    press,
    settled,
    surroundings,
)

LENTILS = ("lentils", "pulses and grains", Decimal(20))


class Table:
    """A desk with its records; `again` counts orders to weigh again."""

    def __init__(self, store: Store) -> None:
        self.writer = HeldWriter(store)
        self.again = 0
        self.changes = 0
        self.desk = Desk(
            facts=TableFacts(simulated=True),
            world=replace(surroundings(), new_id=new_id),
            writer=self.writer,  # type: ignore[arg-type]  # as much of one as a desk needs
            weigh_again=self._weigh_again,
            changed=self._changed,
        )

    def _weigh_again(self) -> None:
        self.again += 1

    def _changed(self) -> None:
        self.changes += 1

    def happens(self, *events: PanEvent) -> None:
        """Pan events, each written down before the next."""
        for event in events:
            self.desk.pan_event(event)
            self.writer.answer()

    def pressed(self, person: Person, value: object = None) -> None:
        self.desk.press(press(person, value))
        self.writer.answer()

    def team(self, name: str) -> None:
        self.desk.team_chosen(name)
        self.writer.answer()

    def take_cup(self, team: str = "Heron", grams: str = "12.3") -> None:
        """An empty cup is weighed, taken, and its try parked."""
        self.team(team)
        self.happens(PLACED, settled(grams), EMPTY)
        self.pressed(Person.HOME)
        self.pressed(Person.LEAVE)

    @property
    def state(self) -> object:
        return None if self.desk.procedure is None else self.desk.procedure.state


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with closing(Store(str(tmp_path / "records.sqlite"))) as store:
        yield store


@pytest.fixture
def closed(store: Store) -> Table:
    """A table whose records are not open yet."""
    return Table(store)


@pytest.fixture
def table(closed: Table) -> Table:
    closed.desk.open()
    closed.writer.answer()
    return closed


# Opening -------------------------------------------------------------------------------------


def test_before_the_records_are_open_nothing_starts(closed: Table) -> None:
    closed.desk.open()
    closed.desk.fill_cup()
    closed.desk.team_chosen("Heron")
    closed.desk.make_count_key()
    assert (closed.desk.place, closed.desk.procedure) == (Place.HOME, None)


def test_opening_finds_the_cups_the_letters_and_the_material(table: Table, store: Store) -> None:
    table.take_cup()
    table.desk.material_chosen("beads")
    table.writer.answer()
    again = Table(store)
    again.desk.open()
    again.writer.answer()
    assert [cup.number for cup in again.desk.facts.cups] == [1]
    assert again.desk.facts.material == "beads"


def test_the_first_material_of_the_settings_is_the_usual_one(table: Table) -> None:
    assert table.desk.facts.material == table.desk.facts.settings.materials[0]


# Nothing is shown before it is written down --------------------------------------------------


def test_a_captured_mass_is_shown_only_once_it_is_written_down(table: Table) -> None:
    table.team("Heron")
    table.desk.pan_event(PLACED)
    table.desk.pan_event(settled("12.3"))
    assert not table.desk.settled_for_showing
    table.writer.answer()
    assert table.desk.settled_for_showing


def test_what_is_asked_of_the_records_makes_the_screen_wait_too(table: Table) -> None:
    table.desk.team_chosen("Heron")
    assert not table.desk.settled_for_showing


def test_a_press_counts_for_nothing_while_something_is_written_down(table: Table) -> None:
    table.team("Heron")
    table.desk.pan_event(PLACED)
    table.desk.pan_event(settled("12.3"))
    table.desk.press(press(Person.HOME))
    table.writer.answer()
    assert table.state is WeighEmptyState.WEIGHED


def test_the_pan_is_followed_while_something_is_written_down(table: Table) -> None:
    table.team("Heron")
    for event in (PLACED, settled("12.3"), EMPTY):
        table.desk.pan_event(event)
    table.writer.answer()
    assert table.state is WeighEmptyState.FILL


def test_a_press_that_the_state_does_not_offer_came_from_a_late_finger(table: Table) -> None:
    table.team("Heron")
    table.pressed(Person.YES)
    assert table.state is WeighEmptyState.PUT_ON


# Who starts what -----------------------------------------------------------------------------


def test_a_load_at_home_asks_whose_it_is_while_cups_are_out(table: Table) -> None:
    table.take_cup()
    table.happens(PLACED)
    assert table.state is HandInState.WHOSE


def test_with_no_cup_out_a_load_at_home_is_nobodys(table: Table) -> None:
    table.happens(PLACED)
    assert table.desk.procedure is None


def test_while_a_pair_is_chosen_a_load_asks_nothing(table: Table) -> None:
    table.take_cup()
    table.desk.fill_cup()
    table.happens(PLACED)
    assert table.desk.procedure is None


def test_a_pair_without_a_cup_weighs_an_empty_one(table: Table) -> None:
    table.team("Heron")
    assert isinstance(table.desk.procedure, WeighEmpty)
    assert table.desk.procedure.number == 1


def test_a_pair_with_a_cup_out_hands_it_in(table: Table) -> None:
    table.take_cup("Heron")
    table.team("Heron")
    assert isinstance(table.desk.procedure, HandIn)
    assert table.desk.procedure.number == 1


def test_somebody_just_trying_always_gets_a_new_cup(table: Table) -> None:
    table.take_cup("")
    table.team("")
    assert isinstance(table.desk.procedure, WeighEmpty)
    assert table.desk.procedure.number == 2


def test_the_next_pair_is_asked_who_it_is(table: Table) -> None:
    table.team("Heron")
    table.happens(PLACED, settled("12.3"), EMPTY)
    table.pressed(Person.GO_ON)
    assert (table.desk.procedure, table.desk.place) == (None, Place.TEAMS)


def test_a_cup_that_comes_in_between_is_asked_about(table: Table) -> None:
    table.team("Heron")
    table.happens(PLACED, settled("12.3"), EMPTY, PLACED)
    assert table.state is HandInState.WHOSE


def test_after_the_last_cup_a_load_in_between_leads_home(table: Table) -> None:
    table.take_cup()
    table.desk.hand_in(1)
    table.happens(PLACED, settled("105.7"), EMPTY, PLACED)
    assert (table.desk.procedure, table.desk.place) == (None, Place.HOME)


def test_the_next_try_is_the_same_pairs(table: Table) -> None:
    table.take_cup("Wren")
    table.desk.hand_in(1)
    table.happens(PLACED, settled("105.7"))
    table.pressed(Person.GO_ON)
    assert isinstance(table.desk.procedure, WeighEmpty)
    assert (table.desk.procedure.team, table.desk.procedure.number) == ("Wren", 2)


def test_a_scored_cup_is_not_out_any_more(table: Table) -> None:
    table.take_cup()
    table.desk.hand_in(1)
    table.happens(PLACED, settled("105.7"))
    assert table.desk.facts.cups == []
    assert table.desk.facts.errors == (pytest.approx(-6.6),)


def test_a_load_from_before_is_judged_afresh(table: Table) -> None:
    table.happens(PLACED, settled("12.3"))
    table.team("Heron")
    assert (table.state, table.again) == (WeighEmptyState.SETTLING, 1)


def test_leaving_leads_home(table: Table) -> None:
    table.team("Heron")
    table.pressed(Person.HOME)
    assert (table.desk.procedure, table.desk.place) == (None, Place.HOME)


def test_cups_can_be_thrown_away_only_while_some_are_out(table: Table) -> None:
    table.desk.throw_away()
    assert table.desk.procedure is None
    table.take_cup()
    table.desk.throw_away()
    assert isinstance(table.desk.procedure, ThrowAway)


def test_a_thrown_cup_is_not_out_any_more(table: Table) -> None:
    table.take_cup()
    table.desk.throw_away()
    table.pressed(Person.CHOOSE, 1)
    table.pressed(Person.YES)
    assert table.desk.facts.cups == []


# Keys ----------------------------------------------------------------------------------------


def to_spread(table: Table) -> None:
    table.desk.make_count_key()
    table.writer.answer()
    table.pressed(Person.CHOOSE, LENTILS)
    table.pressed(Person.NO)
    table.happens(PLACED, settled("21.4"), EMPTY)
    for gross in ("121.4", "122.0", "121.5"):
        table.happens(PLACED, settled(gross))
        table.pressed(Person.KEEP)
        table.happens(EMPTY)


def to_key(table: Table) -> None:
    to_spread(table)
    table.pressed(Person.GO_ON)
    table.pressed(Person.NO)
    table.pressed(Person.CHOOSE, AS_IT_COMES)
    table.happens(PLACED, settled("100.0"), DISTURBED, settled("500.0"))
    table.pressed(Person.STOP)


def test_enough_samples_lead_to_the_jar(table: Table) -> None:
    to_spread(table)
    assert table.state is SamplesState.SPREAD
    table.pressed(Person.GO_ON)
    assert isinstance(table.desk.procedure, FillContainer)


def test_more_samples_lead_back_to_the_tray(table: Table) -> None:
    to_key(table)
    assert table.state is ContainerState.KEY
    table.pressed(Person.MORE)
    assert isinstance(table.desk.procedure, CountSamples)
    assert len(table.desk.procedure.kept.samples) == 3


def test_a_kept_key_uses_its_letter_up(table: Table) -> None:
    to_key(table)
    table.desk.letter_chosen("C")
    table.pressed(Person.KEEP, "C")
    facts = table.desk.facts
    assert (facts.used_letters, facts.keys_kept, facts.letter) == (("C",), 1, "")


def test_a_key_left_half_made_is_offered(table: Table) -> None:
    to_spread(table)
    table.pressed(Person.HOME)
    table.pressed(Person.LEAVE)
    table.desk.make_count_key()
    table.writer.answer()
    assert table.state is SamplesState.RESUME


def test_a_new_key_is_not_covered(table: Table) -> None:
    table.desk.cover()
    assert table.desk.facts.covered
    table.desk.make_count_key()
    assert not table.desk.facts.covered


# When the records fail -----------------------------------------------------------------------


def failing(table: Table) -> None:
    """An empty cup was captured and cannot be written down."""
    table.team("Heron")
    table.desk.pan_event(PLACED)
    table.desk.pan_event(settled("12.3"))
    table.writer.fail()


def test_a_failure_is_a_sentence(table: Table) -> None:
    failing(table)
    assert table.desk.failure is not None
    assert "is full" in table.desk.failure


def test_while_it_fails_nothing_can_be_pressed_or_started(table: Table) -> None:
    failing(table)
    table.pressed(Person.HOME)
    table.desk.make_count_key()
    assert table.state is WeighEmptyState.WEIGHED


def test_trying_again_writes_it_once(table: Table, store: Store) -> None:
    failing(table)
    table.desk.try_again()
    table.desk.try_again()
    table.writer.answer()
    assert len(store.cups_out(simulated=True)) == 1
    assert table.desk.failure is None


def test_what_fails_again_is_kept_for_the_next_time(table: Table, store: Store) -> None:
    failing(table)
    table.desk.try_again()
    table.writer.fail()
    assert table.desk.failure is not None
    table.desk.try_again()
    table.writer.answer()
    assert len(store.cups_out(simulated=True)) == 1


def test_a_cup_lifted_meanwhile_is_known_to_be_lifted(table: Table) -> None:
    failing(table)
    table.desk.pan_event(EMPTY)
    table.desk.try_again()
    table.writer.answer()
    assert table.state is WeighEmptyState.FILL


def test_what_came_onto_the_pan_meanwhile_is_weighed_afresh(table: Table) -> None:
    failing(table)
    for event in (EMPTY, PLACED, settled("90.0")):
        table.desk.pan_event(event)
    table.desk.try_again()
    table.writer.answer()
    assert (table.state, table.again) == (WeighEmptyState.FILL, 1)


def test_a_cable_pulled_meanwhile_is_known(table: Table) -> None:
    failing(table)
    table.desk.pan_event(LOST)
    table.desk.try_again()
    assert table.desk.memory.hindrance is Hindrance.UNPLUGGED


def test_a_material_that_is_not_remembered_stops_nobody(table: Table) -> None:
    table.desk.choose_material()
    table.desk.material_chosen("beads")
    table.writer.fail()
    assert (table.desk.failure, table.desk.place) == (None, Place.TEAMS)
    assert table.desk.facts.material == "beads"


# When the records refuse for good -------------------------------------------------------------


def test_a_question_that_cannot_be_answered_may_be_left(table: Table) -> None:
    table.desk.fill_cup()
    table.desk.team_chosen("Heron")
    table.writer.fail(Problem.ALL_OUT)
    table.desk.go_home()
    table.writer.answer()
    assert (table.desk.failure, table.desk.place) == (None, Place.HOME)


def test_what_can_still_be_kept_is_not_left(table: Table) -> None:
    failing(table)
    table.desk.go_home()
    assert table.desk.failure is not None
    assert not table.desk.may_leave


def test_what_can_never_be_kept_is_left_and_the_table_looked_at_anew(table: Table) -> None:
    other = Table(table.writer.store)
    other.desk.open()
    other.writer.answer()
    table.team("Heron")
    other.take_cup("Wren")
    table.happens(PLACED, settled("12.3"))
    assert table.desk.failure is not None
    table.desk.go_home()
    table.writer.answer()
    assert (table.desk.failure, table.desk.procedure) == (None, None)
    assert [cup.team for cup in table.desk.facts.cups] == ["Wren"]


def test_records_that_never_opened_cannot_be_left(closed: Table) -> None:
    closed.desk.open()
    closed.writer.fail(Problem.DAMAGED)
    closed.desk.go_home()
    assert closed.desk.failure is not None


def test_tries_that_cannot_be_read_stop_nobody(table: Table) -> None:
    table.take_cup()
    table.desk.hand_in(1)
    table.writer.answer()
    table.desk.pan_event(PLACED)
    table.desk.pan_event(settled("105.7"))
    table.writer.answer_one()
    table.writer.fail()
    assert (table.desk.failure, table.state) == (None, HandInState.SCORED)
    assert table.desk.facts.errors == (pytest.approx(-6.6),)


# Telling -------------------------------------------------------------------------------------


def test_whoever_shows_it_is_told_of_every_change(table: Table) -> None:
    table.desk.fill_cup()
    table.writer.answer()
    assert table.changes > 0
    before = table.changes
    table.desk.turn_page()
    table.desk.go_home()
    table.desk.letter_chosen("B")
    table.desk.pan_event(PLACED)
    assert table.changes == before + 4
