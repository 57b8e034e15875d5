"""The marker hangs where the score says, on every size of tent."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.mark import DATA_COLOURS
from kiosk.ui.widgets.score_tent import ScoreTent
from tests.helpers.offscreen import colour_in, frames, pixel, pixels

ShowTent = Callable[..., ScoreTent]


@pytest.fixture
def show(window: Any) -> ShowTent:
    def made(**look: Any) -> ScoreTent:
        size = look.pop("size", (542, 212))
        tent = ScoreTent(size_hint=(None, None), size=size, pos=(400, 200), **look)
        window.add_widget(tent)
        frames(2)
        return tent

    return made


def marker_place(tent: ScoreTent) -> tuple[float, float]:
    """Where the formula of the look puts the marker, in pixels of the window."""
    shape, estimate, true = tent.shape(), tent.estimate, tent.true_value
    ratio = estimate / true
    score = 100 * ratio if ratio <= 1 else max(0.0, 100 * (2 - ratio))
    x = shape.left + shape.wide * min(estimate, 2 * true) / (2 * true)
    y = shape.base - shape.high * score / 100
    return tent.x + x * theme.u, tent.top - y * theme.u


@pytest.mark.parametrize("compact", [False, True])
@pytest.mark.parametrize(
    ("estimate", "side"),
    [
        (70, "under"),
        (93.4, "under"),
        (99, "on target"),
        (130, "over"),
        (199, "over"),
        (450, "over"),
    ],
)
def test_the_marker_stands_where_the_formula_says(
    window: Any, show: ShowTent, estimate: float, side: str, compact: bool
) -> None:
    tent = show(estimate=estimate, side=side, compact=compact)
    assert pixel(window, *marker_place(tent)) == pytest.approx(DATA_COLOURS[side][:3], abs=0.02)


def test_another_true_value_is_another_scale(window: Any, show: ShowTent) -> None:
    tent = show(true_value=2830, estimate=2400, side="under")
    assert pixel(window, *marker_place(tent)) == pytest.approx(theme.under[:3], abs=0.02)


def test_without_an_estimate_there_is_no_marker(show: ShowTent) -> None:
    assert show(estimate=None).share() is None


def test_nothing_estimated_is_an_estimate(show: ShowTent) -> None:
    assert show(estimate=0.0, side="under").share() == 0


def test_the_marker_climbs_from_the_left_peg(show: ShowTent) -> None:
    tent = show(estimate=93.4, side="under")
    theme.less_motion = False
    tent.climb()
    assert tent.share() == 0
    frames(3)
    assert 0 <= tent.climbed < 1


def test_the_points_count_with_the_marker(show: ShowTent) -> None:
    tent = show(estimate=130.0, side="over", score_text="70.0")
    tent.climbed = 0.5
    assert tent._points_now() == "65.0"
    tent.climbed = 1.0
    assert tent._points_now() == "70.0"


def test_with_less_motion_it_is_there_at_once(show: ShowTent) -> None:
    tent = show(estimate=93.4, side="under")
    tent.climb()
    assert tent.climbed == 1


def test_a_new_estimate_ends_a_climb(show: ShowTent) -> None:
    tent = show(estimate=93.4, side="under")
    theme.less_motion = False
    tent.climb()
    tent.estimate = 50.0
    assert tent.climbed == 1


def test_an_unsure_key_has_a_flat_top(window: Any, show: ShowTent) -> None:
    tent = show(band=0.1, true_value=2830, estimate=None)
    shape = tent.shape()
    x, y = shape.at(0.95)
    inside = pixel(window, tent.x + x, tent.top - (shape.base + y) / 2)
    assert inside == pytest.approx(theme.on_t[:3], abs=0.02)


def test_a_covered_tent_tells_no_number(window: Any, show: ShowTent) -> None:
    tent = show(band=0.02, covered=True, left_text="0", peak_text="2830", right_text="5660")
    before = pixels(window)
    tent.peak_text, tent.right_text = "1111", "2222"
    frames(2)
    assert pixels(window) == before


def test_the_words_on_the_axis_do_not_meet(window: Any, show: ShowTent) -> None:
    """Beside the ridge pole each word keeps to its own side."""
    tent = show(estimate=99.9, side="under", peak_text="100 g", yours_text="yours 99.9 g")
    x = tent.x + tent.shape().x(1) - 2
    picture = pixels(window)
    column = [colour_in(picture, window, x, tent.y + y) for y in range(0, 24, 2)]
    assert all(colour == pytest.approx((0, 0, 0), abs=0.01) for colour in column)
