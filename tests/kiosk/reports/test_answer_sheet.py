"""The sheet of a team: its own order, a box for each digit, the rules, and nothing of the keys."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.reports.answer_sheet import answer_sheets
from kiosk.settings import Over, Paper, Rules, Task
from tests.helpers.papers import baselines, pages, words_on
from tests.helpers.round_papers import ORDER, sheet


def names(data: bytes, page: int = 0) -> list[str]:
    spots = baselines(pages(data)[page])
    return [text for text, _, _ in spots if text[:4] in ("Jar ", "Box ")]


def test_each_team_gets_a_page_with_its_number_and_its_own_order() -> None:
    data = answer_sheets([sheet(), sheet("Teal", 8, asked=ORDER[::-1])], Paper.A4)
    assert ["Sheet 7" in page.extract_text() for page in pages(data)] == [True, False]
    assert names(data) == ["Jar K", "Jar C", "Jar T", "Box 2", "Box 3", "Box 1"]
    assert names(data, 1) == names(data)[::-1]


def test_no_sheet_is_no_document() -> None:
    with pytest.raises(ValueError, match="no sheet"):
        answer_sheets([], Paper.A4)


def test_each_digit_has_a_box_and_each_answer_its_unit() -> None:
    """The boxes are as many as the limits need, so that none of them tells how much is in."""
    data = answer_sheets([sheet()], Paper.A4)
    drawn = pages(data)[0].get_contents()
    assert drawn is not None
    jars, boxes, lids, ticks = 3 * 5, 3 * 4, 3, 2
    assert drawn.get_data().count(b" re") == jars + boxes + lids + ticks
    runs = [text for text, _, _ in baselines(pages(data)[0])]
    assert [text for text in runs if text in ("pieces", "cm³")] == 3 * ["pieces"] + 3 * ["cm³"]


def test_the_last_digits_stand_below_one_another() -> None:
    spots = {text: x for text, x, _ in baselines(pages(answer_sheets([sheet()], Paper.A4))[0])}
    worths = [spots[f"{10**place:,}".replace(",", "\u2009")] for place in range(5)]
    assert worths == sorted(worths, reverse=True)
    assert max(worths) < spots["pieces"]


@pytest.mark.parametrize(
    ("rules", "said"),
    [
        (Rules(over=Over.MIRRORED), "Too much costs as much as too little"),
        (Rules(over=Over.ZERO), "Anything over the real value earns nothing"),
        (
            Rules(count_limit=5000, volume_limit_cm3=900),
            "more than 5 000 pieces, no box more than 900",
        ),
        (Rules(), "Teams with the same total share a place"),
        (Rules(tie_break=(Task.MASS, Task.COUNT_HIGH)), "the cup, the jar with the most pieces"),
        (Rules(cup_target_g=Decimal("62.5")), "Cup 24: put 62.5 g in"),
    ],
)
def test_the_sheet_states_the_rules_of_this_event(rules: Rules, said: str) -> None:
    assert said in words_on(answer_sheets([sheet(rules=rules)], Paper.A4))


def test_a_team_with_more_time_reads_its_own_time() -> None:
    assert "40 minutes for everything" in words_on(answer_sheets([sheet(minutes=40)], Paper.A4))


def test_a_team_without_a_cup_writes_its_number() -> None:
    asked = "Write the number of your cup on it"
    assert asked in words_on(answer_sheets([sheet(cup="")], Paper.A4))
    assert asked not in words_on(answer_sheets([sheet()], Paper.A4))


def test_there_is_room_for_a_signature_and_for_both_typings() -> None:
    words = words_on(answer_sheets([sheet()], Paper.A4))
    for said in ("signature or initials", "Handed in at", "typed again"):
        assert said in words
