"""A volume key by touch, from the shape to the number on the box."""

from __future__ import annotations

from contextlib import closing
from decimal import Decimal

import pytest

from kiosk.procedures.measure import MeasureState
from kiosk.records.store import Store
from kiosk.records.volume_entries import SizeRead, VolumeMade, VolumeStarted
from kiosk.ui.lock import digest_of
from kiosk.ui.theme import theme
from tests.helpers.journey import LARGE, QUIET, SMALL, Journey
from tests.helpers.recorded import AT

CODE = "271828"
BOTH = pytest.mark.parametrize("usual", [SMALL, LARGE], indirect=True)


def begin(journey: Journey, shape: str, unit: str = "centimetres") -> None:
    """From home to the first edge."""
    journey.tap("Measure a box")
    journey.until_screen("choices")
    journey.tap(shape)
    journey.tap(unit)
    journey.until_screen("measure")


def type_in(journey: Journey, text: str) -> None:
    for sign in text:
        journey.tap(sign)


def keep(journey: Journey, *texts: str) -> None:
    """Type each size and keep it with the button that names it."""
    for text in texts:
        type_in(journey, text)
        main = journey.scene.sheet.main
        assert main is not None
        journey.tap(main.text)


def volume(journey: Journey) -> Decimal:
    ((kept,),) = journey.kept("SELECT cm3 FROM volumes_made")
    return Decimal(str(kept))


@BOTH
def test_a_box_of_12_by_9_by_23(usual: Journey) -> None:  # common practice, no source
    begin(usual, "box")
    keep(usual, "12", "12", "9", "9", "23", "23")
    usual.until_screen("key")
    assert usual.title == "2\u2009484 cubic cm"
    usual.tap("Save as box 1")
    usual.until_screen("message")
    assert volume(usual) == 2484
    assert usual.kept("SELECT typed, unit FROM sizes_read")[0] == ("12", "cm")
    usual.tap("Done")
    usual.until_screen("home")


@BOTH
def test_a_winchester_bushel_typed_in_inches(usual: Journey) -> None:
    """18.5 in across, 8 in deep: 2150.42 cubic inches (NIST Handbook 44, Appendix C)."""
    begin(usual, "cylinder", "inches")
    keep(usual, "18.5", "18.5", "8", "8")
    usual.until_screen("key")
    assert "too large for the event" in usual.scene.sheet.note  # type: ignore[attr-defined]
    usual.tap("3")
    usual.tap("Save as box 3")
    usual.until_screen("message")
    assert abs(volume(usual) / Decimal("16.387064") - Decimal("2150.42")) < Decimal("0.005")


def test_a_tapered_round_container_in_millimetres(usual: Journey) -> None:
    begin(usual, "round, tapered", "millimetres")
    keep(usual, "100", "100", "80", "80", "120", "120")
    usual.tap("Save as box 1")
    usual.until_screen("message")
    assert abs(volume(usual) - Decimal("766.5")) < Decimal("0.1")  # pi / 12 x 2440 x 12 / 10


def test_a_tapered_box(usual: Journey) -> None:
    begin(usual, "box, tapered")
    keep(usual, *("20", "20", "10", "10", "18", "18", "8", "8", "6", "6"))
    usual.tap("Save as box 1")
    usual.until_screen("message")
    assert volume(usual) == 1028  # (2 x (200 + 144) + 160 + 180) x 6 / 6


def test_a_row_is_chosen_by_touch_and_its_reading_undone(usual: Journey) -> None:
    begin(usual, "box")
    keep(usual, "18.4", "18.5", "12.6")
    row = next(
        widget for widget in usual.kiosk.frame.walk(restrict=True)
        if type(widget).__name__ == "EdgeRows"
    )  # fmt: skip
    usual.wait(0.5)
    top, high = row.boxes()[0]
    usual.touch(*row.to_window(row.center_x, row.top - (top + high / 2) * theme.u))
    procedure = usual.desk.procedure
    assert procedure is not None
    assert procedure.edge == "long"  # type: ignore[attr-defined]
    usual.tap("Undo 18.5 cm")
    assert usual.rows("sizes_voided") == 1


def test_a_slip_of_the_point_is_asked_about_in_a_sentence(usual: Journey) -> None:
    begin(usual, "box")
    keep(usual, "18.4", "184")
    assert usual.title == "Is 184.0 cm right?"
    usual.tap("Type it again")
    usual.until_screen("measure")
    assert usual.rows("sizes_read") == 1


def test_a_box_that_was_left_is_gone_on_with(usual: Journey) -> None:
    begin(usual, "box")
    keep(usual, "12", "12")
    usual.tap("Home")
    usual.tap("Leave")
    usual.until_screen("home")
    usual.tap("Measure a box")
    usual.tap("Go on")
    usual.until_screen("measure")
    procedure = usual.desk.procedure
    assert procedure is not None
    assert (procedure.state, procedure.edge) == (MeasureState.SIZE, "wide")  # type: ignore[attr-defined]


def test_nothing_that_tells_the_volume_is_seen_under_the_cover(usual: Journey) -> None:
    begin(usual, "box")
    keep(usual, "12", "12", "9", "9", "23", "23")
    usual.until_screen("key")
    usual.tap("Cover the big number")
    usual.wait(0.3)
    seen = " ".join(usual.texts())
    assert not any(text in seen for text in ("2\u2009484", "4\u2009968", "2\u2009452"))
    container = usual.scene.sheet.container
    assert container is not None
    assert container.covered
    assert not any(container.tags)


def test_a_number_is_not_given_to_two_boxes(usual: Journey) -> None:
    for number in (1, 2):
        begin(usual, "cylinder")
        keep(usual, "10", "10", "10", "10")
        usual.tap(f"Save as box {number}")
        usual.until_screen("message")
        usual.tap("Done")
        usual.until_screen("home")
    assert usual.kept("SELECT number FROM volumes_made") == [(1,), (2,)]


def test_a_number_that_another_kiosk_gave_meanwhile_loses_no_size(usual: Journey) -> None:
    begin(usual, "cylinder")
    keep(usual, "10", "10", "10", "10")
    usual.until_screen("key")
    with closing(Store(str(usual.records))) as other:
        key = VolumeStarted(shape="box", at=AT)
        size = SizeRead(key_id=key.id, edge="long", typed="9", unit="cm", at=AT)
        bounds = {"cm3": Decimal(9), "low": Decimal(8), "high": Decimal(10)}
        made = VolumeMade(key_id=key.id, number=1, score_effect=Decimal(1), at=AT, **bounds)
        other.save(key, size, made)
    usual.tap("Save as box 1")
    usual.until(lambda: usual.desk.failure is not None, "the refusal")
    assert "Box 1 has a key already" in " ".join(usual.texts())
    usual.tap("Home")
    usual.until_screen("home")
    usual.tap("Measure a box")
    usual.tap("Go on")
    usual.until_screen("key")
    usual.tap("Save as box 2")
    usual.until_screen("message")


def test_a_minute_without_the_coach_locks_the_box_with_its_sizes(usual: Journey) -> None:
    usual.desk.lock.digest = digest_of(CODE)
    begin(usual, "box")
    keep(usual, "18.4")
    usual.wait(QUIET.coach_idle_s + 1)
    usual.until_screen("code")
    seen = " ".join(usual.texts())
    assert "18.4" not in seen
    type_in(usual, CODE)
    usual.tap("Open")
    usual.until_screen("measure")
    assert usual.scene.sheet.title == "Measure it at a second place."
