"""The supervisor's list of a sitting: everybody, with a box for each thing that comes in."""

from __future__ import annotations

import pytest

from kiosk.reports.sitting_list import sitting_list
from kiosk.settings import Paper
from tests.helpers.paper_boxes import touching, words_of
from tests.helpers.papers import pages, words_on
from tests.helpers.round_papers import sitting


@pytest.mark.parametrize("paper", Paper)
def test_a_full_sitting_is_one_page_with_everybody_on_it(paper: Paper) -> None:
    data = sitting_list(sitting(20), paper)
    (page,) = pages(data)
    assert touching(page) == []
    named = [each.text for each in words_of(page)]
    assert [team.team for team in sitting(20).teams if team.team not in named] == []
    drawn = page.get_contents()
    assert drawn is not None
    assert drawn.get_data().count(b" re") == 3 * 20


def test_more_teams_go_on_overleaf_below_the_same_heading() -> None:
    texts = [page.extract_text() for page in pages(sitting_list(sitting(60), Paper.A4))]
    assert len(texts) == 3
    assert all("Sitting 2" in text and "sheet in" in text for text in texts)
    assert sum(text.count("Wren") for text in texts) == 60


def test_each_team_stands_with_sheet_cup_and_time() -> None:
    words = words_on(sitting_list(sitting(3), Paper.A4))
    assert "1 Wren 1 21 30 2 Wren 2 22 40 3 Wren 3 30" in words
    assert "3 teams, 30 minutes" in words
