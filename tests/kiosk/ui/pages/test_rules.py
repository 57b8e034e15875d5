"""The page of the rules: picked or typed, kept with the round, frozen by a start."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.rounds.contents import ClockNote, ClockTurn
from kiosk.settings import Over, Task
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView, TextView
from tests.helpers.room import press, room_of, tap_row, type_words
from tests.helpers.round_notes import with_teams


@pytest.fixture
def room(tmp_path: Path) -> Room:
    room = room_of(Store(str(tmp_path / "records")), with_teams(["Wren"]))
    room.open(HubPage(room))
    tap_row(room, "Rules")
    return room


def test_a_rule_is_picked(room: Room) -> None:
    tap_row(room, "Over the real number")
    tap_row(room, "no points")
    assert room.state.rules.over is Over.ZERO


def test_a_number_is_typed(room: Room) -> None:
    tap_row(room, "The cup holds")
    type_words(room, "150")
    assert room.state.rules.cup_target_g == Decimal(150)


def test_divisions_are_named(room: Room) -> None:
    tap_row(room, "Divisions")
    type_words(room, "Larks, Owls")
    assert room.state.rules.divisions == ("Larks", "Owls")


@pytest.mark.parametrize("words", ["-1", "many", "0"])
def test_what_is_no_number_is_refused(room: Room, words: str) -> None:
    tap_row(room, "The cup holds")
    type_words(room, words)
    view = room.page.view()
    assert isinstance(view, TextView)
    assert view.hint


def test_tasks_break_a_tie_in_the_order_of_tapping(room: Room) -> None:
    tap_row(room, "A tie is broken by")
    for name in ("Third box", "The cup", "First box", "Third box"):
        tap_row(room, name)
    assert room.state.rules.tie_break == (Task.MASS, Task.VOLUME_1)


def test_helpers_get_a_code_of_their_own(room: Room) -> None:
    press(room, Person.KEEP)
    for _ in range(2):
        for digit in "222222":
            press(room, Person.TYPE, digit)
        press(room, Person.ENTER)
    assert room.desk.lock.helper_digest


def test_once_a_sitting_began_nothing_changes(room: Room) -> None:
    room.say(ClockNote(sitting=1, turn=ClockTurn.START))
    view = room.page.view()
    assert isinstance(view, RowsView)
    assert {row.says for row in view.rows} == {None}
