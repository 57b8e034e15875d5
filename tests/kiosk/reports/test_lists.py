"""The list of the day and the helper's card."""

from __future__ import annotations

import pytest

from kiosk.reports.allergens import allergy_note
from kiosk.reports.lists import day_list, helpers_card
from kiosk.settings import Paper
from tests.helpers.paper_boxes import touching
from tests.helpers.papers import pages, words_on
from tests.helpers.round_papers import day


def test_the_day_list_asks_for_everything() -> None:
    words = words_on(day_list(day(), Paper.A4))
    asked = (
        "Switched on for half an hour", "Level", "Checked today", "display turned away",
        "Automatic switching off", "22 cups, numbered", "Printed sizes", "still the same jar?",
        "No rulers", "no marks on hands", "pasta: wheat", "Spare batteries", "children under 3",
        "they come first", "Seen to by",
    )  # fmt: skip
    assert [said for said in asked if said not in words] == []


def test_each_jar_and_box_is_ticked_by_itself() -> None:
    words = words_on(day_list(day(jars="CK", boxes="7"), Paper.A4))
    assert "Jar C Jar K" in words
    assert "Box 7" in words
    assert "still the same jar" not in words_on(day_list(day(jars=""), Paper.A4))


def test_a_full_table_goes_on_overleaf_and_loses_nothing() -> None:
    many = tuple(f"material {place} from the shelf in the corner" for place in range(40))
    data = day_list(day(materials=many), Paper.LETTER)
    texts = [page.extract_text() for page in pages(data)]
    assert len(texts) > 1
    for turn, text in enumerate(texts, start=1):
        assert f"page {turn} of {len(texts)}" in text
    words = words_on(data)
    assert [name for name in many if name not in words] == []
    assert [touching(page) for page in pages(data)] == [[]] * len(texts)


@pytest.mark.parametrize(
    ("material", "note"),
    [
        ("Pasta", "Pasta: wheat, egg (some kinds)"),
        ("roasted peanuts", "roasted peanuts: peanut"),
        ("hex nuts", "hex nuts: no food"),
        ("lentils", "lentils: read its packet"),
    ],
)
def test_a_material_is_named_with_what_it_may_do(material: str, note: str) -> None:
    assert allergy_note(material) == note


@pytest.mark.parametrize("paper", Paper)
def test_the_helpers_card_is_one_page_about_cups_and_sheets(paper: Paper) -> None:
    data = helpers_card(paper)
    assert len(pages(data)) == 1
    words = words_on(data)
    for said in ("Brush the pan", "nothing to press", "Cannot read", "types every sheet again"):
        assert said in words
