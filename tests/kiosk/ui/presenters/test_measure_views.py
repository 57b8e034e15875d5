"""What the coach reads while a container is measured."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.procedures.measure import Measure
from kiosk.procedures.procedure import Person
from kiosk.records.volume_entries import LengthUnit, Shape
from kiosk.ui.presenters.measure_views import centimetres, cubic, measure_view
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    ChoicesView,
    ContainerView,
    KeyView,
    MeasureView,
    MessageView,
    SheetView,
)
from tests.helpers import measure_scenes as scenes
from tests.helpers.measured import keep, measured, measuring, resumed, type_in
from tests.helpers.pan import feed, press


def view(procedure: Measure, **facts: object) -> SheetView:
    return measure_view(procedure, TableFacts(**facts))  # type: ignore[arg-type]  # by name


def sizes(procedure: Measure, **facts: object) -> MeasureView:
    shown = view(procedure, **facts)
    assert isinstance(shown, MeasureView)
    return shown


def result(procedure: Measure, **facts: object) -> KeyView:
    shown = view(procedure, **facts)
    assert isinstance(shown, KeyView)
    return shown


def container(shown: SheetView) -> ContainerView:
    assert shown.container is not None
    return shown.container


@pytest.mark.parametrize(
    ("cm", "said"),
    [("12", "12.0"), ("9.25", "9.25"), ("46.990", "46.99"), ("29.05125", "29.05"), ("0", "0.0")],
)
def test_a_size_has_no_more_decimals_than_a_ruler(cm: str, said: str) -> None:
    assert centimetres(Decimal(cm)) == said


def test_a_small_volume_keeps_a_decimal() -> None:
    assert (cubic(Decimal("99.94")), cubic(Decimal("2484.4"))) == ("99.9", "2\u2009484")


def test_shapes_and_units_are_cards() -> None:
    procedure = resumed(None)
    shapes = view(procedure)
    feed(procedure, press(Person.CHOOSE, Shape.BOX))
    units = view(procedure)
    assert isinstance(shapes, ChoicesView)
    assert isinstance(units, ChoicesView)
    assert [choice.value for choice in shapes.choices] == list(Shape)
    assert [choice.value for choice in units.choices] == list(LengthUnit)
    assert shapes.container is None


def test_the_question_follows_the_edge_and_its_places() -> None:
    procedure = measuring()
    titles = [view(procedure).title]
    for text in ("12.0", "12.8"):
        keep(procedure, text)
        titles.append(view(procedure).title)
    assert titles == [
        "How long is it?",
        "Measure it at a second place.",
        "They differ, so try a third place.",
    ]


def test_a_row_tells_its_places_and_by_how_much_they_differ() -> None:
    long, wide, tall = sizes(scenes.begun()).rows
    assert (long.cells, long.note, long.state) == (("18.4", "18.5"), "differ by 0.1 cm", "done")
    assert wide.note == "differ by 0.0 cm"
    assert (tall.cells, tall.typing, tall.state) == (("9.2",), "9.3", "now")


def test_what_is_typed_in_inches_is_told_in_centimetres() -> None:
    procedure = measuring(unit=LengthUnit.INCH)
    type_in(procedure, "18.5")
    shown = sizes(procedure)
    assert shown.rows[0].note == "= 46.99 cm"
    assert shown.main is not None
    assert "46.99" in shown.main.text


def test_the_button_keeps_goes_on_or_waits() -> None:
    procedure = measuring()
    waiting = sizes(procedure).main
    type_in(procedure, "12")
    keeping = sizes(procedure).main
    feed(procedure, press(Person.KEEP))
    going = sizes(procedure).main
    assert waiting is not None
    assert keeping is not None
    assert going is not None
    assert (waiting.state, waiting.says) == ("waiting", None)
    assert (keeping.says, going.says) == (press(Person.KEEP), press(Person.GO_ON))
    assert going.text == "Next: wide"


def test_from_the_last_edge_it_goes_to_the_volume() -> None:
    main = sizes(scenes.can()).main
    assert main is not None
    assert main.text == "See the volume"


def test_the_undo_names_the_size_that_goes() -> None:
    assert sizes(measuring()).second is None
    second = sizes(scenes.begun()).second
    assert second is not None
    assert second.text == "Undo\n9.2 cm"


def test_printed_sizes_are_to_be_covered_and_walls_not_followed() -> None:
    assert sizes(measuring()).hint == "Cover printed sizes first."
    assert sizes(scenes.bin_()).hint == "Straight up, not along the wall."


def test_what_is_wrong_stands_in_the_place_of_the_hint() -> None:
    procedure = measuring()
    keep(procedure, "0")
    shown = sizes(procedure)
    assert (shown.hint, shown.warns) == ("0 is no size. Measure it again.", True)


def test_an_unlikely_size_is_asked_about_with_its_reason() -> None:
    procedure = measuring()
    keep(procedure, "18.4", "184")
    shown = view(procedure)
    assert isinstance(shown, MessageView)
    assert shown.title == "Is 184.0 cm right?"
    assert "Another place was 18.4 cm" in shown.lines[0]
    assert shown.main is not None
    assert shown.main.says == press(Person.NO)


def test_too_long_a_size_says_so() -> None:
    procedure = measuring()
    keep(procedure, "312")
    shown = view(procedure)
    assert isinstance(shown, MessageView)
    assert "more than 3 metres" in shown.lines[0]


def test_the_trail_has_a_step_for_each_edge_and_one_for_the_volume() -> None:
    begun, done = view(scenes.begun()), view(measured(*scenes.BOX))
    assert (begun.step, begun.steps, begun.step_text) == (3, 4, "Step 3 of 4: tall")
    assert (done.step, done.step_text) == (4, "Step 4 of 4: volume")


def test_the_container_shows_means_and_which_edge_is_next() -> None:
    shown = container(sizes(scenes.begun()))
    assert shown.sizes == pytest.approx((18.45, 12.6, 9.2))
    assert shown.states == ("done", "done", "now")
    assert shown.tags == ("18.45", "12.6", "9.2")
    assert shown.share == pytest.approx(18.45 * 12.6 * 9.2 / 4000)


def test_without_every_edge_there_is_no_volume() -> None:
    shown = container(sizes(measuring()))
    assert (shown.number, shown.between, shown.share) == ("", "", 0.0)


def test_the_key_tells_the_volume_its_bounds_and_the_cost() -> None:
    shown = result(measured("12", "12", "9", "9", "23", "23"))
    assert shown.title == "2\u2009484 cubic cm"
    assert "2\u2009463" in shown.sure
    assert shown.cost.startswith("up to 1.0 points")
    assert shown.note == ""


def test_bounds_are_rounded_outward() -> None:
    procedure = measured("12", "12", "9", "9", "23", "23")
    volume = procedure.kept.volume()
    assert volume is not None
    low, high = (
        int(part.strip("[]b/").replace("\u2009", ""))
        for part in result(procedure).sure.split("\n")[1].split(" and ")
    )
    assert low <= volume.low
    assert high >= volume.high


@pytest.mark.parametrize(
    ("procedure", "note"),
    [
        (measured("13", "13", "13", "13", "23", "23"), ""),
        (measured("40", "40", "10", "10", "10", "10"), "It may be more than 4\u2009000 cubic cm"),
        (measured("41", "41", "10", "10", "10", "10"), "too large for the event"),
        (scenes.one_place_each(), "one place"),
    ],
)
def test_the_limit_and_single_places_are_pointed_out(procedure: Measure, note: str) -> None:
    shown = result(procedure).note
    assert note in shown
    assert bool(note) is bool(shown)


def test_the_first_free_number_is_offered_and_another_can_be_chosen() -> None:
    procedure = measured(*scenes.BOX)
    offered = result(procedure, used_boxes=("1", "2")).main
    other = result(procedure, used_boxes=("1", "2"), letter="7").main
    taken = result(procedure, used_boxes=("1", "2"), letter="2").main
    assert offered is not None
    assert other is not None
    assert taken is not None
    assert [each.says for each in (offered, other, taken)] == [
        press(Person.KEEP, 3),
        press(Person.KEEP, 7),
        press(Person.KEEP, 3),
    ]


def test_with_all_numbers_used_nothing_can_be_saved() -> None:
    all_used = tuple(str(number) for number in range(1, 27))
    main = result(measured(*scenes.BOX), used_boxes=all_used).main
    assert main is not None
    assert (main.state, main.says) == ("off", None)


def test_the_cover_hides_every_number_of_the_key() -> None:
    shown = result(measured(*scenes.BOX), covered=True)
    assert shown.title == "box"
    assert (shown.sure, shown.peak, shown.right) == ("", "", "")
    assert set(container(shown).tags) == {""}
    assert container(shown).covered
