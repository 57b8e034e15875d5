"""Long lists in sections: few taps to any row, and back the same way."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.ui.pages.clock import SittingsPage
from kiosk.ui.pages.cups import CupsPage, choose_cup
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.one_team import TeamPage
from kiosk.ui.pages.paper_typing import SheetsPage
from kiosk.ui.pages.papers import PapersPage
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Each, in_order, sections
from kiosk.ui.pages.teams import TeamsPage
from kiosk.ui.presenters.page_views import RowsView, RowView
from tests.helpers.result_rounds import typed_twice
from tests.helpers.room import press, room_of, rows_of, tap_row
from tests.helpers.round_notes import opened, said, team

SITTINGS, EACH = 12, 3


@pytest.fixture
def room(tmp_path: Path) -> Room:
    teams = [
        team(f"Heron {number + 1}", sitting=number // EACH + 1, cup=number % EACH + 1)
        for number in range(SITTINGS * EACH)
    ]
    room = room_of(Store(str(tmp_path / "records")), said(opened(), *teams))
    room.open(HubPage(room))
    return room


def title(room: Room) -> str:
    view = room.page.view()
    assert isinstance(view, RowsView)
    return view.title


def test_what_fits_on_two_pages_is_not_divided() -> None:
    assert sections([1] * 10 + [2] * 10, 10) == []
    assert sections([1] * 30, 10) == []
    assert sections([], 10) == []


def test_sections_that_do_not_fit_on_a_page_come_in_round_bundles() -> None:
    def first_and_count(last: int) -> tuple[tuple[int, int], int]:
        found = sections([number for number in range(1, last + 1) for _ in range(20)], 10)
        return found[0], len(found)

    assert first_and_count(10) == ((1, 1), 10)
    assert first_and_count(11) == ((1, 2), 6)
    assert first_and_count(45) == ((1, 5), 9)
    assert first_and_count(100) == ((1, 10), 10)


def test_what_stands_before_the_sittings_is_a_section_by_itself() -> None:
    assert sections([0, 0, *range(1, 101)], 5)[:2] == [(0, 0), (1, 50)]


def test_names_are_sorted_as_people_do() -> None:
    assert sorted(["heron 10", "Heron 9", "Avocet 11"], key=in_order) == [
        "Avocet 11",
        "Heron 9",
        "heron 10",
    ]


def test_only_rows_that_are_seen_are_made() -> None:
    made: list[str] = []

    def row(name: str) -> RowView:
        made.append(name)
        return RowView(text=name)

    rows = Each(["Wren", "Teal", "Swift"], row)
    assert len(rows) == 3
    assert [each.text for each in rows[1:2]] == made == ["Teal"]


def test_a_team_is_found_by_its_sitting(room: Room) -> None:
    room.open(TeamsPage(room))
    assert rows_of(room.page)[0] == "Sittings 1 to 2"
    tap_row(room, "Sittings 11 to 12")
    assert rows_of(room.page) == [f"Heron {number}" for number in range(31, 37)]
    assert title(room) == "Sittings 11 to 12"
    tap_row(room, "Heron 36")
    press(room, Person.HOME)
    assert title(room) == "Sittings 11 to 12"
    press(room, Person.HOME)
    assert title(room) == "Who takes part?"
    press(room, Person.HOME)
    assert isinstance(room.page, HubPage)


def test_a_team_may_move_to_any_sitting(room: Room) -> None:
    state = room.state
    late = [team(f"Teal {number}", sitting=number) for number in range(13, 26)]
    room.say(*late)
    room.open(TeamPage(room, state.teams[0].team))
    tap_row(room, "Sitting")
    tap_row(room, "sitting 21 to sitting 26")
    tap_row(room, "sitting 25")
    assert room.state.team(state.teams[0].team).sitting == 25


def test_a_section_that_everybody_left_closes(room: Room) -> None:
    room.open(TeamsPage(room))
    tap_row(room, "Sittings 11 to 12")
    late = [each for each in room.state.teams if each.sitting > 10]
    room.say(*(each.model_copy(update={"gone": "ill"}) for each in late))
    assert title(room) == "Who takes part?"


def test_sheets_in_a_section_are_told_how_far_they_are(room: Room) -> None:
    room.open(SheetsPage(room))
    for each in room.state.teams_of(sitting=1) + room.state.teams_of(sitting=2):
        room.say(*typed_twice(each.team, 0.9))
    view = room.page.view()
    assert isinstance(view, RowsView)
    assert [(row.note, row.sign) for row in view.rows[:2]] == [
        ("6 of 6 sheets typed twice", "fine"),
        ("0 of 6 sheets typed twice", "to come"),
    ]


def test_cups_of_many_sittings_are_divided(room: Room) -> None:
    room.open(CupsPage(room))
    assert rows_of(room.page)[:1] == ["Sittings 1 to 2"]
    tap_row(room, "Sittings 3 to 4")
    assert "Filled cups, sitting 4" in rows_of(room.page)


def test_a_cup_to_type_is_found_by_its_sitting(room: Room) -> None:
    room.open(CupsPage(room))
    choose_cup(room)
    assert rows_of(room.page)[:2] == ["Sitting 1", "Sitting 2"]
    tap_row(room, "Sitting 2")
    assert rows_of(room.page) == ["Cup 1", "Cup 2", "Cup 3"]


def test_papers_of_the_day_stand_before_those_of_sittings(room: Room) -> None:
    room.open(PapersPage(room, has_printer=lambda: False))
    assert rows_of(room.page)[:2] == ["For the whole day", "Sittings 1 to 5"]
    tap_row(room, "For the whole day")
    assert rows_of(room.page) == ["Day list", "Card for a helper"]


def test_a_dozen_clocks_are_turned_as_before(room: Room) -> None:
    room.open(SittingsPage(room))
    assert rows_of(room.page)[0] == "Sitting 1"


def test_one_of_many_is_picked_by_its_name(room: Room) -> None:
    picked: list[object] = []
    room.open(
        PickPage(
            room, title="Which team?", sort=True, done=picked.append,
            options=[(each.label, "", each.team) for each in reversed(room.state.teams)],
        )
    )  # fmt: skip
    assert rows_of(room.page)[:2] == ["Heron 1 to Heron 10", "Heron 11 to Heron 20"]
    tap_row(room, "Heron 31 to Heron 36")
    tap_row(room, "Heron 34")
    assert picked == ["heron 34"]
    assert isinstance(room.page, HubPage)
