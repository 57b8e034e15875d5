"""The table, the pairs and the materials, as finished views."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from kiosk.settings import KioskSettings, Rules
from kiosk.ui.presenters.surroundings import TableFacts, material_name, team_name
from kiosk.ui.presenters.table_views import home_view, materials_view, teams_view
from tests.helpers.scenes import MANY, cups, facts

TWENTY = tuple(f"Team {number}" for number in range(1, 21))


def with_teams(teams: tuple[str, ...], **more: object) -> TableFacts:
    return facts(settings=KioskSettings(teams=teams), **more)


# Home ----------------------------------------------------------------------------------------


def test_the_table_names_the_goal_of_the_rules() -> None:
    rules = Rules(cup_target_g=Decimal(50))
    view = home_view(facts(settings=KioskSettings(rules=rules)), ready=True)
    assert view.goal_text == "50 g by feel"


def test_the_cups_that_are_out_stand_on_the_table_lowest_number_first() -> None:
    numbers = [mark.number for mark in home_view(facts(3), ready=True).cups]
    assert numbers == [97, 98, 99]


def test_until_the_records_are_open_the_table_says_so() -> None:
    assert home_view(facts(), ready=False).body == "The records are being opened."


def test_no_key_kept_is_not_worth_a_word() -> None:
    assert home_view(facts(keys_kept=0), ready=True).keys_text == ""
    assert home_view(facts(keys_kept=1), ready=True).keys_text == "1 key kept"


# Pairs ---------------------------------------------------------------------------------------


def test_fifteen_pairs_stand_on_a_page() -> None:
    view = teams_view(with_teams(TWENTY))
    assert [choice.text for choice in view.choices] == list(TWENTY[:15])
    assert view.beside_home is not None


def test_the_next_page_has_the_rest() -> None:
    view = teams_view(with_teams(TWENTY, team_page=1))
    assert [choice.text for choice in view.choices] == list(TWENTY[15:])


def test_after_the_last_page_comes_the_first() -> None:
    assert teams_view(with_teams(TWENTY, team_page=2)).choices[0].text == "Team 1"


def test_few_pairs_have_no_pages() -> None:
    assert teams_view(with_teams(TWENTY[:15])).beside_home is None


def test_the_number_of_pairs_is_told() -> None:
    assert teams_view(with_teams(TWENTY)).corner == "20 pairs"
    assert teams_view(with_teams(TWENTY[:1])).corner == "1 pair"


def test_a_pair_with_a_cup_out_has_its_number_on_its_card() -> None:
    known = with_teams(("Heron", "Wren"))
    known.cups = [replace(cups(1)[0], team="Wren")]
    view = teams_view(known)
    assert [choice.cup_number for choice in view.choices] == [None, 99]
    assert view.legend is not None


def test_without_a_cup_out_there_is_nothing_to_explain() -> None:
    assert teams_view(with_teams(TWENTY)).legend is None


def test_somebody_who_is_just_trying_is_a_choice() -> None:
    main = teams_view(with_teams(TWENTY)).main
    assert main is not None
    assert main.says is not None
    assert main.says.value == ""


def test_the_last_pair_stays_marked() -> None:
    view = teams_view(with_teams(TWENTY, team="Team 2"))
    assert [choice.text for choice in view.choices if choice.chosen] == ["Team 2"]


# Materials -----------------------------------------------------------------------------------


def test_the_materials_of_the_kiosk_are_offered_by_their_words() -> None:
    settings = KioskSettings(materials=("rice", "oat flakes"))
    view = materials_view(facts(settings=settings, material="oat flakes"))
    assert [(choice.text, choice.chosen) for choice in view.choices] == [
        ("rice", False),
        ("oat flakes", True),
    ]


def test_a_material_that_only_this_kiosk_knows_stands_for_itself() -> None:
    assert material_name("oat flakes") == "oat flakes"


def test_a_pair_is_called_by_its_name_and_nobody_is_just_trying() -> None:
    assert team_name("Heron") == "Team Heron"
    assert team_name("") == team_name(None) == "Just trying"


# The cups in a row ---------------------------------------------------------------------------


def test_a_short_row_has_all_cups() -> None:
    assert len(facts(3).some_marks(5, mine=99)) == 3


def test_a_full_row_keeps_ones_own_cup_and_its_order() -> None:
    numbers = [mark.number for mark in facts(MANY).some_marks(5, mine=99)]
    assert numbers == [82, 83, 84, 85, 99]


def test_a_row_without_an_own_cup_has_the_lowest_ones() -> None:
    numbers = [mark.number for mark in facts(MANY).some_marks(5, mine=None)]
    assert numbers == [82, 83, 84, 85, 86]


def test_somebody_who_is_just_trying_has_a_name_under_the_cup() -> None:
    known = facts(cups=[replace(cups(1)[0], team="")])
    assert [mark.name for mark in known.marks()] == ["Just trying"]
