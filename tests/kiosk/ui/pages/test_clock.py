"""The clock's pages: no start without keys, a pause with a reason, the wall for everybody."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.rounds.clock import Clock, Going, clock
from kiosk.rounds.contents import ClockNote, ClockTurn
from kiosk.ui.lock import digest_of
from kiosk.ui.pages.clock import WallPage
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.page import Role
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView
from kiosk.ui.presenters.wall_views import WallView, time_left, wall_view
from tests.helpers.kept_keys import keep_box, keep_jar
from tests.helpers.room import press, room_of, rows_of, tap_row, type_words
from tests.helpers.round_notes import with_teams

JARS = {"A": 400, "B": 4000, "C": 15000}
BOXES = {1: "900", 2: "2000", 3: "3500"}


@pytest.fixture
def room(tmp_path: Path) -> Room:
    room = room_of(Store(str(tmp_path / "records")), with_teams(["Wren", "Heron"]))
    room.open(HubPage(room))
    return room


def bind_all(room: Room) -> None:
    store = room.desk.notebook.store  # type: ignore[attr-defined]
    for letter, count in JARS.items():
        keep_jar(store, letter, count)
    for number, cm3 in BOXES.items():
        keep_box(store, number, cm3)
    tap_row(room, "Jars and boxes")
    pairs = zip(JARS, BOXES, strict=True)  # jars at the left, boxes at the right
    chosen = [name for jar, box in pairs for name in (f"jar {jar}", f"box {box}")]
    for row, name in enumerate(chosen):
        tap_row(room, rows_of(room.page)[row])
        tap_row(room, name)
    press(room, Person.HOME)


def open_clock(room: Room) -> None:
    tap_row(room, "Clock")
    tap_row(room, "Sitting 1")


def main(room: Room) -> tuple[str, str]:
    view = room.page.view()
    assert isinstance(view, RowsView)
    assert view.main is not None
    return view.main.text, view.main.state


def test_without_keys_nothing_starts_and_the_page_says_why(room: Room) -> None:
    open_clock(room)
    assert main(room) == ("Start", "off")
    assert "no key yet" in rows_of(room.page)[0]
    press(room, Person.GO_ON)
    assert not room.state.begun(1)


def test_with_doubts_it_is_asked_and_starts(room: Room) -> None:
    bind_all(room)
    open_clock(room)
    assert rows_of(room.page)[0] == "Jar A was not weighed closed. Close it, then weigh it."
    press(room, Person.GO_ON)
    press(room, Person.YES)
    assert room.role is Role.EVERYBODY  # the wall
    assert room.state.begun(1)


def test_a_pause_begins_at_once_and_its_reason_is_told_on_the_wall(room: Room) -> None:
    bind_all(room)
    open_clock(room)
    press(room, Person.GO_ON)
    press(room, Person.YES)
    press(room, Person.HOME)
    press(room, Person.STAY)
    assert clock(room.state, 1, room.now_utc()).going is Going.PAUSED
    type_words(room, "fire drill")
    assert main(room) == ("Go on", "ready")
    press(room, Person.KEEP)
    wall = room.page.view()
    assert isinstance(wall, WallView)
    assert (wall.sentence, wall.quiet) == ("Paused: fire drill", True)


def shown(minutes: float, going: Going = Going.RUNNING) -> WallView:
    found = Clock(going=going, left=timedelta(minutes=minutes))
    return wall_view(found, minutes=30, round_name="Autumn", cups_in=9, cups=15)


def test_a_bead_is_a_minute_and_the_last_one_runs_out() -> None:
    wall = shown(18.7)
    assert (wall.time, wall.beads, round(wall.part, 2), wall.of) == ("18:42", 18, 0.7, 30)


def test_a_sign_stands_for_half_a_minute() -> None:
    assert [shown(left).sentence for left in (10.0, 9.6, 9.4)] == [
        "10 minutes left", "10 minutes left", "9 of 15 cups are in",
    ]  # fmt: skip


def test_the_strip_tells_the_time_while_a_sitting_is_under_way(room: Room) -> None:
    assert room.strip() == ("Round",)
    room.say(ClockNote(sitting=1, turn=ClockTurn.START))
    assert room.strip() == ("Round", "30:00 left")
    room.say(ClockNote(sitting=1, turn=ClockTurn.PAUSE, reason="fire drill"))
    assert room.strip() == ("Round", "paused, 30:00 left")
    room.say(ClockNote(sitting=1, turn=ClockTurn.STOP, reason="alarm"))
    assert room.strip() == ("Round",)


def test_the_band_lights_up_as_long_as_a_sign_stands() -> None:
    assert [shown(left).sign for left in (10.1, 9.6, 9.4)] == [False, True, False]


def test_the_last_second_is_shown_until_it_is_over() -> None:
    assert [time_left(timedelta(seconds=left)) for left in (0.2, 0, 59.5)] == [
        "0:01",
        "0:00",
        "1:00",
    ]


def test_a_clock_that_nobody_started_is_ready(room: Room) -> None:
    found = clock(room.state, 1, room.now_utc())
    assert wall_view(found, minutes=30, round_name="", cups_in=0, cups=2).sentence == (
        "Ready to start"
    )


def test_what_everybody_may_see_locks_what_is_behind_it(room: Room) -> None:
    lock = room.desk.lock
    room.open(WallPage(room, 1))
    assert lock.open  # without a code there is nothing to lock with
    room.back()
    lock.digest = digest_of("111111")
    room.open(WallPage(room, 1))
    assert not lock.open


def test_a_sitting_whose_teams_moved_away_can_be_stopped(room: Room) -> None:
    room.say(ClockNote(sitting=3, turn=ClockTurn.START))
    tap_row(room, "Clock")
    assert rows_of(room.page) == ["Sitting 1", "Sitting 3"]
    tap_row(room, "Sitting 3")
    press(room, Person.STOP)
    type_words(room, "all teams are done")
    assert clock(room.state, 3, room.now_utc()).going is Going.OVER
