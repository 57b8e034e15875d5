"""Outlines and the triangles that fill them."""

from __future__ import annotations

from math import hypot, pi

import pytest

from kiosk.ui.widgets import geometry
from kiosk.ui.widgets.geometry import CLEAR, FULL, Mesh, Point

SQUARE: list[Point] = [(0, 0), (0, 10), (10, 10), (10, 0)]


def area(mesh: Mesh) -> float:
    """Sum of the triangles, whichever way round they run."""
    vertices, indices = mesh
    points = [(vertices[4 * i], vertices[4 * i + 1]) for i in indices]
    total = 0.0
    for (ax, ay), (bx, by), (cx, cy) in zip(*[iter(points)] * 3, strict=True):
        total += abs((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2
    return total


def points_of(mesh: Mesh, fullness: float) -> list[Point]:
    rows = list(zip(*[iter(mesh[0])] * 4, strict=True))
    return [(x, y) for x, y, full, _ in rows if full == fullness]


def test_a_filled_square_is_full_to_half_a_pixel_inside_its_edge() -> None:
    full = points_of(geometry.filled(SQUARE), FULL)
    assert set(full) == {(0.5, 0.5), (0.5, 9.5), (9.5, 0.5), (9.5, 9.5)}


def test_a_filled_square_fades_to_half_a_pixel_outside_its_edge() -> None:
    clear = points_of(geometry.filled(SQUARE), CLEAR)
    assert set(clear) == {(-0.5, -0.5), (-0.5, 10.5), (10.5, -0.5), (10.5, 10.5)}


@pytest.mark.parametrize("outline", [SQUARE, SQUARE[::-1]])
def test_it_does_not_matter_which_way_round_an_outline_runs(outline: list[Point]) -> None:
    assert area(geometry.filled(outline)) == pytest.approx(11 * 11)


def test_a_circle_keeps_its_radius() -> None:
    assert {round(hypot(x - 3, y - 4), 9) for x, y in geometry.circle(3, 4, 50)} == {50}


def test_an_arc_runs_clockwise_from_twelve() -> None:
    arc = geometry.arc(0, 0, 10, 0, 90)
    assert arc[0] == pytest.approx((0, 10))
    assert arc[-1] == pytest.approx((10, 0))


def test_a_ring_covers_its_width() -> None:
    middle = geometry.circle(0, 0, 100)
    soft = 1  # half a pixel at each side
    assert area(geometry.banded(middle, 10, closed=True)) == pytest.approx(
        2 * pi * 100 * (10 + soft), rel=0.01
    )


def test_a_stroke_of_one_point_is_a_dot() -> None:
    full = points_of(geometry.strokes([(5, 5)], 8, closed=False), FULL)
    assert {round(hypot(x - 5, y - 5), 1) for x, y in full} == {3.5}


def test_points_that_fall_together_do_no_harm() -> None:
    assert geometry.filled([(0, 0), (0, 0), (0, 10), (10, 10), (10, 0), (0, 0)]) == geometry.filled(
        SQUARE
    )


def test_a_rounded_box_stays_in_its_box() -> None:
    points = geometry.rounded(10, 20, 30, 40, 12)
    assert min(x for x, _ in points) == pytest.approx(10)
    assert max(x for x, _ in points) == pytest.approx(40)
    assert max(y for _, y in points) == pytest.approx(60)


def test_a_corner_is_never_rounder_than_the_box() -> None:
    points = geometry.rounded(0, 0, 10, 100, 60)
    assert min(x for x, _ in points) == pytest.approx(0)


def test_clipping_cuts_at_the_box() -> None:
    cut = geometry.clipped([(-5, 2), (15, 2), (15, 4), (-5, 4)], 10, 10)
    assert sorted(cut) == [(0, 2), (0, 4), (10, 2), (10, 4)]


def test_what_lies_outside_is_cut_away() -> None:
    assert geometry.clipped([(20, 2), (30, 2), (25, 8)], 10, 10) == []


@pytest.mark.parametrize("share", [1e-5, 1e-6, 1e-7, 1e-9, 1e-12])
def test_a_band_along_an_arc_that_has_hardly_begun_is_drawn_or_nothing(share: float) -> None:
    vertices, indices = geometry.banded(geometry.arc(0, 0, 180, 0, 360 * share), 9, False)
    assert all(index < len(vertices) // 4 for index in indices)
