"""Over is up, under is down, the newest stands at the right."""

from __future__ import annotations

from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.tries_plot import TriesPlot
from tests.helpers.offscreen import frames, pixel


def shown(window: Any, errors: list[float]) -> TriesPlot:
    plot = TriesPlot(errors=errors, size_hint=(None, None), size=(542, 118), pos=(400, 200))
    window.add_widget(plot)
    frames(2)
    return plot


def test_over_is_up_and_under_is_down(window: Any) -> None:
    plot = shown(window, [14, -7])
    assert plot.level(14) < plot.level(0) < plot.level(-7)


def test_the_newest_keeps_its_place(window: Any) -> None:
    few, many = shown(window, [3]), shown(window, [1, 2, 3, 4, 3])
    assert few.across(0) == pytest.approx(many.across(4))


def test_small_errors_look_small(window: Any) -> None:
    small, large = shown(window, [1.0]), shown(window, [90.0])
    assert small.level(0) - small.level(1.0) < 5
    assert large.level(0) - large.level(90.0) > 30


def test_an_enormous_error_stays_in_the_plot(window: Any) -> None:
    plot = shown(window, [5000.0, -7.0])
    _, _, high = plot.bounds()
    assert 0 < plot.level(5000.0) < plot.level(-5000.0) < high


@pytest.mark.parametrize(
    ("error", "name"), [(14.0, "over"), (-7.0, "under"), (1.0, "on"), (-2.0, "on")]
)
def test_each_side_has_its_colour(window: Any, error: float, name: str) -> None:
    plot = shown(window, [error, 30.0])
    place = (plot.x + plot.across(0), plot.top - plot.level(error))
    assert pixel(window, *place) == pytest.approx(getattr(theme, name)[:3], abs=0.02)


def test_no_tries_yet(window: Any) -> None:
    assert shown(window, []).level(0) == pytest.approx(59)
