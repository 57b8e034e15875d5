"""What a team takes home: how far off it was, on a tent, and what to do about it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kiosk.reports.practice import practise_next
from kiosk.reports.team_page import team_pages
from kiosk.reports.things import Thing
from kiosk.settings import Over, Paper, Rules
from tests.helpers.papers import baselines, pages, words_on
from tests.helpers.round_papers import team_page

Said = tuple[tuple[Thing, str, str | None, str], ...]
ZERO = Rules(over=Over.ZERO)


def test_a_team_sees_how_far_off_it_was() -> None:
    words = words_on(team_pages([team_page()], Paper.A4))
    for said in ("−2.7 % under", "on target", "+24.7 % over", "no answer", "really 15 234 pieces"):
        assert said in words
    assert "Place 3 = " in words
    assert "of 20 teams, final" in words
    assert "424.8 of 700 points" in words


def test_each_tent_has_its_pegs_and_its_peak() -> None:
    spots = baselines(pages(team_pages([team_page()], Paper.A4))[0])
    pegs = {text: x for text, x, _ in spots if text in ("0", "412", "824")}
    assert pegs["0"] < pegs["412"] < pegs["824"]


def test_where_over_earns_nothing_the_tent_has_one_slope() -> None:
    drawn = [
        pages(team_pages([team_page(rules=rules)], Paper.A4))[0].get_contents()
        for rules in (Rules(), ZERO)
    ]
    assert drawn[0] is not None
    assert drawn[1] is not None
    assert drawn[0].get_data() != drawn[1].get_data()
    assert "0.0 points" in words_on(team_pages([team_page(rules=ZERO)], Paper.A4))


def test_a_note_stands_where_a_score_is_not_what_the_tent_gives() -> None:
    team = team_page()
    late = replace(team, answers=(replace(team.answers[0], note="late"), *team.answers[1:]))
    assert "97.3 late" in words_on(team_pages([late], Paper.A4))


def test_no_team_is_no_document() -> None:
    with pytest.raises(ValueError, match="no team"):
        team_pages([], Paper.A4)


def advice(said: Said, rules: Rules | None = None) -> str:
    rules = rules or Rules()
    return " ".join(practise_next(team_page(answers=said, rules=rules).answers, rules))


JARS: Said = tuple((Thing.JAR, label, "500", "1000") for label in "ABCD")


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (((Thing.CUP, "4", "75", "100"), (Thing.JAR, "K", "99", "100")), "1 part in 4 was missing"),
        (((Thing.CUP, "4", "125", "100"), (Thing.JAR, "K", "99", "100")), "1 part in 5 of it"),
        (((Thing.BOX, "1", "9", "5"), (Thing.JAR, "K", "99", "100")), "Box 1: know the span"),
        (((Thing.JAR, "K", "9", "5"), (Thing.BOX, "1", "5", "5")), "Jar K: count how many"),
        (((Thing.JAR, "K", None, "5"), (Thing.BOX, "1", "5", "5")), "Jar K: blank"),
        (((Thing.JAR, "K", "98", "100"), (Thing.BOX, "1", "5", "5")), "Everything within 5 %"),
        (((Thing.JAR, "K", "98", "100"), (Thing.BOX, "1", "5", "5")), "Best: Box 1, 100.0 points"),
        (JARS, "4 of your 4 answers were under"),
    ],
)
def test_a_team_reads_what_to_practise_next(said: Said, expected: str) -> None:
    assert expected in advice(said)


def test_staying_under_is_no_fault_where_over_earns_nothing() -> None:
    assert "were under" not in advice(JARS, ZERO)


def test_nobody_is_advised_without_answers() -> None:
    assert advice(()) == ""
