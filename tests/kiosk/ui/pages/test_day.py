"""The day list on the screen: ticks that stay for the day, and what the kiosk sees by itself."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.estimating.balance_check import Verdict
from kiosk.evidence import Source
from kiosk.records.entries import BalanceChecked
from kiosk.records.jar_entries import JarRole, JarWeighed
from kiosk.records.store import Store
from kiosk.rounds.contents import BoundKey
from kiosk.settings import Task
from kiosk.ui.pages.day import DayPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView
from tests.helpers.kept_keys import keep_box, keep_jar
from tests.helpers.room import room_of, tap_row
from tests.helpers.round_notes import DIVISION, said, with_teams
from tests.helpers.weighings import weighed

LEVEL = "Level, free of draughts, touching nothing beside it"


@pytest.fixture
def store(tmp_path: Path) -> Store:
    return Store(str(tmp_path / "records"))


def bound(task: Task, key_id: str, letter: str, actual: str) -> BoundKey:
    return BoundKey.model_validate(
        {
            "division": DIVISION, "task": task, "key_id": key_id, "letter": letter,
            "actual": actual, "half_width_percent": "0.5",
        }
    )  # fmt: skip


@pytest.fixture
def room(store: Store) -> Room:
    """A round with one jar and one box; jar Z is of no round."""
    jar, box = keep_jar(store, "C", 400), keep_box(store, 2, "900")
    keep_jar(store, "Z", 4000)
    state = said(
        with_teams(["Wren", "Heron"]),
        bound(Task.COUNT_LOW, jar, "C", "400"),
        bound(Task.VOLUME_1, box, "2", "900"),
    )
    room = room_of(store, state)
    room.open(DayPage(room))
    return room


def rows(room: Room) -> dict[str, RowView]:
    page = room.page
    assert isinstance(page, DayPage)
    return {row.text: row for row in page.rows()}


def open_again(room: Room) -> None:
    room.replace(DayPage(room))


def weigh_jar(store: Store, role: JarRole, grams: str, days_ago: int = 0) -> None:
    (jar,) = [jar for jar in store.closed_jars(simulated=True) if jar.letter == "C"]
    weighing = weighed(grams, source=Source.SIMULATED)
    weighing = replace(weighing, at=weighing.at - timedelta(days=days_ago))
    store.save(JarWeighed(key_id=jar.key_id, role=role, weighing=weighing, at=weighing.at))


def test_a_tick_is_kept_and_can_be_taken_away(room: Room) -> None:
    assert rows(room)[LEVEL].sign == "to come"
    tap_row(room, LEVEL)
    open_again(room)
    assert (rows(room)[LEVEL].sign, rows(room)[LEVEL].look) == ("fine", "done")
    tap_row(room, LEVEL)
    open_again(room)
    assert rows(room)[LEVEL].sign == "to come"


def test_the_ticks_of_another_day_count_no_more(room: Room) -> None:
    tap_row(room, LEVEL)
    world = room.desk.world
    room.desk.world = replace(world, utc=lambda at: world.utc(at) + timedelta(days=1))
    open_again(room)
    assert rows(room)[LEVEL].sign == "to come"


def test_jars_boxes_and_materials_of_the_round_are_points_of_their_own(room: Room) -> None:
    found = rows(room)
    assert "Jar C" in found
    assert found["Box 2"].note == "Not dented, closed, its number on it"
    assert "lentils: read its packet" in {text.lower() for text in found}
    assert "Jar Z" not in found


def test_a_jar_that_was_weighed_today_is_seen_to(room: Room, store: Store) -> None:
    weigh_jar(store, JarRole.CLOSED, "661.2", days_ago=9)
    open_again(room)
    assert rows(room)["Jar C"].sign == "to come"
    weigh_jar(store, JarRole.CHECKED, "661.3")
    open_again(room)
    assert rows(room)["Jar C"].sign == "fine"
    weigh_jar(store, JarRole.CHECKED, "640.0")
    open_again(room)
    assert rows(room)["Jar C"].sign == "not fine"


@pytest.mark.parametrize(
    ("verdict", "days_ago", "sign"),
    [
        (Verdict.FINE, 0, "fine"),
        (Verdict.NOT_FINE, 0, "not fine"),
        (Verdict.CANNOT_TELL, 0, "cannot tell"),
        (Verdict.FINE, 2, "to come"),
    ],
)
def test_the_check_of_the_scale_marks_its_point(
    room: Room, verdict: Verdict, days_ago: int, sign: str
) -> None:
    at = room.now_utc() - timedelta(days=days_ago)
    room.desk.facts.last_check = BalanceChecked(
        balance="simulated", readability=Decimal("0.1"), rows=(), verdict=verdict, at=at
    )
    assert rows(room)["Checked today with weights or coins"].sign == sign
