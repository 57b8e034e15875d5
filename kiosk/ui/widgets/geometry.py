"""Outlines as lists of points, and outlines as triangles with a soft edge; plain arithmetic.

The edge of a shape fades over one pixel through a texture that is clear at its left and full at
its right: the second pair of numbers of each vertex says how full the shape is there.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, ceil, cos, hypot, pi, radians, sin

Point = tuple[float, float]
Mesh = tuple[list[float], list[int]]

FULL, CLEAR = 0.75, 0.25  # texture places of a full and of a clear edge
SOFT = 0.5  # how far the fading reaches to each side of the outline, in pixels
SHARPEST = 0.25  # a corner more pointed than this is not drawn out further


def arc(x: float, y: float, radius: float, start: float, end: float) -> list[Point]:
    """Points of an arc from ``start`` to ``end`` degrees, clockwise from 12 o'clock, y upwards."""
    steps = max(3, ceil(abs(end - start) / 360 * _corners(radius)))
    turns = (radians(start + (end - start) * step / steps) for step in range(steps + 1))
    return [(x + radius * sin(turn), y + radius * cos(turn)) for turn in turns]


def circle(x: float, y: float, radius: float) -> list[Point]:
    """Points of a whole circle, the first not repeated."""
    return arc(x, y, radius, 0, 360)[:-1]


def ellipse(x: float, y: float, across: float, up: float) -> list[Point]:
    """Points of an ellipse with half axes ``across`` and ``up``."""
    return [(x + px * across, y + py * up) for px, py in _unit_circle(max(across, up))]


def rounded(x: float, y: float, width: float, height: float, radius: float) -> list[Point]:
    """Points of a box with its lower left corner at ``x``, ``y`` and round corners."""
    radius = min(radius, width / 2, height / 2)
    if radius <= 0:
        return [(x, y), (x, y + height), (x + width, y + height), (x + width, y)]
    left, right, low, high = x + radius, x + width - radius, y + radius, y + height - radius
    return [
        *arc(right, high, radius, 0, 90),
        *arc(right, low, radius, 90, 180),
        *arc(left, low, radius, 180, 270),
        *arc(left, high, radius, 270, 360),
    ]


def capsule(a: Point, b: Point, radius: float) -> list[Point]:
    """Points around a thick stroke with round ends."""
    along = atan2(b[0] - a[0], b[1] - a[1]) * 180 / pi
    return [*arc(*b, radius, along - 90, along + 90), *arc(*a, radius, along + 90, along + 270)]


def filled(outline: list[Point]) -> Mesh:
    """A convex ``outline`` as triangles with a soft edge."""
    outline = _apart(outline)
    inner, outer = _beside(outline, SOFT, closed=True)
    count = len(outline)
    indices = [0] * (3 * (count - 2))
    indices[1::3] = range(1, count - 1)
    indices[2::3] = range(2, count)
    return _vertices(inner, FULL) + _vertices(outer, CLEAR), indices + _strip(0, count, count, True)


def banded(middle: list[Point], width: float, closed: bool) -> Mesh:
    """A line of ``width`` along ``middle``, for curves without sharp corners, ends cut straight."""
    middle = _apart(middle)
    count = len(middle)
    if count < 2:
        return [], []  # an arc that has hardly begun to open has no direction yet
    half = max(width / 2 - SOFT, 0.01)
    low, high = _beside(middle, half, closed)
    low_edge, high_edge = _beside(middle, width / 2 + SOFT, closed)
    vertices = [
        *_vertices(low, FULL), *_vertices(high, FULL),
        *_vertices(low_edge, CLEAR), *_vertices(high_edge, CLEAR),
    ]  # fmt: skip
    strips = ((0, count), (0, 2 * count), (count, 3 * count))
    return vertices, [i for a, b in strips for i in _strip(a, b, count, closed)]


def joined(meshes: list[Mesh]) -> Mesh:
    """Several meshes as one."""
    vertices: list[float] = []
    indices: list[int] = []
    for more_vertices, more_indices in meshes:
        first = len(vertices) // 4
        vertices += more_vertices
        indices += [first + index for index in more_indices]
    return vertices, indices


def strokes(points: list[Point], width: float, closed: bool) -> Mesh:
    """A polyline of ``width`` with round ends and corners."""
    ends = points[1:] + points[:1] if closed else points[1:]
    pairs = list(zip(points, ends, strict=False))
    if not pairs:
        pairs = [(points[0], points[0])]
    return joined([filled(capsule(a, b, width / 2)) for a, b in pairs])


def _corners(radius: float) -> int:
    """Corners of a circle so that no chord strays more than a tenth of a pixel from it."""
    return max(12, ceil(7 * max(radius, 1) ** 0.5))


def _unit_circle(size: float) -> list[Point]:
    count = _corners(size)
    return [(sin(2 * pi * i / count), cos(2 * pi * i / count)) for i in range(count)]


def _apart(points: list[Point]) -> list[Point]:
    """The points without those that fall on their forerunner, which have no direction."""
    kept = [points[0]]
    for point in points[1:]:
        if hypot(point[0] - kept[-1][0], point[1] - kept[-1][1]) > 1e-3:
            kept.append(point)
    if len(kept) > 2 and hypot(kept[0][0] - kept[-1][0], kept[0][1] - kept[-1][1]) <= 1e-3:
        kept.pop()
    return kept


def _beside(points: list[Point], distance: float, closed: bool) -> tuple[list[Point], list[Point]]:
    """The same line moved inwards and outwards (to its right and left) by ``distance``."""
    side = distance if not closed or _clockwise(points) else -distance
    inner, outer = [], []
    for point, (nx, ny) in zip(points, _normals(points, closed), strict=True):
        inner.append((point[0] - nx * side, point[1] - ny * side))
        outer.append((point[0] + nx * side, point[1] + ny * side))
    return inner, outer


def _clockwise(points: list[Point]) -> bool:
    following = points[1:] + points[:1]
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, following, strict=True)) < 0


def _normals(points: list[Point], closed: bool) -> list[Point]:
    """For each corner the direction to its left, drawn out so that both edges move evenly."""
    following = points[1:] + points[:1]
    edges = [_left(a, b) for a, b in zip(points, following, strict=True)]
    if not closed:
        edges[-1] = edges[-2]
    before = [edges[-1], *edges[:-1]] if closed else [edges[0], *edges[:-1]]
    normals = []
    for (ax, ay), (bx, by) in zip(before, edges, strict=True):
        stretch = max(1 + ax * bx + ay * by, SHARPEST)
        normals.append(((ax + bx) / stretch, (ay + by) / stretch))
    return normals


def _left(a: Point, b: Point) -> Point:
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = hypot(dx, dy) or 1.0
    return -dy / length, dx / length


def _vertices(points: list[Point], fullness: float) -> list[float]:
    return [number for x, y in points for number in (x, y, fullness, 0.5)]


def _strip(first: int, second: int, count: int, closed: bool) -> list[int]:
    """Triangles between two rows of ``count`` vertices that start at ``first`` and ``second``."""
    indices: list[int] = []
    for i in range(count if closed else count - 1):
        j = (i + 1) % count
        indices += [first + i, second + i, first + j, second + i, second + j, first + j]
    return indices


def clipped(outline: Sequence[Point], wide: float, high: float) -> list[Point]:
    """The part of a convex ``outline`` inside the box from (0, 0) to (``wide``, ``high``)."""
    points = list(outline)
    for axis, bound, sign in ((0, 0, 1), (0, wide, -1), (1, 0, 1), (1, high, -1)):
        points = _cut(points, axis, bound, sign)
    return points


def _cut(points: list[Point], axis: int, bound: float, sign: int) -> list[Point]:
    kept: list[Point] = []
    for a, b in zip(points, points[1:] + points[:1], strict=True):
        inside_a, inside_b = ((p[axis] - bound) * sign >= 0 for p in (a, b))
        if inside_a:
            kept.append(a)
        if inside_a != inside_b:
            share = (bound - a[axis]) / (b[axis] - a[axis])
            kept.append((a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share))
    return kept
