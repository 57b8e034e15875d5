"""A container in outline: in its proportions, along axes of 30 degrees, each edge in its place."""

from __future__ import annotations

from itertools import pairwise
from math import atan2, degrees, dist, hypot

import pytest

from kiosk.procedures.volume_draft import EDGES
from kiosk.records.volume_entries import Shape
from kiosk.ui.widgets.container_shape import (
    FLATTEST,
    SECOND_PLACE,
    USUAL,
    Line,
    dashes,
    figure,
    hull,
    proportions,
)


def length(line: Line) -> float:
    return dist(line[0], line[-1])


def slope(line: Line) -> float:
    """Degrees above the horizontal, as seen."""
    (ax, ay), (bx, by) = line[0], line[-1]
    return degrees(atan2(ay - by, abs(bx - ax)))


@pytest.mark.parametrize("shape", EDGES)
def test_every_edge_of_a_shape_has_a_line_and_its_places(shape: Shape) -> None:
    made = figure(shape, USUAL[shape])
    assert len(made.edges) == len(made.places) == len(EDGES[shape]) == len(USUAL[shape])
    assert all(len(places) == 2 for places in made.places)


def test_the_edges_of_a_box_are_as_long_as_they_were_measured() -> None:
    made = figure("box", (18.4, 12.6, 9.2))
    assert [length(edge) for edge in made.edges] == pytest.approx([18.4, 12.6, 9.2])


def test_the_edges_of_a_box_run_at_thirty_degrees_and_straight_up() -> None:
    made = figure("box", (18.4, 12.6, 9.2))
    assert [slope(edge) for edge in made.edges] == pytest.approx([30, 30, 90])


def test_all_edges_of_a_box_meet_at_the_near_corner() -> None:
    made = figure("box", (18.4, 12.6, 9.2))
    assert len({edge[0] for edge in made.edges}) == 1
    assert made.edges[0][0][1] == max(y for _, y in made.points)


def test_a_second_place_lies_on_the_face_along_its_edge() -> None:
    made = figure("box", (18.4, 12.6, 9.2))
    edge, (_, place) = made.edges[0], made.places[0]
    assert length(place) == pytest.approx(length(edge))
    assert edge[0][1] - place[0][1] == pytest.approx(9.2 * SECOND_PLACE)


def test_a_tapered_box_has_its_own_edges_above_and_below() -> None:
    made = figure("tapered box", (24, 18, 20, 14, 30))
    assert [length(edge) for edge in made.edges] == pytest.approx([24, 18, 20, 14, 30])
    assert slope(made.edges[4]) == pytest.approx(90)  # straight up, not along the wall


def test_a_cylinder_is_as_wide_above_as_below() -> None:
    made = figure("cylinder", (10, 24))
    across, upright = made.edges
    left, right = (pick(x for x, _ in made.points) for pick in (min, max))
    assert length(across) == pytest.approx(right - left)
    assert length(upright) == 24


def test_a_bucket_is_drawn_wider_at_its_rim() -> None:
    rim, foot, _ = figure("tapered", (13, 10, 14)).edges
    assert length(rim) / length(foot) == pytest.approx(1.3)
    assert rim[0][1] < foot[0][1]


def test_what_is_not_measured_yet_has_its_usual_proportion() -> None:
    assert proportions("box", (36.0, 0.0, 0.0)) == pytest.approx((36.0, 26.0, 18.0))
    assert proportions("box", (0.0, 0.0, 0.0)) == USUAL["box"]


def test_a_flat_box_stays_to_be_seen() -> None:
    assert proportions("box", (60.0, 40.0, 1.0)) == pytest.approx((60.0, 40.0, 60 * FLATTEST))


def test_the_hull_leaves_out_what_lies_inside() -> None:
    square = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]
    assert set(hull([*square, (2.0, 2.0), (1.0, 3.0)])) == set(square)


@pytest.mark.parametrize(
    "line", [[(0.0, 0.0), (40.0, 0.0)], [(0.0, 0.0), (12.0, 0.0), (12.0, 28.0)]]
)
def test_dashes_follow_the_line_with_even_gaps(line: list[tuple[float, float]]) -> None:
    pieces = dashes(line, 9, 7)
    drawn = [sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(piece))
             for piece in pieces]  # fmt: skip
    assert drawn == pytest.approx([9, 9, 8])
    assert pieces[0][0] == line[0]
    assert pieces[-1][-1] == line[-1]
