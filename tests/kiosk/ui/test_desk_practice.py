"""Cups of students beside a round: none is weighed while teams work, but by the coach's leave."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.procedures.hand_in import HandIn
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.procedures.weigh_empty import WeighEmpty
from kiosk.records.entries import new_id
from kiosk.records.errors import Problem
from kiosk.records.store import Store
from kiosk.rounds.contents import ClockNote, ClockTurn
from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import Place
from kiosk.ui.desk_practice import ROUND_SEEN_S
from kiosk.ui.lock import CODE, digest_of
from kiosk.ui.presenters.scene import scene_of
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.weighing.pan_watch import PanPhase, PanState
from tests.helpers.held_writer import HeldWriter
from tests.helpers.pan import EMPTY, PLACED, STARTED, settled, surroundings
from tests.helpers.round_notes import said, team, with_teams

COACHS = "271828"


class Kiosk:
    """A desk whose records have a round with one sitting; Wren has ten minutes more."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.state = said(with_teams(["Heron"]), team("Wren", cup=2, extra_minutes=10))
        self._keep()
        store.remember(CODE, digest_of(COACHS, b"salt"))
        self.writer = HeldWriter(store)
        self.minutes = 0.0
        self.desk = Desk(
            facts=TableFacts(simulated=True),
            world=replace(surroundings(), new_id=new_id, utc=self._utc),
            writer=self.writer,  # type: ignore[arg-type]  # as much of one as a desk needs
            weigh_again=lambda: None,
            changed=lambda: None,
        )
        self.desk.lock.close()
        self.desk.open()
        self.writer.answer()

    def _utc(self, _: float) -> object:
        return STARTED + timedelta(minutes=self.minutes)

    def _keep(self) -> None:
        chains = self.state.chains.values()
        self.store.save(*(one.note for chain in chains for one in chain))

    def turn(self, turn: ClockTurn, minutes: float = 0) -> None:
        """Somebody notes this about the sitting's clock, at another kiosk."""
        self.state = said(
            self.state, ClockNote(sitting=1, turn=turn, reason="rain"), seconds=minutes * 60
        )
        self.store.save(self.state.history("clock 1")[-1].note)

    def fill_cup(self) -> None:
        self.desk.fill_cup()
        self.writer.answer()

    def team(self) -> None:
        self.desk.team_chosen("Heron")
        self.writer.answer()

    def cup_out(self) -> None:
        """Heron takes an empty cup."""
        self.team()
        for event in (PLACED, settled("12.3"), EMPTY):
            self.desk.pan_event(event)
            self.writer.answer()
        for kind in (Person.HOME, Person.LEAVE):
            self.desk.press(PersonEvent(kind))
            self.writer.answer()


@pytest.fixture
def kiosk(tmp_path: Path) -> Iterator[Kiosk]:
    with closing(Store(str(tmp_path / "records"))) as store:
        yield Kiosk(store)


def test_before_a_round_begins_cups_are_filled(kiosk: Kiosk) -> None:
    kiosk.fill_cup()
    assert kiosk.desk.place is Place.TEAMS


@pytest.mark.parametrize(
    ("turns", "minutes", "place"),
    [
        ([(ClockTurn.START, 0)], 5, Place.ROUND_RUNS),
        ([(ClockTurn.START, 0), (ClockTurn.PAUSE, 5)], 1000, Place.ROUND_RUNS),
        ([(ClockTurn.START, 0), (ClockTurn.PAUSE, 5)], 5000, Place.TEAMS),
        ([(ClockTurn.START, 0), (ClockTurn.STOP, 5)], 6, Place.TEAMS),
        ([(ClockTurn.START, 0)], 35, Place.ROUND_RUNS),
        ([(ClockTurn.START, 0)], 41, Place.TEAMS),
        ([(ClockTurn.START, 0)], 5000, Place.TEAMS),
    ],
    ids=["runs", "paused", "forgotten", "stopped", "extra time", "over", "long over"],
)
def test_no_cup_is_filled_while_teams_work(
    kiosk: Kiosk, turns: list[tuple[ClockTurn, float]], minutes: float, place: Place
) -> None:
    for turn, at in turns:
        kiosk.turn(turn, at)
    kiosk.minutes = minutes
    kiosk.fill_cup()
    assert kiosk.desk.place is place


def test_who_was_asked_before_the_start_is_stopped_after_it(kiosk: Kiosk) -> None:
    kiosk.fill_cup()
    kiosk.turn(ClockTurn.START)
    kiosk.team()
    assert (kiosk.desk.place, kiosk.desk.procedure) == (Place.ROUND_RUNS, None)


@pytest.mark.parametrize("by", ["a tap", "the pan"])
def test_no_cup_is_handed_in_while_teams_work(kiosk: Kiosk, by: str) -> None:
    kiosk.cup_out()
    kiosk.turn(ClockTurn.START)
    if by == "a tap":
        kiosk.desk.hand_in(1)
    else:
        kiosk.desk.pan_event(PLACED)
    kiosk.writer.answer()
    assert (kiosk.desk.place, kiosk.desk.procedure) == (Place.ROUND_RUNS, None)


def test_the_sheet_that_says_so_shows_no_mass(kiosk: Kiosk) -> None:
    kiosk.turn(ClockTurn.START)
    kiosk.fill_cup()
    lies = PanState(phase=PanPhase.STABLE, grams=Decimal("108.7"))
    scene = scene_of(kiosk.desk, lies, connected=True, shown=lies.grams)
    assert (scene.sheet.title, scene.pan.number) == ("A round is running.", "")


def test_the_coach_goes_on_by_the_code_and_once_only(kiosk: Kiosk) -> None:
    kiosk.turn(ClockTurn.START)
    kiosk.fill_cup()
    kiosk.desk.let_on()
    assert kiosk.desk.locked
    for digit in COACHS:
        kiosk.desk.code_press(PersonEvent(Person.TYPE, digit))
    kiosk.desk.code_press(PersonEvent(Person.ENTER))
    assert kiosk.desk.place is Place.TEAMS
    kiosk.team()
    assert isinstance(kiosk.desk.procedure, WeighEmpty)
    kiosk.desk.press(PersonEvent(Person.HOME))
    kiosk.writer.answer()
    kiosk.fill_cup()
    assert kiosk.desk.place is Place.ROUND_RUNS


def test_records_that_are_away_stop_no_cup_that_comes_back(kiosk: Kiosk) -> None:
    kiosk.cup_out()
    kiosk.desk.hand_in(1)
    kiosk.writer.fail(Problem.FULL)
    assert (kiosk.desk.failure, type(kiosk.desk.procedure)) == (None, HandIn)


def test_the_table_shows_no_mass_while_a_round_runs(kiosk: Kiosk) -> None:
    lies = PanState(phase=PanPhase.STABLE, grams=Decimal("108.7"))

    def number() -> str:
        kiosk.desk.others_wrote()
        kiosk.writer.answer()
        return scene_of(kiosk.desk, lies, connected=True, shown=lies.grams).pan.number

    assert number() != ""
    kiosk.turn(ClockTurn.START)
    assert number() == ""
    kiosk.minutes = 50
    kiosk.desk.tick(kiosk.desk.world.now() + 2 * ROUND_SEEN_S)
    kiosk.writer.answer()
    assert number() != ""
