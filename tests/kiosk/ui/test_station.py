"""The station: readings in, scenes out, in the time that is handed in."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from pathlib import Path

import pytest

from drivers.errors import Reason
from drivers.events import Back, Identified, Lost, ReadingReceived
from kiosk.evidence import Source
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.records.store import Store
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.station import Station
from kiosk.weighing.pan_watch import PanPhase
from tests.helpers.held_writer import HeldWriter
from tests.helpers.pan import shown
from tests.helpers.simulated_desk import ManualClock

NINE = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
EVERY_S = 0.1


class Played:
    """A station whose balance is played by hand; `changes` counts what it told."""

    def __init__(self, store: Store, *, simulated: bool = False) -> None:
        self.clock = ManualClock(100.0)
        self.writer = HeldWriter(store)
        self.changes = 0
        self.station = Station(
            facts=TableFacts(simulated=simulated),
            writer=self.writer,  # type: ignore[arg-type]  # as much of one as a station needs
            clock=self.clock,
            changed=self._changed,
            wall=lambda: NINE + timedelta(seconds=self.clock.now - 100.0),
        )
        self.station.desk.open()
        self.writer.answer()

    def _changed(self) -> None:
        self.changes += 1

    def reads(self, grams: str) -> None:
        """One reading, a tenth of a second after the one before."""
        self.clock.wait(EVERY_S)
        self.station.balance_event(ReadingReceived(reading=shown(grams, self.clock.now)))

    def rests(self, grams: str, seconds: float = 3.0) -> None:
        """The same reading for so long."""
        for _ in range(round(seconds / EVERY_S)):
            self.reads(grams)

    def team(self, name: str) -> None:
        self.station.desk.team_chosen(name)
        self.writer.answer()

    @property
    def state(self) -> object:
        procedure = self.station.desk.procedure
        assert isinstance(procedure, Procedure)
        return procedure.state


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with closing(Store(str(tmp_path / "records.sqlite"))) as store:
        yield store


@pytest.fixture
def played(store: Store) -> Played:
    """An empty pan at zero on a balance that steps by 0.1 g."""
    played = Played(store)
    played.station.balance_event(Back(where="port", at=100.0))
    played.station.balance_event(
        Identified(name="bench", capacity=Decimal(2000), readability=Decimal("0.1"), at=100.0)
    )
    played.rests("0.0")
    return played


# Readings in ---------------------------------------------------------------------------------


def test_a_cup_that_rests_is_captured(played: Played) -> None:
    played.team("Heron")
    played.rests("12.3")
    assert played.state is WeighEmptyState.WEIGHED


def test_the_evidence_is_the_reading_with_its_frame_and_moment(
    played: Played, store: Store
) -> None:
    played.team("Heron")
    played.rests("12.3")
    played.writer.answer()
    (cup,) = store.cups_out(simulated=False)
    assert cup.empty.grams == Decimal("12.3")
    assert b"12.3" in cup.empty.raw
    assert NINE < cup.empty.at <= NINE + timedelta(seconds=played.clock.now - 100.0)


@pytest.mark.parametrize(
    ("simulated", "source"), [(False, Source.BALANCE), (True, Source.SIMULATED)]
)
def test_a_mass_says_whether_it_is_simulated(store: Store, simulated: bool, source: Source) -> None:
    played = Played(store, simulated=simulated)
    played.rests("0.0")
    played.team("Heron")
    played.rests("12.3")
    played.writer.answer()
    (cup,) = store.cups_out(simulated=simulated)
    assert cup.empty.source is source


def test_the_step_of_the_balance_reaches_the_table(played: Played) -> None:
    assert played.station.facts.readability == Decimal("0.1")


def test_an_order_to_weigh_again_waits_for_new_readings(played: Played) -> None:
    played.rests("12.3")
    played.team("Heron")
    assert played.state is WeighEmptyState.SETTLING
    played.reads("12.3")
    assert played.state is WeighEmptyState.SETTLING
    played.rests("12.4")
    assert played.state is WeighEmptyState.WEIGHED


# The scale comes and goes --------------------------------------------------------------------


def test_before_the_first_word_nothing_is_connected(store: Store) -> None:
    assert not Played(store).station.scene().strip.connected


def test_the_strip_follows_the_port(played: Played) -> None:
    assert played.station.scene().strip.connected
    played.station.balance_event(Lost(reason=Reason.UNPLUGGED, detail="", at=played.clock.now))
    assert played.station.scene().strip.words[0] == "Scale unplugged"


def test_a_lost_port_says_why_where_that_helps(played: Played) -> None:
    played.team("Heron")
    played.station.balance_event(Lost(reason=Reason.BUSY, detail="", at=played.clock.now))
    assert played.station.scene().sheet.title == "Another program uses the scale."


def test_silence_shows_by_time_alone(played: Played) -> None:
    played.clock.wait(3.0)
    played.station.tick()
    assert played.station.desk.memory.hindrance is Hindrance.ASLEEP


def test_after_silence_an_empty_pan_is_wanted_first(played: Played) -> None:
    played.team("Heron")
    played.clock.wait(3.0)
    played.station.tick()
    played.rests("12.3")
    assert played.station.scene().sheet.title == "The scale is back."
    played.rests("0.0")
    assert played.station.scene().sheet.title == "We weigh the empty cup first."


# Scenes out ----------------------------------------------------------------------------------


def test_while_something_is_written_down_the_scene_stands_still(played: Played) -> None:
    played.team("Heron")
    for _ in range(40):
        before = played.station.scene()
        played.reads("12.3")
        if played.writer.asked:
            break
    assert played.station.scene() is before
    played.writer.answer()
    assert played.station.scene().sheet.title == "Cup 1 weighs 12.3\u00a0g."


def test_what_could_not_be_written_down_is_said_at_once(played: Played) -> None:
    played.team("Heron")
    played.rests("12.3")
    played.writer.fail()
    assert played.station.scene().sheet.title == "Not written down yet."


def number_shown(played: Played, grams: str) -> str:
    played.reads(grams)
    return played.station.scene().pan.number


def test_a_moving_number_changes_five_times_a_second_at_most(played: Played) -> None:
    numbers = [number_shown(played, f"{grams}.0") for grams in range(20, 40, 2)]
    assert 4 <= len(set(numbers)) <= 6


def test_a_resting_number_is_the_newest(played: Played) -> None:
    played.rests("12.3")
    assert played.station.watch.state.phase is PanPhase.STABLE
    assert number_shown(played, "12.4") == "12.4"


def test_whoever_shows_it_is_told_of_readings_and_of_time(played: Played) -> None:
    before = played.changes
    played.reads("0.0")
    played.station.tick()
    assert played.changes >= before + 2
