"""Records by file: written to a folder, taken in on another kiosk, conflicts told in words."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.round_notes import StoredRound
from kiosk.records.store import Store
from kiosk.rounds.contents import Stage, Step, Typing
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.ui.pages import files
from kiosk.ui.pages.all_rounds import AllRoundsPage
from kiosk.ui.pages.files import FilesPage
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView
from kiosk.ui.sticks import exported_folders
from tests.helpers.pan import STARTED
from tests.helpers.room import BareDesk, press, room_of, rows_of, tap_row
from tests.helpers.round_notes import DIVISION, an_id, answer, team, with_teams


@pytest.fixture
def stick(tmp_path: Path) -> Path:
    stick = tmp_path / "stick"
    stick.mkdir()
    return stick


def at_files(where: Path, stick: Path, state: RoundState | None) -> Room:
    """A kiosk whose records lie there, with the page of files in front."""
    room = room_of(Store(str(where)), state)
    room.open(FilesPage(room, look=lambda: [stick]))
    return room


def write(room: Room, stick: Path) -> None:
    press(room, Person.KEEP)
    tap_row(room, stick.name)
    room.tick(0)


def take_in(room: Room, stick: Path) -> None:
    press(room, Person.CHOOSE)
    tap_row(room, exported_folders(stick)[0].name)
    room.tick(0)


def test_a_round_goes_to_another_kiosk_and_comes_back(tmp_path: Path, stick: Path) -> None:
    begun = with_teams(["Wren", "Heron"])
    first = at_files(tmp_path / "first", stick, begun)
    write(first, stick)
    second = at_files(tmp_path / "second", stick, None)
    take_in(second, stick)
    second.read(begun.id)
    second.say(answer("Heron", Task.COUNT_LOW, "240"))
    for folder in exported_folders(stick):
        folder.rename(tmp_path / "older")
    write(second, stick)
    take_in(first, stick)
    assert first.state.answer("heron", Task.COUNT_LOW, Typing.FIRST) is not None


def test_what_was_typed_on_both_is_told_and_the_one_here_stands(
    tmp_path: Path, stick: Path
) -> None:
    begun = with_teams(["Wren", "Heron"])
    here = at_files(tmp_path / "here", stick, begun)
    there = at_files(tmp_path / "there", stick, begun)
    here.say(answer("Heron", Task.COUNT_LOW, "240"))
    there.say(answer("Heron", Task.COUNT_LOW, "420"))
    write(there, stick)
    take_in(here, stick)
    assert rows_of(here.page)[1] == "Heron, Jar in the hundreds: here 240, there 420."


def test_while_it_is_done_nothing_else_can_be_pressed(tmp_path: Path) -> None:
    room = at_files(tmp_path / "here", tmp_path, with_teams(["Wren"]))
    press(room, Person.KEEP)
    tap_row(room, tmp_path.name)
    view = room.page.view()
    assert isinstance(view, RowsView)
    assert (view.main, view.second, view.home) == (None, None, None)
    room.tick(0)
    assert rows_of(room.page)[0].endswith("rows are written.")


def test_without_a_stick_it_says_what_to_do(tmp_path: Path, stick: Path) -> None:
    room = at_files(tmp_path / "here", tmp_path / "gone", with_teams(["Wren"]))
    press(room, Person.CHOOSE)
    assert rows_of(room.page) == []
    assert "Plug the stick in" in room.page.view().body


def test_a_number_that_came_in_twice_is_pointed_out(tmp_path: Path, stick: Path) -> None:
    begun = with_teams(["Wren", "Heron"])
    here = at_files(tmp_path / "here", stick, begun)
    there = at_files(tmp_path / "there", stick, begun)
    here.say(team("Teal", cup=3))
    there.say(team("Swift", cup=3))
    write(there, stick)
    take_in(here, stick)
    assert rows_of(here.page)[1].startswith("Sitting 1: two teams have cup 3.")


def test_a_lock_that_did_not_know_what_is_here_is_told(tmp_path: Path, stick: Path) -> None:
    begun = with_teams(["Wren", "Heron"])
    here = at_files(tmp_path / "here", stick, begun)
    there = at_files(tmp_path / "there", stick, begun)
    here.say(answer("Heron", Task.COUNT_LOW, "240"))
    there.say(Step(division=DIVISION, stage=Stage.LOCKED))
    write(there, stick)
    take_in(here, stick)
    assert rows_of(here.page)[1] == "How far the results are: here open, there locked."
    assert here.state.stage(DIVISION) is Stage.OPEN


def test_what_a_newer_version_wrote_is_left_out_and_told(tmp_path: Path, stick: Path) -> None:
    begun = with_teams(["Wren", "Heron"])
    here = at_files(tmp_path / "here", stick, begun)
    there = at_files(tmp_path / "there", stick, begun)
    there.say(Step(division=DIVISION, stage=Stage.LOCKED))
    write(there, stick)
    (table,) = stick.glob("*/round_notes.csv")
    table.write_text(table.read_text("utf-8").replace("locked", "audited"), "utf-8")
    take_in(here, stick)
    assert rows_of(here.page)[1] == ("A newer version wrote a note. Bring this kiosk up to date.")
    assert here.state.unread == {}


def test_a_round_that_a_newer_version_wrote_cannot_be_opened(tmp_path: Path) -> None:
    room = Room(BareDesk(Store(str(tmp_path / "here"))))  # type: ignore[arg-type]
    newer = StoredRound(id="a" * 32, since=STARTED, content='{"name": "x", "rules": 7}')
    room.open(AllRoundsPage(room, [newer]))
    view = room.page.view()
    assert isinstance(view, RowsView)
    assert [(row.says, row.sign) for row in view.rows] == [(None, "not fine")]


def test_the_hub_tells_how_much_is_missing_here(tmp_path: Path) -> None:
    state = with_teams(["Wren"])
    room = room_of(Store(str(tmp_path / "here")), state)
    room.open(HubPage(room))
    assert room.page.view().body == ""
    newer = state.next_note(Step(division=DIVISION, stage=Stage.LOCKED), at=STARTED, new_id=an_id)
    room.desk.notebook.write([replace(newer, kind="prize")])
    room.follow()
    assert room.page.view().body.startswith("A newer version wrote 1 note")


def test_a_kiosk_without_a_round_takes_one_in(
    tmp_path: Path, stick: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(files, "places", lambda: [stick])
    write(at_files(tmp_path / "here", stick, with_teams(["Wren"])), stick)
    room = Room(BareDesk(Store(str(tmp_path / "there"))))  # type: ignore[arg-type]
    room.open(AllRoundsPage(room, []))
    assert rows_of(room.page) == []
    press(room, Person.GO_ON)
    take_in(room, stick)
    press(room, Person.HOME)
    tap_row(room, "Autumn round")
    assert [team.label for team in room.state.teams] == ["Wren"]
