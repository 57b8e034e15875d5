"""A simulated scale is plain to see on the strip, whatever else it says."""

from __future__ import annotations

from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.status_strip import StatusStrip
from tests.helpers.offscreen import colour_in, frames, pixels

YELLOW = tuple(round(part, 1) for part in theme.hazard[:3])


def colours(window: Any, **look: Any) -> list[tuple[float, ...]]:
    """What is seen along the upper edge of the strip."""
    strip = StatusStrip(size_hint=(None, None), size=(window.width, theme.strip_high), **look)
    strip.pos = (0, window.height - strip.height)
    window.add_widget(strip)
    frames(2)
    picture, y = pixels(window), window.height - 2
    return [
        tuple(round(part, 1) for part in colour_in(picture, window, x, y))
        for x in range(0, int(window.width), 4)
    ]


@pytest.mark.parametrize("window", [(800, 480), (1024, 600)], indirect=True)
@pytest.mark.parametrize(
    "look",
    [
        {},
        {"words": ["Scale connected", "Team Heron", "cup 7"], "clock_text": "10:14"},
        {"words": ["Scale unplugged", "Team Heron"], "connected": False},
        {"words": ["Scale connected", "Count key"], "lock": "coach", "right_text": "coach"},
    ],
)
def test_the_stripes_are_always_there(window: Any, look: dict[str, Any]) -> None:
    seen = colours(window, simulated=True, plate_text="SIMULATED SCALE", **look)
    assert 0.3 < seen.count(YELLOW) / len(seen) < 0.7


def test_a_real_scale_has_no_stripes(window: Any) -> None:
    assert YELLOW not in colours(window, words=["Scale connected"])


def test_typed_readings_stand_on_a_plate_without_a_plug(window: Any) -> None:
    strip = StatusStrip(size_hint=(None, None), size=(window.width, 40), typed=True)
    strip.words = ["Typed readings", "Team Heron"]
    strip.pos = (0, window.height - 40)
    window.add_widget(strip)
    frames(2)
    picture, y = pixels(window), window.height - 34
    plate = pytest.approx(theme.lamp[:3], abs=0.02)
    lamp = [x for x in range(int(window.width)) if colour_in(picture, window, x, y) == plate]
    assert min(lamp) < 20
    assert 120 < max(lamp) - min(lamp) < 240


def clock_corner(window: Any) -> list[tuple[float, ...]]:
    """What is seen where the clock stands."""
    picture = pixels(window)
    return [
        colour_in(picture, window, x, y)
        for x in range(int(window.width) - 104, int(window.width))
        for y in range(int(window.height) - 40, int(window.height), 3)
    ]


def test_many_words_do_not_reach_the_clock(window: Any) -> None:
    strip = StatusStrip(size_hint=(None, None), size=(window.width, 40), clock_text="10:14")
    strip.pos = (0, window.height - 40)
    window.add_widget(strip)
    frames(2)
    alone = clock_corner(window)
    strip.words = ["Scale connected"] + ["a pair with a very long name"] * 6
    frames(2)
    assert clock_corner(window) == alone
