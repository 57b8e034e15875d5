"""Sizes by role, their floors, and how large a target must be."""

from __future__ import annotations

import pytest

from kiosk.ui.theme import TYPE_SIZES, Theme


def fitted(width: float, height: float, pixels_per_mm: float | None = None) -> Theme:
    theme = Theme()
    theme.fit(width, height, pixels_per_mm)
    return theme


@pytest.mark.parametrize(
    ("size", "unit"),
    [((1024, 600), 1), ((800, 480), 0.78125), ((1280, 800), 1.25), ((1920, 1080), 1.8)],
)
def test_a_unit_follows_the_tighter_side(size: tuple[int, int], unit: float) -> None:
    assert fitted(*size).u == unit


@pytest.mark.parametrize("role", TYPE_SIZES)
def test_the_look_at_its_own_size(role: str) -> None:
    assert getattr(fitted(1024, 600), role) == TYPE_SIZES[role][0]


@pytest.mark.parametrize("role", TYPE_SIZES)
def test_no_text_falls_under_its_floor(role: str) -> None:
    assert getattr(fitted(800, 480), role) >= TYPE_SIZES[role][1] >= 18


def test_above_the_look_sizes_grow_with_the_window() -> None:
    assert fitted(1280, 800).instruction == 45


def test_a_target_at_each_size() -> None:
    assert [fitted(*size).tap for size in ((800, 480), (1024, 600), (1280, 800))] == [56, 64, 80]


def test_main_actions_are_larger() -> None:
    assert [fitted(*size).action for size in ((800, 480), (1024, 600))] == [72, 88]


def test_a_dense_small_panel_asks_for_nine_millimetres() -> None:
    assert fitted(1024, 600, pixels_per_mm=8).tap == 72


def test_a_ten_inch_panel_asks_for_twelve_millimetres() -> None:
    # 1280 x 800 on 10.1 inch: 5.9 px per mm
    assert fitted(1280, 800, pixels_per_mm=5.88).tap == 80
    assert fitted(1920, 1200, pixels_per_mm=8.8).tap == 120
    assert fitted(1024, 600, pixels_per_mm=4.6).tap == 64


def test_less_motion_takes_no_time() -> None:
    theme = fitted(1024, 600)
    assert theme.time(0.9) == 0.9
    theme.less_motion = True
    assert theme.time(0.9) == 0


def test_a_change_of_size_is_heard() -> None:
    theme = fitted(1024, 600)
    heard: list[tuple[float, float]] = []
    theme.bind(u=lambda _theme, unit: heard.append((unit, theme.instruction)))
    theme.fit(1280, 800)
    assert heard == [(1.25, 45)]
