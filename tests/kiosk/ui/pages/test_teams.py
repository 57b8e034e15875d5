"""The pages of the teams: each change is a note, refused where it would confuse."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.rounds.contents import Stage, Step
from kiosk.ui.pages.division_results import ResultsPage
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.teams import TeamsPage
from kiosk.ui.presenters.page_views import RowsView, TextView
from kiosk.ui.presenters.result_views import ResultsView
from tests.helpers.result_rounds import BIRDS, played
from tests.helpers.room import press, room_of, rows_of, tap_row, type_words
from tests.helpers.round_notes import DIVISION, team, with_teams

OTHER = "Grades 7 to 8"


@pytest.fixture
def room(tmp_path: Path) -> Room:
    room = room_of(Store(str(tmp_path / "records")), with_teams(["Wren", "Heron"]))
    room.open(HubPage(room))
    tap_row(room, "Teams")
    return room


def test_a_late_team_is_added_by_its_label(room: Room) -> None:
    press(room, Person.KEEP)
    type_words(room, "Teal")
    press(room, Person.HOME)
    assert rows_of(room.page) == ["Wren", "Heron", "Teal"]
    assert [team.cup for team in room.state.teams] == [1, 2, 3]


def test_a_label_that_another_team_has_is_refused_with_a_reason(room: Room) -> None:
    press(room, Person.KEEP)
    type_words(room, "wren")
    view = room.page.view()
    assert isinstance(view, TextView)
    assert view.hint == "There is a team wren already. Choose another label."


@pytest.mark.parametrize(
    ("row", "tapped", "found"),
    [
        ("Students in the team", "3", ("members", 3)),
        ("Absent today", "1", ("absent", 1)),
        ("Extra minutes", "8", ("extra_minutes", 8)),
        ("Division", "Grades 7 to 8", ("division", "Grades 7 to 8")),
    ],
)
def test_what_is_known_of_a_team_can_be_changed(
    room: Room, row: str, tapped: str, found: tuple[str, object]
) -> None:
    tap_row(room, "Wren")
    tap_row(room, row)
    tap_row(room, tapped)
    name, value = found
    assert getattr(room.state.team("wren"), name) == value


def test_in_another_sitting_a_team_has_another_cup(room: Room) -> None:
    tap_row(room, "Heron")
    tap_row(room, "Sitting")
    tap_row(room, "sitting 2")
    moved = room.state.team("heron")
    assert (moved.sitting, moved.cup) == (2, 1)


def test_a_team_is_renamed_and_keeps_its_place(room: Room) -> None:
    tap_row(room, "Wren")
    tap_row(room, "Label")
    type_words(room, "Wrens")
    press(room, Person.HOME)
    assert rows_of(room.page) == ["Wrens", "Heron"]


def test_two_that_are_one_team_are_merged(room: Room) -> None:
    tap_row(room, "Wren")
    press(room, Person.MATERIAL)
    tap_row(room, "Heron")
    press(room, Person.YES)
    assert rows_of(room.page) == ["Heron"]
    assert room.state.team("wren").into == "heron"


def test_who_takes_no_part_leaves_with_a_reason(room: Room) -> None:
    tap_row(room, "Wren")
    press(room, Person.LEAVE)
    type_words(room, "ill")
    assert rows_of(room.page) == ["Heron"]
    assert room.state.team("wren").gone == "ill"


def test_what_was_noted_is_in_the_records(room: Room) -> None:
    press(room, Person.KEEP)
    type_words(room, "Teal")
    kept = room.desk.notebook.store.round_notes(room.state.id)  # type: ignore[attr-defined]
    assert "Teal" in kept[-1].content


def from_file(room: Room, text: str, folder: Path) -> str:
    """What the page says after a file with that text was picked."""
    (folder / "teams.csv").write_text(text, encoding="utf-8")
    room.replace(TeamsPage(room, look=lambda: [folder]))
    press(room, Person.PRINT)
    tap_row(room, "teams.csv")
    return room.page.view().body


def test_teams_come_from_a_file_on_a_stick(room: Room, tmp_path: Path) -> None:
    assert from_file(room, "label,sitting\nTeal,1\nSwift,2\n", tmp_path) == "2 teams are in."
    assert [team.label for team in room.state.teams] == ["Wren", "Heron", "Teal", "Swift"]


def test_a_file_that_does_not_fit_says_why_and_nothing_is_taken(room: Room, tmp_path: Path) -> None:
    told = from_file(room, "label\nTeal\nWren\n", tmp_path)
    assert told.startswith("In line 3: there is a team Wren in this round already.")
    assert len(room.state.teams) == 2


# After the lock -------------------------------------------------------------------------------


def locked(folder: Path, *steps: Stage) -> Room:
    """A round of one division whose results are so far, at its teams."""
    room = room_of(Store(str(folder / "late records")), played(steps=(Stage.LOCKED, *steps)))
    room.open(TeamsPage(room))
    return room


@pytest.mark.parametrize("steps", [(), (Stage.RELEASED,)])
def test_after_the_lock_a_team_changes_for_a_reason_and_a_list_that_was_shown_is_kept(
    tmp_path: Path, steps: tuple[Stage, ...]
) -> None:
    room = locked(tmp_path, *steps)
    tap_row(room, "Wren")
    tap_row(room, "Label")
    type_words(room, "Wrens")
    type_words(room, "typed wrongly")
    assert room.state.team("wren").reason == "typed wrongly"
    kept = [kept.why for _, kept in room.state.kept_lists(DIVISION)]
    assert kept == (["Wren changed: typed wrongly"] if steps else [])


def test_who_leaves_after_the_release_stays_on_the_list_that_was_shown(tmp_path: Path) -> None:
    room = locked(tmp_path, Stage.RELEASED)
    tap_row(room, "Wren")
    press(room, Person.LEAVE)
    type_words(room, "entered twice")
    ((_, kept),) = room.state.kept_lists(DIVISION)
    assert "Wren" in [row.label for row in kept.rows]
    assert "Wren" not in rows_of(room.page)


def test_who_left_by_mistake_comes_back_with_a_reason_and_all_it_had(tmp_path: Path) -> None:
    room = locked(tmp_path, Stage.RELEASED)
    tap_row(room, "Wren")
    press(room, Person.LEAVE)
    type_words(room, "ill")
    press(room, Person.UNDO)
    tap_row(room, "Wren")
    press(room, Person.YES)
    type_words(room, "told by the school")
    wren = room.state.team("wren")
    assert (wren.gone, wren.reason) == ("", "told by the school")
    assert len(room.state.kept_lists(DIVISION)) == 2
    assert rows_of(room.page) == list(BIRDS)


def test_when_results_are_final_a_team_stays_as_it_is(tmp_path: Path) -> None:
    room = locked(tmp_path, Stage.RELEASED, Stage.FINAL)
    tap_row(room, "Wren")
    view = room.page.view()
    assert isinstance(view, RowsView)
    assert view.body == "The results are final. A step back in Results opens them."
    assert {row.says for row in view.rows} == {view.second, view.beside_home} == {None}


def test_after_the_lock_nobody_joins_its_division(tmp_path: Path) -> None:
    room = locked(tmp_path)
    room.say(team("Robin", division=OTHER, cup=5))
    tap_row(room, "Robin")
    tap_row(room, "Division")
    assert DIVISION not in rows_of(room.page)
    press(room, Person.HOME)
    press(room, Person.HOME)
    press(room, Person.KEEP)
    type_words(room, "Dunlin")
    press(room, Person.HOME)
    assert {team.label: team.division for team in room.state.teams}["Dunlin"] == OTHER


def test_when_all_is_locked_nobody_joins_at_all(tmp_path: Path) -> None:
    room = locked(tmp_path)
    room.say(team("Robin", division=OTHER, cup=5), Step(division=OTHER, stage=Stage.LOCKED))
    press(room, Person.KEEP)
    assert room.page.view().body.startswith("All answers are locked")
    told = from_file(room, f"label,division\nDunlin,{DIVISION}\n", tmp_path)
    assert told.startswith(f"In line 2 the division {DIVISION} is locked")


def test_a_division_whose_last_team_left_has_an_empty_list(tmp_path: Path) -> None:
    alone = played(["Wren"], steps=(Stage.LOCKED, Stage.RELEASED))
    room = room_of(Store(str(tmp_path / "alone")), alone)
    room.open(ResultsPage(room, DIVISION))
    room.say(room.state.team("wren").model_copy(update={"gone": "ill", "reason": "ill"}))
    tap_row(room, "Result list")
    view = room.page.view()
    assert isinstance(view, ResultsView)
    assert view.lines == ()
