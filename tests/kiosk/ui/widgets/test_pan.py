"""What the pan shows, and that it shows nothing while it is covered."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, radians, sin
from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.pan import CLASP, DISC, PHASES, PIECES, RIM, RING, Pan, X, Y
from tests.helpers.offscreen import colour_in, frames, pixel, pixels

ShowPan = Callable[..., Pan]


@pytest.fixture
def show(window: Any) -> ShowPan:
    def made(**look: Any) -> Pan:
        pan = Pan(size_hint=(None, None), size=(384, 430), pos=(16, 104), **look)
        window.add_widget(pan)
        frames(3)
        return pan

    return made


def colour_at(window: Any, pan: Pan, right: float, down: float) -> tuple[float, ...]:
    """The colour at a place seen from the middle of the pan, in units."""
    return pixel(window, pan.x + X + right, pan.top - Y - down)


LEAKS = {
    "number": "123.4", "progress": 0.9, "label": "inside", "unit": "pieces", "unit_below": True,
    "line1": "with the cup 105.7 g", "line2": "simulated",
}  # fmt: skip


@pytest.mark.parametrize("name", LEAKS)
def test_while_hidden_no_pixel_follows(window: Any, show: ShowPan, name: str) -> None:
    pan = show(phase="hidden", word="hidden", hidden_text="cups are out", number="0.0", unit="g")
    before = pixels(window)
    setattr(pan, name, LEAKS[name])
    frames(3)
    assert pixels(window) == before


def test_while_hidden_no_pixel_follows_in_motion_either(window: Any, show: ShowPan) -> None:
    pan = show(phase="hidden", word="hidden", hidden_text="cups are out", number="0.0", unit="g")
    theme.less_motion = False
    before = pixels(window)
    for share in range(10):
        pan.progress, pan.number = share / 10, f"{share}.0"
        frames(1)
        assert pixels(window) == before


def test_the_same_change_is_seen_when_not_hidden(window: Any, show: ShowPan) -> None:
    pan = show(phase="moving", number="0.0", unit="g")
    before = pixels(window)
    pan.number = "123.4"
    frames(3)
    assert pixels(window) != before


def test_the_number_goes_before_the_cover_comes(window: Any, show: ShowPan) -> None:
    """A cover that closes slowly must not show the weight meanwhile."""
    pan = show(phase="captured", number="88888", unit="g")
    theme.less_motion = False
    pan.phase = "hidden"
    frames(1)
    assert pan.covering < 1
    assert colour_at(window, pan, DISC - 12, 0) == pytest.approx(theme.card[:3], abs=0.01)
    before = pixels(window)
    pan.number = "1"
    pan._paint_now()
    assert pixels(window) == before


def test_the_cover_is_dark(window: Any, show: ShowPan) -> None:
    pan = show(phase="hidden", hidden_text="cups are out")
    assert colour_at(window, pan, 0, -60) == pytest.approx(theme.lid[:3], abs=0.01)


@pytest.mark.parametrize(("share", "dark"), [(0.0, False), (0.2, False), (0.3, True), (1.0, True)])
def test_the_ring_closes_clockwise_from_twelve(
    window: Any, show: ShowPan, share: float, dark: bool
) -> None:
    pan = show(phase="settling", progress=share)
    expected = theme.ink if dark else theme.hair
    assert colour_at(window, pan, RING, 0) == pytest.approx(expected[:3], abs=0.02)


@pytest.mark.parametrize("phase", ["stable", "captured"])
def test_the_ring_is_closed_at_rest(window: Any, show: ShowPan, phase: str) -> None:
    pan = show(phase=phase)
    assert colour_at(window, pan, -RING, 0) == pytest.approx(theme.ink[:3], abs=0.02)
    assert pan.ticking == 1


def test_the_ring_of_a_dirty_pan_follows_too_but_is_never_ticked(
    window: Any, show: ShowPan
) -> None:
    pan = show(phase="not zero", progress=0.3)
    assert colour_at(window, pan, RING, 0) == pytest.approx(theme.ink[:3], abs=0.02)
    assert colour_at(window, pan, -RING, 0) == pytest.approx(theme.hair[:3], abs=0.02)
    assert pan.ticking == 0


FOLLOWING = {"stable", "captured", "settling", "not zero"}


@pytest.mark.parametrize("phase", sorted(set(PHASES) - FOLLOWING))
def test_the_ring_is_open_otherwise(window: Any, show: ShowPan, phase: str) -> None:
    pan = show(phase=phase, progress=1.0)
    assert colour_at(window, pan, -RING, 0) == pytest.approx(theme.hair[:3], abs=0.02)
    assert pan.ticking == 0


def test_the_clasp_is_filled_when_it_closes(window: Any, show: ShowPan) -> None:
    pan = show(phase="empty")
    place = (CLASP * 0.6, -RING + CLASP * 0.5)
    assert colour_at(window, pan, *place) == pytest.approx(theme.steel[:3], abs=0.02)
    pan.phase = "captured"
    frames(3)
    assert colour_at(window, pan, *place) == pytest.approx(theme.ink[:3], abs=0.02)


@pytest.mark.parametrize("phase", PHASES)
def test_a_simulated_scale_is_striped_in_every_phase(
    window: Any, show: ShowPan, phase: str
) -> None:
    pan = show(phase=phase, simulated=True)
    picture, reach = pixels(window), RIM + 4.5
    turns = [radians(360 / PIECES * (piece + 0.5)) for piece in range(10, 14)]
    seen = [
        colour_in(picture, window, pan.x + X + reach * sin(turn), pan.top - Y + reach * cos(turn))
        for turn in turns
    ]
    for place, colour in enumerate(seen):
        expected = theme.ink if place % 2 else theme.hazard
        assert colour == pytest.approx(expected[:3], abs=0.02)


def test_a_wide_number_stays_inside_the_disc(window: Any, show: ShowPan) -> None:
    pan = show(phase="moving", number="\u2212123\u2009456.78", unit="g", label="in the jar")
    picture = pixels(window)
    edges = [
        colour_in(picture, window, pan.x + X + side * (DISC - 8), pan.top - Y - down)
        for side in (-1, 1)
        for down in range(-5, 40, 3)
    ]
    assert edges == [pytest.approx(theme.card[:3], abs=0.01)] * len(edges)
