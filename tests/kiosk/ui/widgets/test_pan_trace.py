"""The last ten seconds as a line, and the rest as a ground."""

from __future__ import annotations

from typing import Any

import pytest

from kiosk.ui.presenters.views import TraceView
from kiosk.ui.theme import theme
from kiosk.ui.widgets.pan_trace import PanTrace
from tests.helpers.offscreen import frames, pixel


def shown(window: Any, **view: Any) -> PanTrace:
    words = {"top": "60 g", "bottom": "0 g", "ago_text": "10 s ago", "now_text": "now"}
    trace = PanTrace(
        view=TraceView(**(words | view)), size_hint=(None, None), size=(542, 112), pos=(400, 200)
    )
    window.add_widget(trace)
    frames(2)
    return trace


def colour_at(window: Any, trace: PanTrace, across: float, up: float) -> Any:
    x, y = trace.place(across, up)
    return pixel(window, trace.x + x * theme.u, trace.top - y * theme.u)


def test_the_line_runs_through_its_points(window: Any) -> None:
    trace = shown(window, points=((0.0, 0.0), (0.5, 0.5), (1.0, 0.5)))
    for across, up in ((0.25, 0.25), (0.73, 0.5)):
        assert colour_at(window, trace, across, up) == pytest.approx(theme.ink[:3], abs=0.05)
    assert colour_at(window, trace, 0.73, 0.2) == pytest.approx(theme.card[:3], abs=0.05)


def test_heavier_is_higher_and_newer_is_at_the_right(window: Any) -> None:
    trace = shown(window)
    (left, low), (right, high) = trace.place(0, 0), trace.place(1, 1)
    assert left < right
    assert low > high


def test_the_rest_has_another_ground_from_its_beginning(window: Any) -> None:
    trace = shown(window, points=((0.0, 0.9), (1.0, 0.9)), stable=0.6)
    assert colour_at(window, trace, 0.55, 0.5) == pytest.approx(theme.card[:3], abs=0.02)
    assert colour_at(window, trace, 0.95, 0.5) == pytest.approx(theme.kraft[:3], abs=0.02)
    assert colour_at(window, trace, 0.6, 0.6) == pytest.approx(theme.ink[:3], abs=0.05)


def test_without_a_rest_there_is_one_ground(window: Any) -> None:
    trace = shown(window, points=((0.0, 0.1), (1.0, 0.1)))
    assert colour_at(window, trace, 0.95, 0.5) == pytest.approx(theme.card[:3], abs=0.02)


@pytest.mark.parametrize("points", [(), ((1.0, 0.5),)])
def test_too_few_readings_draw_no_line(window: Any, points: Any) -> None:
    trace = shown(window, points=points)
    assert colour_at(window, trace, 0.73, 0.5) == pytest.approx(theme.card[:3], abs=0.05)
