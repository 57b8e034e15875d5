"""The list of a division, complete on every page and plain about how far it is."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.reports.result_list import result_list
from kiosk.reports.results import Correction
from kiosk.settings import Paper
from tests.helpers.paper_boxes import touching, words_of
from tests.helpers.papers import pages, words_on
from tests.helpers.round_papers import results

ONE = Correction(
    team="Goldcrest 2", task=4, before=Decimal("75.3"), after=Decimal("88.0"), reason="Misread."
)
ALL = Correction(team=None, task=2, before=None, after=None, reason="Counted again.")


@pytest.mark.parametrize(("count", "paper", "turns"), [(20, Paper.LETTER, 1), (60, Paper.A4, 2)])
def test_a_long_list_repeats_its_heading_and_loses_nobody(
    count: int, paper: Paper, turns: int
) -> None:
    data = result_list(results(count, final=True), paper)
    texts = [page.extract_text() for page in pages(data)]
    assert len(texts) == turns
    for turn, text in enumerate(texts, start=1):
        assert f"page {turn} of {turns}" in text
        assert "final" in text
        assert "provisional" not in text
        assert "box 3" in text
    teams = [each.text for page in pages(data) for each in words_of(page)]
    assert [row.team for row in results(count).rows if row.team not in teams] == []
    assert [touching(page) for page in pages(data)] == [[]] * turns


def test_a_row_has_place_team_scores_and_total() -> None:
    words = words_on(result_list(results(4), Paper.A4))
    assert "3 = Goldcrest 3 98.1 – 100.0 88.0 88.0 88.0 88.0 635.1" in words


def test_best_and_median_stand_below_the_teams() -> None:
    words = words_on(result_list(results(3), Paper.A4))
    assert f"best {' '.join(['99.9'] * 7)} median {' '.join(['81.5'] * 7)}" in words


def test_a_provisional_list_says_till_when_one_may_protest() -> None:
    assert "Protests until 14:35" in words_on(result_list(results(3), Paper.A4))
    assert "Protests" not in words_on(result_list(results(3, final=True), Paper.A4))


def test_the_first_places_have_medals() -> None:
    medals = replace(results(6), medals=2), replace(results(6), medals=0)
    discs = []
    for each in medals:
        drawn = pages(result_list(each, Paper.A4))[0].get_contents()
        assert drawn is not None
        discs.append(drawn.get_data().count(b" c\n") // 4)
    assert discs == [2 + 1, 0]  # and one that says what it means


def test_corrections_are_marked_and_told_with_their_reasons() -> None:
    data = result_list(results(3, corrections=(ONE, ALL)), Paper.A4)
    words = words_on(data)
    assert "1 Goldcrest 2, box 1: 75.3 became 88.0. Misread." in words
    assert "2 jar 2, all teams: Counted again." in words
    (page,) = pages(data)
    assert touching(page) == []
    spots = words_of(page)
    marked = next(each for each in spots if each.text == "1" and each.left > 200)
    row = [each for each in spots if abs(each.bottom - marked.bottom) < 8]
    assert [each.text for each in row if 0 < marked.left - each.right < 2] == ["88.0"]
    assert row[1].text == "Goldcrest 2"


def test_many_corrections_go_on_overleaf() -> None:
    data = result_list(results(30, corrections=(ONE,) * 40), Paper.LETTER)
    assert words_on(data).count("Misread.") == 40
    assert [touching(page) for page in pages(data)] == [[]] * len(pages(data))


def test_nothing_says_how_sure_a_place_is() -> None:
    words = words_on(result_list(results(20), Paper.A4))
    assert not any(said in words for said in ("safe", "sure", "2nd", " to 4th", "95 %"))


def test_a_list_without_teams_is_a_page() -> None:
    words = words_on(result_list(results(0), Paper.A4))
    assert "provisional" in words
    assert "median" not in words
