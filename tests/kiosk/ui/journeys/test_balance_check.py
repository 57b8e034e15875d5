"""The coach checks the scale by touch, with weights and coins of the simulated bench."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.records.entries import CheckRole
from kiosk.ui.presenters.views import CheckedView, CheckView, ScaleView
from tests.helpers.journey import STEADY, Journey

OFF = replace(STEADY, span_error=0.01)
TILTED = replace(STEADY, corner_error=0.005)


def begin(journey: Journey, kit: str) -> None:
    """From home to the first load of that kit."""
    journey.tap("The\nscale")
    journey.until_screen("scale")
    journey.until(lambda: "Check the scale" in journey.seen, "a scale that is heard")
    journey.tap("Check the scale")
    journey.until_screen("choices")
    journey.tap(kit)


def state(journey: Journey) -> CheckState | None:
    procedure = journey.desk.procedure
    return procedure.state if isinstance(procedure, BalanceCheck) else None


def weigh(journey: Journey, tile: str) -> None:
    """Put it on, wait until it is written down, take it off again."""
    journey.tap_thing(tile)
    journey.until(
        lambda: state(journey) in (CheckState.SHOWN, CheckState.DOUBT), f"{tile} captured"
    )
    journey.tap_thing(tile)
    journey.until(
        lambda: state(journey) not in (CheckState.SHOWN, CheckState.DOUBT), "an empty pan"
    )


def load(journey: Journey, name: str) -> None:
    """A known load, twice if it is asked for once more."""
    journey.until_screen("choices")
    journey.tap(name)
    weigh(journey, name)
    procedure = journey.desk.procedure
    assert isinstance(procedure, BalanceCheck)
    if procedure.task is not None and procedure.task.role is CheckRole.LOAD:
        weigh(journey, name)


def rest_of_tests(journey: Journey, tile: str) -> None:
    """Five weighings, then centre and edges."""
    for _ in range(10):
        weigh(journey, tile)


def verdicts(journey: Journey) -> dict[str, str]:
    sheet = journey.scene.sheet
    assert isinstance(sheet, CheckedView), sheet
    return {row.name: row.verdict for row in sheet.rows}


def whole_check(journey: Journey) -> dict[str, str]:
    begin(journey, "Weights M1")
    for name in ("50 g weight", "200 g weight", "500 g weight"):
        load(journey, name)
    rest_of_tests(journey, "500 g weight")
    journey.until_screen("checked")
    return verdicts(journey)


def test_a_right_scale_is_found_fine_and_the_check_is_kept(journey: Journey) -> None:
    assert set(whole_check(journey).values()) == {"fine"}
    assert "The scale is fine." in journey.seen
    journey.tap("Keep this check")
    journey.until_screen("scale")
    assert "Checked today: fine." in journey.seen
    assert journey.rows("balances_checked") == 1
    # Three loads, five weighings, five places; after each the zero.
    assert journey.kept("SELECT count(*) FROM check_masses WHERE role != 'zero'") == [(13,)]
    assert journey.kept("SELECT count(*) FROM check_masses WHERE role = 'zero'") == [(13,)]
    assert journey.kept("SELECT verdict, simulated FROM balances_checked") == [("fine", 1)]


def test_a_scale_with_an_error_of_span_is_not_fine_and_warns_at_home(
    start: Callable[..., Journey],
) -> None:
    journey = start(profile=OFF)
    found = whole_check(journey)
    assert found == {
        "50 g weight": "not fine", "200 g weight": "not fine", "500 g weight": "not fine",
        "five times": "fine", "at the edges": "fine", "back to zero": "fine",
    }  # fmt: skip
    assert "The scale is not fine." in journey.seen
    assert "counts do not suffer, cups do" in journey.seen
    journey.tap("Keep this check")
    journey.until_screen("scale")
    journey.tap("Home")
    journey.until_screen("home")
    assert "scale not fine" in journey.scene.strip.words


def test_the_warning_is_there_again_after_the_next_start(start: Callable[..., Journey]) -> None:
    journey = start(profile=OFF)
    begin(journey, "Weights M1")
    load(journey, "200 g weight")
    journey.until_screen("choices")
    journey.tap("Home")
    journey.until_screen("home")
    again = start(profile=OFF)
    again.until(lambda: "scale not fine" in again.scene.strip.words, "the warning")


def test_a_tilted_pan_is_found_with_nothing_known(start: Callable[..., Journey]) -> None:
    journey = start(profile=TILTED)
    begin(journey, "Nothing known")
    rest_of_tests(journey, "200 g weight")
    journey.until_screen("checked")
    assert verdicts(journey) == {
        "five times": "fine", "at the edges": "not fine", "back to zero": "fine"
    }  # fmt: skip
    assert "keep to the middle of the pan" in journey.seen


def test_coins_cannot_tell_a_gram(journey: Journey) -> None:
    begin(journey, "Coins")
    journey.until_screen("choices")
    journey.tap("US 5 cents")
    load(journey, "10 coins")
    journey.until_screen("choices")
    journey.tap("That is enough")
    for _ in range(2):
        journey.until_screen("check")
        journey.tap("Skip\nthis")
    journey.until_screen("checked")
    assert verdicts(journey)["10 coins"] == "cannot tell"
    assert "Coins find a wrong unit" in journey.seen


def test_a_load_that_is_off_is_shown_with_its_limit_and_the_trace(
    start: Callable[..., Journey],
) -> None:
    journey = start(profile=OFF)
    begin(journey, "Weights M1")
    journey.until_screen("choices")
    journey.tap("50 g weight")
    journey.tap_thing("50 g weight")
    journey.until(lambda: state(journey) is CheckState.DOUBT, "a doubt")
    sheet = journey.scene.sheet
    assert isinstance(sheet, CheckView)
    assert sheet.title == "Wipe the pan and weigh it again."
    (row,) = sheet.rows
    assert (row.shown, row.off, row.limit, row.verdict_text) == ("50.5", "0.5", "0.1", "not fine")
    assert sheet.trace.stable is not None
    assert sheet.trace.points[-1][1] > 0.5


def test_another_weight_than_the_one_asked_for_is_noticed(journey: Journey) -> None:
    begin(journey, "Weights M1")
    journey.until_screen("choices")
    journey.tap("500 g weight")
    journey.tap_thing("50 g weight")
    journey.until_title("Is this the 500 g weight?")


def test_pulling_the_cable_in_the_middle_loses_nothing(journey: Journey) -> None:
    begin(journey, "Weights M1")
    load(journey, "50 g weight")
    journey.until_screen("choices")
    journey.tap("200 g weight")
    journey.until_screen("check")
    journey.table.unplug()
    journey.until_screen("trouble")
    journey.table.plug()
    journey.until_screen("check")
    weigh(journey, "200 g weight")
    journey.until_screen("choices")
    assert journey.kept("SELECT name FROM check_masses WHERE role = 'load'") == [
        ("50 g M1",), ("200 g M1",)
    ]  # fmt: skip


def test_the_drawer_shows_the_live_facts(journey: Journey) -> None:
    journey.tap("The\nscale")
    journey.until_screen("scale")
    journey.wait(6)
    sheet = journey.scene.sheet
    assert isinstance(sheet, ScaleView)
    assert dict(sheet.facts) == {"step": "0.1 g", "most": "2\u2009000 g", "readings": "10 a second"}
    assert sheet.lines == ("noise 0.00 g, no drift to be seen", "Not checked yet.")
    assert sheet.trace is not None
    assert sheet.trace.stable is not None


@pytest.mark.parametrize("journey", [(1024, 600)], indirect=True)
def test_home_in_the_middle_keeps_what_was_done(journey: Journey) -> None:
    begin(journey, "Weights M1")
    load(journey, "50 g weight")
    journey.until_screen("choices")
    journey.tap("Home")
    journey.until_screen("home")
    assert journey.rows("balances_checked") == 1
