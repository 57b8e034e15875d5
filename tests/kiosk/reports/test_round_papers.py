"""Every paper of a round, whatever stands on it: whole, legible, apart, and the same each time."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from kiosk.reports.answer_sheet import answer_sheets
from kiosk.reports.lists import day_list, helpers_card
from kiosk.reports.page import FOOT, MARGIN, SIZES
from kiosk.reports.result_list import result_list
from kiosk.reports.round_papers import (
    save_answer_sheets,
    save_day_list,
    save_helpers_card,
    save_result_list,
    save_sitting_list,
    save_team_pages,
)
from kiosk.reports.sitting_list import sitting_list
from kiosk.reports.team_page import team_pages
from kiosk.settings import Paper
from tests.helpers.paper_boxes import touching, words_of
from tests.helpers.papers import fonts, pages, words_on
from tests.helpers.round_papers import day, results, sheet, sitting, team_page

LONG = "Łódź Żółw, the team with the long name of Çeşme and of Ñandúes by the river"
NAMES = (LONG, "W" * 80, "<b>Ɓala</b>) Tj (\\")
MAKERS: dict[str, Callable[[str, Paper], bytes]] = {
    "answers": lambda name, paper: answer_sheets([sheet(team=name, cup="")], paper),
    "results": lambda name, paper: result_list(results(4, team=name, decimals=3), paper),
    "team": lambda name, paper: team_pages([team_page(team=name)], paper),
    "day": lambda name, paper: day_list(day(materials=(name, "rice", "pasta")), paper),
    "sitting": lambda name, paper: sitting_list(sitting(4, team=name), paper),
    "helper": lambda _, paper: helpers_card(paper),
}


@pytest.mark.parametrize("kind", MAKERS)
@pytest.mark.parametrize(("name", "paper"), [(LONG, Paper.A4), ("W" * 80, Paper.LETTER)])
def test_nothing_runs_off_the_page_or_over_anything_else(
    kind: str, name: str, paper: Paper
) -> None:
    wide, _ = SIZES[paper]
    (page,) = pages(MAKERS[kind](name, paper))
    words = words_of(page)
    assert touching(page) == []
    assert min(each.left for each in words) >= MARGIN - 0.1
    assert max(each.right for each in words) <= wide - MARGIN + 0.1
    assert min(each.bottom for each in words) >= MARGIN - 3 * FOOT


@pytest.mark.parametrize("kind", ["answers", "results", "team", "sitting"])
@pytest.mark.parametrize("name", NAMES)
def test_a_team_is_named_whole(kind: str, name: str) -> None:
    words = words_on(MAKERS[kind](name, Paper.A4))
    assert name.replace(" ", "") in words.replace(" ", "")


@pytest.mark.parametrize("kind", MAKERS)
def test_the_same_values_make_the_same_bytes_with_their_fonts(kind: str) -> None:
    data = MAKERS[kind]("Wren", Paper.LETTER)
    assert data == MAKERS[kind]("Wren", Paper.LETTER)
    assert set(fonts(data).values()) == {True}


@pytest.mark.parametrize("simulated", [True, False])
def test_a_simulated_round_says_so_on_every_sheet(simulated: bool) -> None:
    for data in (
        answer_sheets([sheet(simulated=simulated)], Paper.A4),
        result_list(results(4, simulated=simulated), Paper.A4),
        team_pages([team_page(simulated=simulated)], Paper.A4),
        sitting_list(sitting(2, simulated=simulated), Paper.A4),
    ):
        assert ("SIMULATED" in words_on(data)) is simulated


def test_papers_are_saved_under_names_that_say_what_they_are(tmp_path: Path) -> None:
    saved = [
        save_answer_sheets([sheet(simulated=True)], tmp_path, Paper.A4),
        save_day_list(day(), tmp_path, Paper.A4),
        save_sitting_list(sitting(2), tmp_path, Paper.A4),
        save_helpers_card(tmp_path, Paper.A4),
        save_result_list(results(2), tmp_path, Paper.A4),
        save_result_list(results(2, final=True), tmp_path, Paper.A4),
        save_team_pages([team_page()], tmp_path, Paper.A4),
    ]
    assert [file.name for file in saved] == [
        "Round 2 answer sheets (simulated).pdf",
        "Round 2 day list.pdf",
        "Round 2 sitting 2.pdf",
        "Helper card.pdf",
        "Round 2 Grades 4 to 6 results provisional.pdf",
        "Round 2 Grades 4 to 6 results final.pdf",
        "Round 2 team pages.pdf",
    ]
    assert all(file.read_bytes().startswith(b"%PDF") for file in saved)


def test_a_round_may_be_called_anything(tmp_path: Path) -> None:
    named = day(round_name='../Spring: "A/B"\n?')
    assert save_day_list(named, tmp_path, Paper.A4).name == "Spring A B day list.pdf"
