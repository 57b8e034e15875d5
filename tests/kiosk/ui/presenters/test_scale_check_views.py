"""What the check of the scale shows, and what it means."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_plan import UNKNOWN
from kiosk.procedures.procedure import Person
from kiosk.settings import KioskSettings, Rules
from kiosk.ui.presenters.check_meanings import meanings
from kiosk.ui.presenters.scale_check_views import balance_check_view, pan_words
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import CheckedView, CheckView, ChoicesView
from tests.helpers import check_scenes as scenes
from tests.helpers.pan import PLACED, feed, press, settled

S = CheckState
FACTS = TableFacts(readability=Decimal("0.1"))


def view(procedure: BalanceCheck) -> CheckView:
    shown = balance_check_view(procedure, FACTS)
    assert isinstance(shown, CheckView)
    return shown


def results(procedure: BalanceCheck) -> CheckedView:
    shown = balance_check_view(procedure, FACTS)
    assert isinstance(shown, CheckedView)
    return shown


def choices(procedure: BalanceCheck, facts: TableFacts = FACTS) -> ChoicesView:
    shown = balance_check_view(procedure, facts)
    assert isinstance(shown, ChoicesView)
    return shown


# Choosing ------------------------------------------------------------------------------------


def test_what_may_be_at_hand() -> None:
    words = [choice.text for choice in choices(scenes.check(None)).choices]
    assert words == ["Weights M1", "Weights M2", "Weights M3", "Coins", "Nothing known"]


def test_a_load_says_how_well_it_is_known() -> None:
    notes = {choice.text: choice.note for choice in choices(scenes.check("M2")).choices}
    assert notes["100 g weight"] == "100 \u00b1 0.016 g"


def test_coins_say_it_too() -> None:
    notes = {choice.text: choice.note for choice in choices(scenes.check("us_5_cents")).choices}
    assert notes == {
        "5 coins": "25.0 \u00b1 1.0 g", "10 coins": "50.0 \u00b1 1.9 g",
        "20 coins": "100.0 \u00b1 3.9 g",
    }  # fmt: skip


def test_a_load_over_the_capacity_is_not_offered() -> None:
    facts = TableFacts(readability=Decimal("0.01"))
    facts.scale.capacity = Decimal(200)
    offered = [choice.text for choice in choices(scenes.check("M1"), facts).choices]
    assert offered == ["20 g weight", "50 g weight", "100 g weight", "200 g weight"]


# A weighing ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("state", "title"),
    [
        (S.CLEAR, "Empty the pan."),
        (S.PUT_ON, "Put the 500\u00a0g\u00a0weight on."),
        (S.SETTLING, "Hands off until it is still."),
        (S.SHOWN, "Take it off."),
        (S.DOUBT, "Wipe the pan and weigh it again."),
        (S.OTHER_THING, "Is this the 500\u00a0g\u00a0weight?"),
    ],
)
def test_each_state_asks_for_one_thing(state: CheckState, title: str) -> None:
    assert view(scenes.in_check(state)).title == title


@pytest.mark.parametrize(
    ("state", "main", "second"),
    [
        (S.PUT_ON, None, Person.GO_ON),
        (S.SHOWN, None, Person.UNDO),
        (S.DOUBT, Person.UNDO, Person.KEEP),
        (S.OTHER_THING, Person.UNDO, Person.KEEP),
    ],
)
def test_everything_can_be_skipped_or_done_again(
    state: CheckState, main: Person | None, second: Person
) -> None:
    shown = view(scenes.in_check(state))
    assert shown.main is not None
    assert shown.second is not None
    assert (shown.main.says.kind if shown.main.says else None) == main
    assert shown.second.says is not None
    assert shown.second.says.kind == second


def test_the_row_on_the_pan_comes_last_with_its_limit_and_verdict() -> None:
    rows = view(scenes.in_check(S.DOUBT)).rows
    assert [(row.name, row.now) for row in rows] == [
        ("20 g weight", False), ("50 g weight", False), ("500 g weight", True),
    ]  # fmt: skip
    now = rows[-1]
    assert (now.shown, now.off, now.limit, now.verdict_text) == ("500.9", "0.9", "0.3", "not fine")


def test_a_load_that_is_asked_for_has_no_verdict_yet() -> None:
    now = view(scenes.in_check(S.PUT_ON)).rows[-1]
    assert (now.name, now.shown, now.verdict) == ("500 g weight", "", "")


def test_a_place_says_where_and_how_many_there_are() -> None:
    shown = view(scenes.at_the_edge())
    assert shown.title == "Put it at the front edge."
    assert shown.rows[-1].name == "place 4 of 5"


def test_the_pan_tells_the_thing_and_the_zero_before_it() -> None:
    assert pan_words(scenes.in_check(S.PUT_ON), FACTS) == ("500 g weight", "zero 0.0 g")


def test_a_thing_of_unknown_mass_is_asked_for_by_no_number() -> None:
    procedure = scenes.check(UNKNOWN)
    assert view(procedure).title == "Put your\u00a0thing on."
    feed(procedure, PLACED, settled("137.4"))
    assert view(procedure).rows[-1].verdict == ""


# The results ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("procedure", "title"),
    [
        (scenes.right_check(), "The scale is fine."),
        (scenes.worst_check(), "The scale is not fine."),
        (scenes.coin_check(), "It cannot be told for sure."),
        (scenes.skipped_all(), "Nothing was checked."),
    ],
)
def test_the_results_begin_with_the_verdict(procedure: BalanceCheck, title: str) -> None:
    assert results(procedure).title == title


def test_each_load_and_each_test_has_its_row() -> None:
    rows = {row.name: row.verdict for row in results(scenes.worst_check()).rows}
    assert rows == {
        "50 g weight": "not fine", "200 g weight": "cannot tell", "500 g weight": "not fine",
        "five times": "not fine", "at the edges": "not fine", "back to zero": "not fine",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("procedure", "lines"),
    [
        (scenes.right_check(), ("Good for cups, keys and boxes.",)),
        (scenes.heavy_by_a_share(), ("Off by one share: counts do not suffer, cups do.",)),
        (
            scenes.coarse_check(),
            ("Steps of 1 g: cup scores in whole points.", "Good for cups, keys and boxes."),
        ),
        (scenes.coin_check(), ("Coins find a wrong unit, not a wrong gram.",)),
        (scenes.with_nothing_known(), ("It may be off: only a known weight can tell.",)),
        (
            scenes.worst_check(),
            (
                "Unevenly off: cups and counts suffer.",
                "It does not repeat: cups and counts suffer.",
                "Edges differ: keep to the middle of the pan.",
                "Zero wanders: press zero before each cup.",
            ),
        ),
        (scenes.finished({50: "50.5"}), ("A mass is off: cups suffer, counts perhaps.",)),
        (
            scenes.finished({50: "50.1", 100: "100.0"}),
            ("Some are too near the limit to tell.", "Good for cups, keys and boxes."),
        ),
    ],
)
def test_what_it_means_for_the_event(procedure: BalanceCheck, lines: tuple[str, ...]) -> None:
    assert results(procedure).lines == lines


def test_the_points_of_a_step_follow_the_rules_of_the_event() -> None:
    procedure = scenes.finished({100: "100", 200: "200"}, step=Decimal(1))
    lines = meanings(procedure.log, KioskSettings(rules=Rules(cup_target_g=Decimal(50))).rules)
    assert lines[0] == "Steps of 1 g: scores move by 2 points."


def test_coins_are_not_weighed_again_in_hope() -> None:
    assert results(scenes.coin_check()).second is None
    again = results(scenes.worst_check()).second
    assert again is not None
    assert again.says == press(Person.UNDO)
