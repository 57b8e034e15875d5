"""Teams type their own answers while their time runs, each behind its code."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.rounds.contents import ClockNote, ClockTurn, Typing
from kiosk.rounds.sheets import sheet_rows, team_code
from kiosk.rounds.typed_answers import Stand, typed
from kiosk.settings import Rules
from kiosk.ui.lock import TRIES, digest_of
from kiosk.ui.pages.codes import CodePage
from kiosk.ui.pages.own_answers import OwnAnswersPage
from kiosk.ui.pages.paper_typing import SheetsPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.sheet_views import PaperView
from kiosk.ui.presenters.views import CodeView
from tests.helpers.room import press, room_of
from tests.helpers.round_notes import with_teams


@pytest.fixture
def room(tmp_path: Path) -> Room:
    state = with_teams(["Wren", "Heron"], Rules(teams_type=True))
    room = room_of(Store(str(tmp_path / "records")), state)
    room.open(SheetsPage(room))
    press(room, Person.GO_ON)
    return room


def code(room: Room, digits: str) -> None:
    for digit in digits:
        press(room, Person.TYPE, digit)
    press(room, Person.ENTER)


def note(room: Room) -> str:
    view = room.page.view()
    assert isinstance(view, CodeView)
    return view.note


def begin(room: Room) -> None:
    room.say(ClockNote(sitting=1, turn=ClockTurn.START))
    code(room, team_code(room.state.id, "wren"))


def test_before_the_start_a_sheet_does_not_open(room: Room) -> None:
    code(room, team_code(room.state.id, "wren"))
    assert note(room) == "The time has not begun yet."


def test_an_unknown_code_opens_nothing(room: Room) -> None:
    known = {team_code(room.state.id, name) for name in ("wren", "heron")}
    code(room, next(f"{number:04d}" for number in range(9) if f"{number:04d}" not in known))
    assert note(room) == "No sheet has this code. Look at it again."


def test_what_a_team_types_is_the_first_typing_of_its_sheet(room: Room) -> None:
    begin(room)
    for digit in "250":
        press(room, Person.TYPE, digit)
    press(room, Person.ENTER)
    task = sheet_rows(room.state, room.state.team("wren"))[0].task
    own = room.state.answer("wren", task, Typing.TEAM)
    assert own is not None
    assert own.estimate == Decimal(250)
    assert typed(room.state, "wren", task).stand is Stand.ONCE


def test_a_team_sees_what_it_typed_and_may_change_it(room: Room) -> None:
    begin(room)
    for digit in "25":
        press(room, Person.TYPE, digit)
    press(room, Person.ENTER)
    press(room, Person.HOME)
    assert isinstance(room.page, OwnAnswersPage)
    code(room, team_code(room.state.id, "wren"))
    shown = room.page.view()
    assert isinstance(shown, PaperView)
    assert (shown.rows[0].first, shown.present, shown.second) == ("25", 1, None)


def test_it_closes_by_itself_when_the_time_is_up(room: Room) -> None:
    begin(room)
    room.say(ClockNote(sitting=1, turn=ClockTurn.STOP, reason="all done"))
    room.tick(0)
    assert isinstance(room.page, OwnAnswersPage)
    code(room, team_code(room.state.id, "wren"))
    assert note(room) == "Time is up. What is on paper counts."


def test_the_way_back_is_behind_a_code(room: Room) -> None:
    room.desk.lock.helper_digest = digest_of("222222")
    press(room, Person.HOME)
    assert isinstance(room.page, CodePage)
    for digit in "222222":
        press(room, Person.TYPE, digit)
    press(room, Person.ENTER)
    assert isinstance(room.page, SheetsPage)


def test_after_five_unknown_codes_nothing_is_taken_for_a_while(room: Room) -> None:
    known = {team_code(room.state.id, name) for name in ("wren", "heron")}
    unknown = [each for number in range(9) if (each := f"{number:04d}") not in known]
    begin(room)
    press(room, Person.HOME)
    for digits in unknown[: TRIES - 1]:
        code(room, digits)
    code(room, team_code(room.state.id, "wren"))  # a team's own code forgives none
    press(room, Person.HOME)
    code(room, unknown[TRIES])
    code(room, team_code(room.state.id, "wren"))
    shown = room.page.view()
    assert isinstance(shown, CodeView)
    assert shown.main is not None
    assert (shown.main.text, shown.main.says) == ("Wait 30 seconds", None)
