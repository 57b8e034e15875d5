"""A container in outline: its faces, and where each of its edges runs; plain arithmetic.

Seen along axes of 30 degrees with the near corner below; x to the right, y downwards, as long as
the sizes that went in.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin, sqrt

from kiosk.ui.widgets.geometry import Point

ACROSS, UP = cos(radians(30)), sin(radians(30))
ROUND = 48  # corners of a drawn circle
FIRST_PLACE, SECOND_PLACE = 0.2, 0.62  # where on a face an edge is measured, as shares of it
# Sizes until they are measured, in proportion to each other; and how flat a drawing may get.
USUAL = {
    "box": (18.0, 13.0, 9.0),
    "cylinder": (11.0, 14.0),
    "tapered": (13.0, 10.0, 14.0),
    "tapered box": (18.0, 13.0, 14.0, 10.0, 10.0),
}
FLATTEST = 0.14
Line = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """``faces`` from back to front with a tone each (top, light, dark); lines for each edge.

    ``edges`` run in the order of measuring; ``places`` are the lines where each is measured.
    ``label`` is a printed strip on the light face, covered.
    """

    faces: tuple[tuple[Line, str], ...]
    edges: tuple[Line, ...]
    places: tuple[tuple[Line, ...], ...]
    label: Line = ()

    @property
    def points(self) -> list[Point]:
        """All points that are drawn."""
        lines = [outline for outline, _ in self.faces] + list(self.edges)
        return [point for line in lines for point in line]


def proportions(shape: str, sizes: Sequence[float]) -> tuple[float, ...]:
    """``sizes`` with usual ones for those that are 0 yet, none of them too small to be seen."""
    usual = USUAL[shape]
    known = [(size, one) for size, one in zip(sizes, usual, strict=True) if size > 0]
    factor = sum(size for size, _ in known) / sum(one for _, one in known) if known else 1.0
    drawn = [size or one * factor for size, one in zip(sizes, usual, strict=True)]
    return tuple(max(size, FLATTEST * max(drawn)) for size in drawn)


def figure(shape: str, sizes: Sequence[float]) -> Figure:
    """The container of that shape; ``sizes`` of its edges, 0 for those that are not measured."""
    drawn = proportions(shape, sizes)
    if shape == "box":
        long, wide, tall = drawn
        return _box((long, wide), (long, wide), tall, ends=1)
    if shape == "tapered box":
        return _box(drawn[2:4], drawn[:2], drawn[4], ends=2)
    if shape == "cylinder":
        return _round(drawn[0], drawn[0], drawn[1], ends=1)
    return _round(drawn[1], drawn[0], drawn[2], ends=2)


def _seen(x: float, y: float, z: float) -> Point:
    return (x - y) * ACROSS, -(x + y) * UP - z


def _between(a: Point, b: Point, share: float) -> Point:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def _box(bottom: Sequence[float], top: Sequence[float], tall: float, ends: int) -> Figure:
    near, right, _, left = _corners(bottom, 0)
    near_up, right_up, far_up, left_up = _corners(top, tall)
    light = (near, right, right_up, near_up)
    dark = (near, left, left_up, near_up)
    upright = (near, near_up) if ends == 1 else (near, (near[0], near[1] - tall))
    below = ((near, right), (near, left))
    above = ((near_up, right_up), (near_up, left_up))
    flat = (_levels(light), _levels(dark))
    return Figure(
        faces=((dark, "dark"), (light, "light"), ((near_up, right_up, far_up, left_up), "top")),
        edges=(*(below if ends == 1 else (*above, *below)), upright),
        places=(*(flat if ends == 1 else (*flat, *flat)), _uprights(light)),
        label=_strip(light),
    )


def _corners(size: Sequence[float], z: float) -> tuple[Point, Point, Point, Point]:
    """Near, right, far and left corner of a level rectangle over the middle."""
    x, y = size[0] / 2, size[1] / 2
    return _seen(-x, -y, z), _seen(x, -y, z), _seen(x, y, z), _seen(-x, y, z)


def _levels(face: Sequence[Point]) -> tuple[Line, ...]:
    """Two lines along a face, from side to side."""
    near, end, end_up, near_up = face
    return tuple(
        (_between(near, near_up, share), _between(end, end_up, share))
        for share in (FIRST_PLACE, SECOND_PLACE)
    )


def _uprights(face: Sequence[Point]) -> tuple[Line, ...]:
    """Two lines up a face."""
    near, end, end_up, near_up = face
    return tuple(
        (_between(near, end, share), _between(near_up, end_up, share))
        for share in (FIRST_PLACE, SECOND_PLACE)
    )


def _strip(face: Sequence[Point]) -> Line:
    near, end, end_up, near_up = face
    corners = ((0.68, 0.3), (0.92, 0.3), (0.92, 0.7), (0.68, 0.7))
    return tuple(
        _between(_between(near, end, along), _between(near_up, end_up, along), up)
        for along, up in corners
    )


def _round(bottom: float, top: float, tall: float, ends: int) -> Figure:
    """Between two diameters."""
    foot, rim = _oval(bottom, 0), _oval(top, tall)
    widest = max(bottom, top) / sqrt(2) * ACROSS
    over = top / sqrt(2) * ACROSS
    under = bottom / sqrt(2) * ACROSS
    low = bottom / sqrt(2) * UP
    across = ((-over, -tall), (over, -tall))
    beneath = ((-under, low), (under, low))
    upright = ((-widest, 0.0), (-widest, -tall))
    turns = (
        (_seen(-top / 2, 0, tall), _seen(top / 2, 0, tall)),
        (_seen(0, -top / 2, tall), _seen(0, top / 2, tall)),
    )
    walls = tuple((_at(bottom, 0, turn), _at(top, tall, turn)) for turn in (-25, 35))
    bands = tuple(
        tuple(_at(_share(bottom, top, up), tall * up, turn) for turn in range(-80, 81, 10))
        for up in (0.06, 0.16)
    )
    body = hull([*foot, *rim])
    return Figure(
        faces=((tuple(body), "light"), (rim, "top")),
        edges=(across, upright) if ends == 1 else (across, beneath, upright),
        places=(turns, walls) if ends == 1 else (turns, bands, walls),
    )


def _share(a: float, b: float, share: float) -> float:
    return a + (b - a) * share


def _at(diameter: float, z: float, turn: float) -> Point:
    """The point of a level circle that is ``turn`` degrees from the nearest to the right."""
    reach = diameter / sqrt(2)
    return reach * ACROSS * sin(radians(turn)), reach * UP * cos(radians(turn)) - z


def _oval(diameter: float, z: float) -> Line:
    return tuple(_at(diameter, z, 360 * step / ROUND) for step in range(ROUND))


def hull(points: Sequence[Point]) -> list[Point]:
    """The convex outline around ``points`` (Andrew's monotone chain)."""
    ordered = sorted(set(points))
    return [*_chain(ordered), *_chain(ordered[::-1])]


def _chain(points: Sequence[Point]) -> list[Point]:
    chain: list[Point] = []
    for point in points:
        while len(chain) > 1 and _turn(chain[-2], chain[-1], point) <= 0:
            chain.pop()
        chain.append(point)
    return chain[:-1]


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def dashes(line: Sequence[Point], dash: float, gap: float) -> list[Line]:
    """``line`` cut into pieces of ``dash`` with ``gap`` between them."""
    pieces: list[Line] = []
    piece, drawing, left = [line[0]], True, dash
    for a, b in pairwise(line):
        length = ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5
        done = 0.0
        while length - done > left:
            done += left
            turn = _between(a, b, done / length)
            if drawing:
                pieces.append((*piece, turn))
            piece, drawing = [turn], not drawing
            left = dash if drawing else gap
        left -= length - done
        piece.append(b)
    if drawing and len(piece) > 1:
        pieces.append(tuple(piece))
    return pieces
