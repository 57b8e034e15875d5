"""Teams: cups by number, labels once, and files as people write them."""

from __future__ import annotations

import pytest

from kiosk.rounds.contents import Team
from kiosk.rounds.teams import free_cup, from_csv, label_taken, moved, new_team, room_in
from kiosk.settings import Rules
from tests.helpers.round_notes import DIVISION, an_id, opened, said, team, with_teams

RULES = Rules(divisions=(DIVISION, "Grades 7 to 8"), teams_a_sitting=3)


def read(text: str, there: list[Team] | None = None) -> list[Team]:
    return from_csv(said(opened(RULES), *there or ()), text, an_id)


def test_a_new_team_goes_where_the_last_one_went() -> None:
    teams = [team("Wren", cup=1), team("Heron", sitting=2, cup=1)]
    made = new_team(teams, RULES, an_id, label="Teal")
    assert (made.sitting, made.division, made.cup, made.members) == (2, DIVISION, 2, 2)


def test_a_cup_of_a_team_that_is_gone_is_not_given_again() -> None:
    # It may still stand on the table.
    assert free_cup([team("Wren", cup=1, gone="ill"), team("Teal", cup=3)], 1) == 2


def test_who_moves_to_another_sitting_gets_a_cup_there() -> None:
    teams = [team("Wren", cup=1), team("Heron", sitting=2, cup=1)]
    assert moved(teams, teams[0], 2).cup == 2


def test_two_teams_of_one_name_are_told_apart_by_nobody() -> None:
    teams = [team("Wren"), team("Teal", gone="ill")]
    assert label_taken(teams, "WREN")
    assert not label_taken(teams, "Wren", but="wren")
    assert not label_taken(teams, "Teal")


def test_a_sitting_has_room_for_so_many() -> None:
    state = said(with_teams(["Wren", "Heron"], RULES), team("Swift"), team("Pipit"))
    assert (room_in(state, 1), room_in(state, 2)) == (-1, 3)


def test_a_file_needs_labels_only() -> None:
    assert [one.label for one in read("label\nWren\n\nHeron\n")] == ["Wren", "Heron"]


def test_a_spreadsheet_may_write_semicolons_and_a_mark_in_front() -> None:
    (one,) = read("\ufefflabel;school;division;sitting;members\r\nWren;S1;Grades 7 to 8;2;3\r\n")
    assert (one.school, one.division, one.sitting, one.members) == ("S1", "Grades 7 to 8", 2, 3)


def test_cups_run_on_through_the_file() -> None:
    assert [one.cup for one in read("label\nWren\nHeron", [team("Teal", cup=1)])] == [2, 3]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "label"),
        ("team\nWren", "label"),
        ("label\nWren\nwren", "line 3"),
        ("label,sitting\n,1", "line 2"),
        ("label,sitting\nWren,0", "line 2"),
        ("label,members\nWren,four", "four"),
        ("label\nWren,Heron", "line 2"),
        ('label\n"Wren', "CSV"),
    ],
)
def test_a_file_that_cannot_be_read_says_where(text: str, told: str) -> None:
    with pytest.raises(ValueError, match=told):
        read(text)
