"""The page of a division's keys: bound before, frozen after the start."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.rounds.contents import ClockNote, ClockTurn, Stage, Step
from kiosk.settings import Rules, Task
from kiosk.ui.lock import digest_of
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.keys import KeysPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView
from tests.helpers.kept_keys import keep_box, keep_jar
from tests.helpers.room import press, room_of, rows_of, tap_row, type_words
from tests.helpers.round_notes import DIVISION, with_teams


@pytest.fixture
def room(tmp_path: Path) -> Room:
    store = Store(str(tmp_path / "records"))
    keep_jar(store, "A", 400)
    keep_jar(store, "B", 380)
    keep_box(store, 1, "2150.4")
    room = room_of(store, with_teams(["Wren"]))
    room.open(HubPage(room))
    tap_row(room, "Jars and boxes")
    return room


def notes(room: Room) -> list[str]:
    view = room.page.view()
    assert isinstance(view, RowsView)
    return [row.note for row in view.rows]


def bind(room: Room, row: int, option: str) -> None:
    tap_row(room, rows_of(room.page)[row])
    tap_row(room, option)


def test_a_task_takes_the_key_of_a_jar_with_its_value(room: Room) -> None:
    bind(room, 0, "jar A")
    key = room.state.key(DIVISION, Task.COUNT_LOW)
    assert key is not None
    assert (key.letter, key.actual) == ("A", 400)
    assert rows_of(room.page)[0] == "Jar in the hundreds"


def test_what_is_doubtful_stands_beside_it(room: Room) -> None:
    bind(room, 0, "jar A")
    assert notes(room)[0] == "Not weighed closed yet."
    bind(room, 2, "jar B")
    assert notes(room)[2] == "Outside the band."


def test_a_box_is_offered_for_a_volume_only(room: Room) -> None:
    tap_row(room, "First box")
    assert rows_of(room.page) == ["box 1"]


def test_after_the_start_a_change_takes_a_reason_and_two_codes(room: Room) -> None:
    bind(room, 0, "jar A")
    room.say(ClockNote(sitting=1, turn=ClockTurn.START))
    lock = room.desk.lock
    lock.digest, lock.helper_digest = digest_of("111111"), digest_of("222222")
    bind(room, 0, "jar B")
    type_words(room, "jar was opened")
    for code in ("111111", "222222"):
        key = room.state.key(DIVISION, Task.COUNT_LOW)
        assert key is not None
        assert key.letter == "A"
        for digit in code:
            press(room, Person.TYPE, digit)
        press(room, Person.ENTER)
    changed = room.state.key(DIVISION, Task.COUNT_LOW)
    assert changed is not None
    assert (changed.letter, changed.reason) == ("B", "jar was opened")
    assert len(room.state.history(f"key {DIVISION} {Task.COUNT_LOW}")) == 2


def test_when_results_are_final_keys_stay_as_they_are(room: Room) -> None:
    bind(room, 0, "jar A")
    room.say(Step(division=DIVISION, stage=Stage.FINAL))
    view = KeysPage(room).view()
    assert isinstance(view, RowsView)
    assert view.body == "The results are final. A step back in Results opens the keys."
    assert {row.says for row in view.rows} == {None}


def test_without_a_division_the_page_opens(tmp_path: Path) -> None:
    page = KeysPage(room_of(Store(str(tmp_path / "bare")), rules=Rules(divisions=())))
    assert len(rows_of(page)) == 6
