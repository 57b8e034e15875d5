"""The page of the cups: the passes of each sitting, and the reading that the judge types."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.evidence import Source
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person, Procedure
from kiosk.records.store import Store
from kiosk.rounds.contents import ClockNote, ClockTurn, CupNote, CupTurn, Stage, Step
from kiosk.rounds.cups import CupStand, Pass, cup_of
from kiosk.rounds.state import RoundState
from kiosk.ui.lock import digest_of
from kiosk.ui.pages.codes import CodePage
from kiosk.ui.pages.common import AskPage
from kiosk.ui.pages.cups import CupsPage
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.page import Role
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView, TextView
from tests.helpers.pan import memory
from tests.helpers.queue_hands import weighed_empty
from tests.helpers.room import press, room_of, rows_of, tap_row, type_words
from tests.helpers.round_notes import DIVISION, said, team

CODE = "271828"


class Running:
    """What the desk was asked to run."""

    def __init__(self, room: Room) -> None:
        room.desk.run = self  # type: ignore[method-assign]  # stands where the desk stands
        room.desk.memory = memory()
        room.desk.procedure = None
        self.room = room

    def __call__(self, procedure: Procedure) -> None:
        self.room.desk.procedure = procedure


def opened(folder: Path, state: RoundState) -> Room:
    room = room_of(Store(str(folder / "records")), state)
    Running(room)
    room.open(CupsPage(room))
    return room


@pytest.fixture
def room(tmp_path: Path) -> Room:
    """Three cups; two of them are out, one is not weighed yet. The clock runs."""
    start = ClockNote(sitting=1, turn=ClockTurn.START)
    return opened(tmp_path, said(weighed_empty("12.3", "14.0"), start))


def values(room: Room) -> dict[str, str]:
    view = room.page.view()
    assert isinstance(view, RowsView)
    return {row.text: row.value for row in view.rows}


def test_each_pass_says_how_far_it_is(room: Room) -> None:
    assert values(room) == {"Empty cups": "2 of 3", "Filled cups": "0 of 3"}


def test_several_sittings_have_their_own_rows(tmp_path: Path) -> None:
    state = said(weighed_empty("12.3"), team("Robin", sitting=2, cup=1))
    assert rows_of(opened(tmp_path, state).page) == [
        "Empty cups, sitting 1", "Filled cups, sitting 1",
        "Empty cups, sitting 2", "Filled cups, sitting 2",
    ]  # fmt: skip


def test_a_pass_runs_at_the_table(room: Room) -> None:
    tap_row(room, "Filled cups")
    procedure = room.desk.procedure
    assert isinstance(procedure, CupQueue)
    assert (procedure.list.sitting, procedure.list.pass_) == (1, Pass.FILLED)


def test_the_table_hears_of_what_others_noted(room: Room) -> None:
    tap_row(room, "Filled cups")
    room.say(CupNote(team="wren", turn=CupTurn.LATE))
    procedure = room.desk.procedure
    assert isinstance(procedure, CupQueue)
    assert [cup.team.team for cup in procedure.list.pending] == ["heron", "teal"]


def test_a_helper_finds_the_cups_in_the_hub(room: Room) -> None:
    room.helper = True
    room.open(HubPage(room))
    assert "Cups" in rows_of(room.page)
    tap_row(room, "Cups")
    assert room.role is Role.HELPER


def typed(room: Room, name: str, *words: str) -> str:
    """Type these as the reading of that cup; what is said against the last of them."""
    press(room, Person.GO_ON)
    tap_row(room, name)
    for each in words:
        type_words(room, each)
    view = room.page.view()
    return view.hint if isinstance(view, TextView) else ""


def stand(room: Room, name: str) -> CupStand:
    return cup_of(room.state, room.state.team(name)).stand


def test_the_judge_types_what_the_kiosk_does_not_hear(room: Room) -> None:
    assert typed(room, "Cup 1", "110.5") == ""
    (filling,) = cup_of(room.state, room.state.team("wren")).fillings
    assert (str(filling.net), filling.filled.typed) == ("98.2", True)
    assert filling.filled.weighing.balance == "typed"
    assert filling.filled.weighing.source is Source.SIMULATED  # as the whole round


def test_a_cup_that_was_not_weighed_is_typed_empty(room: Room) -> None:
    typed(room, "Cup 3", "9,9")
    assert stand(room, "teal") is CupStand.OUT


@pytest.mark.parametrize("words", ["", "twelve", "-3", "0", "0.0", "1e3", "12.3456", "١٢"])
def test_what_is_no_mass_is_not_taken(room: Room, words: str) -> None:
    hint = typed(room, "Cup 1", words)
    assert stand(room, "wren") is CupStand.OUT
    assert not words or hint == "Type the grams as the scale shows them, like 112.3."


def test_less_than_the_empty_cup_is_taken_only_when_it_is_said_twice(room: Room) -> None:
    assert typed(room, "Cup 1", "11.0").startswith("Less than the cup weighed empty.")
    assert stand(room, "wren") is CupStand.OUT
    press(room, Person.ENTER)
    assert stand(room, "wren") is CupStand.IN


def test_a_helper_needs_the_coach_to_type_a_reading(room: Room) -> None:
    room.helper = True
    room.desk.lock.digest = digest_of(CODE)
    press(room, Person.GO_ON)
    assert isinstance(room.page, CodePage)
    for digit in CODE:
        press(room, Person.TYPE, digit)
    press(room, Person.ENTER)
    assert rows_of(room.page) == ["Cup 1", "Cup 2", "Cup 3"]


def test_filled_cups_before_the_start_are_asked_about(tmp_path: Path) -> None:
    room = opened(tmp_path, weighed_empty("12.3", "14.0"))
    tap_row(room, "Empty cups")
    assert isinstance(room.desk.procedure, CupQueue)
    room.desk.procedure = None
    for answer, runs in ((Person.NO, False), (Person.YES, True)):
        tap_row(room, "Filled cups")
        assert isinstance(room.page, AskPage)
        assert room.role is Role.HELPER
        press(room, answer)
        assert isinstance(room.desk.procedure, CupQueue) is runs
        assert isinstance(room.page, CupsPage)


def one_cup_late(folder: Path, *, locked: bool = False) -> Room:
    state = weighed_empty("12.3", teams=("Wren",))
    state = said(state, CupNote(team="wren", turn=CupTurn.LATE))
    step = [Step(division=DIVISION, stage=Stage.LOCKED)] if locked else []
    return opened(folder, said(state, *step))


def test_a_cup_that_ended_without_a_mass_can_be_typed_after_all(tmp_path: Path) -> None:
    room = one_cup_late(tmp_path)
    press(room, Person.GO_ON)
    view = room.page.view()
    assert isinstance(view, RowsView)
    assert [row.note for row in view.rows] == ["late; filled, Wren"]
    tap_row(room, "Cup 1")
    type_words(room, "110.5")
    assert stand(room, "wren") is CupStand.IN


def test_of_a_locked_division_nothing_is_left_to_type(tmp_path: Path) -> None:
    view = one_cup_late(tmp_path, locked=True).page.view()
    assert view.beside_home is None
