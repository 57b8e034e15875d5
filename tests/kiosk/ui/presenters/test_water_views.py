"""What the coach reads while a container is measured with water."""

from __future__ import annotations

from decimal import Decimal

from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import GuessView, KeyView, MessageView, SheetView
from kiosk.ui.presenters.water_views import captured_water, water_view
from tests.helpers import water_scenes as scenes
from tests.helpers.pan import feed, press

S = WaterState


def view(procedure: MeasureWater, **facts: object) -> SheetView:
    return water_view(procedure, TableFacts(**facts))  # type: ignore[arg-type]  # by name


def result(procedure: MeasureWater, **facts: object) -> KeyView:
    shown = view(procedure, **facts)
    assert isinstance(shown, KeyView)
    return shown


def test_caution_defers_to_the_rules_of_the_school() -> None:
    shown = view(scenes.in_water(S.CAUTION))
    assert isinstance(shown, MessageView)
    assert "rules" in shown.lines[-1]
    assert not shown.steps


def test_a_wrong_temperature_stands_beside_the_digits() -> None:
    shown = view(scenes.fahrenheit())
    assert isinstance(shown, GuessView)
    assert "Fahrenheit" in shown.hint
    assert shown.main is not None
    assert shown.main.state == "waiting"


def test_the_volume_stands_with_its_interval_and_what_it_costs() -> None:
    shown = result(scenes.with_volume())
    assert shown.title == "1\u2009126 cubic cm"
    assert all(bound in shown.sure for bound in ("1\u2009125", "1\u2009127"))
    assert "0.1 points" in shown.cost


def test_one_filling_is_said_to_be_one() -> None:
    assert "again" in result(scenes.with_volume()).note
    assert result(scenes.with_volume("1234.5", "1235.0")).note == ""


def test_too_large_for_the_event_comes_before_it() -> None:
    assert "too large" in result(scenes.large()).note


def test_nothing_that_tells_the_volume_is_seen_under_the_cover() -> None:
    procedure = scenes.large()
    shown = result(procedure, covered=True)
    seen = " ".join((shown.title, shown.sure, shown.peak, shown.right, f"{shown.second}"))
    assert not any(digits in seen for digits in ("4\u2009", "8\u2009", "511", "098"))
    pan = captured_water(procedure, TableFacts(covered=True))
    assert pan is not None
    assert (pan.phase, pan.number) == ("hidden", "")


def test_the_pan_shows_the_water_that_was_weighed_last() -> None:
    pan = captured_water(scenes.with_volume(), TableFacts())
    assert pan is not None
    assert (pan.number, pan.line1) == ("1\u2009122.2", "at 21 °C")
    assert captured_water(scenes.lifted(), TableFacts()) is None


def test_weigh_again_says_which_mass_goes() -> None:
    empty, filled = view(scenes.lifted()).second, view(scenes.filled_anew()).second
    assert empty is not None
    assert filled is not None
    assert "Empty" in empty.text
    assert "234.5" in filled.text


def test_numbers_that_are_used_are_not_offered() -> None:
    shown = result(scenes.with_volume(), used_boxes=("1", "2"))
    assert shown.main is not None
    assert shown.main.says == press(Person.KEEP, 3)
    procedure = scenes.with_volume()
    feed(procedure, shown.main.says)
    assert "Box 3" in view(procedure).title
    assert procedure.kept.celsius == Decimal(21)
