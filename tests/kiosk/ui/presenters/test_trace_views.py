"""The live trace and what it tells."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.ui.presenters.scale_facts import FoundScale, ScaleKind
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.trace_views import plug_text, scale_facts, steadiness_lines, trace_view
from kiosk.weighing.pan_history import PanPast

STEP = Decimal("0.1")


def past(*masses: str, rest: float | None = None, pace: float | None = None) -> PanPast:
    """Readings a tenth of a second apart, the last one now."""
    ages = [(len(masses) - 1 - place) / 10 for place in range(len(masses))]
    points = zip(ages, map(Decimal, masses), strict=True)
    return PanPast(points=tuple(points), rest=rest, pace=pace)


@pytest.mark.parametrize(
    ("most", "top"),
    [("0.0", "2.5 g"), ("50.0", "60 g"), ("110.3", "150 g"), ("1999.9", "2\u2009500 g")],
)
def test_the_scale_ends_in_a_plain_number(most: str, top: str) -> None:
    shown = trace_view(past("0.0", most), STEP)
    assert (shown.top, shown.bottom) == (top, "0 g")


def test_now_is_at_the_right_and_ten_seconds_ago_at_the_left() -> None:
    points = PanPast(points=((10.0, Decimal(0)), (5.0, Decimal(30)), (0.0, Decimal(60))))
    across = [x for x, _ in trace_view(points, STEP).points]
    assert across == [0.0, 0.5, 1.0]


def test_the_height_follows_the_mass() -> None:
    up = [y for _, y in trace_view(past("0.0", "30.0", "50.0"), STEP).points]
    assert up == [0.0, 0.5, pytest.approx(50 / 60)]


def test_noise_below_zero_stays_on_the_ground() -> None:
    shown = trace_view(past("-0.1", "0.0"), STEP)
    assert (shown.bottom, shown.points[0][1]) == ("0 g", 0.0)


def test_a_pan_far_below_zero_has_room() -> None:
    shown = trace_view(past("-40.0", "0.0"), STEP)
    assert shown.bottom == "\u221250 g"
    assert 0 < shown.points[0][1] < shown.points[1][1]


@pytest.mark.parametrize(("rest", "place"), [(None, None), (4.0, 0.6), (10.0, 0.0)])
def test_the_rest_is_marked_where_it_began(rest: float | None, place: float | None) -> None:
    assert trace_view(past("50.0", rest=rest), STEP).stable == place


def test_nothing_heard_is_an_empty_trace() -> None:
    assert trace_view(PanPast(), None).points == ()


@pytest.mark.parametrize(("pace", "words"), [(10.02, "10 a second"), (1.49, "1.5 a second")])
def test_the_facts_that_are_known(pace: float, words: str) -> None:
    facts = TableFacts(readability=STEP, past=past("0.0", pace=pace))
    facts.scale.capacity = Decimal("2000.0")
    assert scale_facts(facts) == (
        ("step", "0.1 g"), ("most", "2\u2009000 g"), ("readings", words),
    )  # fmt: skip


def test_what_is_not_known_is_not_told() -> None:
    assert scale_facts(TableFacts()) == ()


def test_a_still_pan_has_no_noise_and_no_drift() -> None:
    facts = TableFacts(readability=STEP, past=past(*["50.0"] * 60, rest=6.0))
    assert steadiness_lines(facts) == ("noise 0.00 g, no drift to be seen",)


def test_a_drift_is_told_by_the_minute() -> None:
    masses = [str(Decimal(50) + Decimal(place) / 100) for place in range(80)]
    facts = TableFacts(readability=Decimal("0.01"), past=past(*masses, rest=8.0))
    assert steadiness_lines(facts) == ("noise 0.000 g, drifts by 6.00 g a minute",)


def test_a_moving_pan_tells_neither() -> None:
    facts = TableFacts(readability=STEP, past=past(*["50.0"] * 60))
    assert steadiness_lines(facts) == ()


@pytest.mark.parametrize("kind", ScaleKind)
def test_each_way_to_be_heard_has_its_word(kind: ScaleKind) -> None:
    facts = TableFacts()
    assert plug_text(facts) == ""
    facts.scale.chosen = FoundScale(where="somewhere", kind=kind)
    assert plug_text(facts)
