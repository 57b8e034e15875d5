"""Draws a widget in look units, as often as it likes, and keeps the instructions.

``begin`` .. ``end`` describe the whole picture; the n-th shape of a picture re-uses the n-th
instruction of the picture before, and a shape that did not change is not touched at all.
Coordinates run from the top left of the drawing, downwards, as in the look.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import ceil
from typing import Any

from kivy.core.text import Label as CoreLabel
from kivy.graphics import Canvas, Color
from kivy.graphics import Mesh as MeshInstruction
from kivy.graphics.texture import Texture

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import geometry
from kiosk.ui.widgets.geometry import Mesh, Point

ASCENT = 1900 / 2048  # of Roboto, as share of the size (its hhea table)
MONO_ASCENT = 2146 / 2048  # of Roboto Mono, likewise
NOTHING: Mesh = ([], [])


class _Shape:
    """One colour and one mesh on the canvas, with what was asked of them last."""

    def __init__(self, canvas: Canvas) -> None:
        with canvas:
            self._colour = Color(1, 1, 1, 1)
            self._mesh = MeshInstruction(mode="triangles")
        self.asked: Any = None

    def show(self, colour: Colour, texture: Texture, mesh: Mesh) -> None:
        self._colour.rgba = colour
        self._mesh.texture = texture
        self._mesh.vertices, self._mesh.indices = mesh

    def hide(self) -> None:
        if self.asked is not None:
            self.asked = None
            self._mesh.vertices, self._mesh.indices = NOTHING


class Pencil:
    """A retained drawing on one canvas."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._shapes: list[_Shape] = []
        self._used = 0
        self._place = (0.0, 0.0, 1.0)

    def begin(self, left: float, top: float, scale: float) -> None:
        """Start a picture whose origin lies at ``left``, ``top`` px, one unit being ``scale``."""
        self._used = 0
        self._place = (left, top, scale)

    @property
    def unit(self) -> float:
        """Pixels of one unit of the present picture."""
        return self._place[2]

    def end(self) -> None:
        """Hide what the picture before had more."""
        for shape in self._shapes[self._used :]:
            shape.hide()

    def fill(self, points: Sequence[Point], colour: Colour) -> None:
        """A filled convex outline."""
        self._draw(colour, _filled, tuple(points))

    def fills(self, outlines: Sequence[Sequence[Point]], colour: Colour) -> None:
        """Several filled convex outlines of one colour."""
        self._draw(colour, _filled_all, tuple(tuple(outline) for outline in outlines))

    def disc(self, x: float, y: float, radius: float, colour: Colour) -> None:
        """A filled circle."""
        self._draw(colour, _disc, (x, y), radius)

    def oval(self, x: float, y: float, across: float, up: float, colour: Colour) -> None:
        """A filled ellipse with the half axes ``across`` and ``up``."""
        self._draw(colour, _oval, (x, y), across, up)

    def box(
        self, x: float, y: float, width: float, height: float, radius: float, colour: Colour
    ) -> None:
        """A filled box with round corners; ``x``, ``y`` is its upper left corner."""
        self._draw(colour, _box, (x, y), width, height, radius)

    def frame(
        self, x: float, y: float, width: float, height: float, radius: float,
        line: float, colour: Colour,
    ) -> None:  # fmt: skip
        """The outline of such a box; the ``line`` runs inside its edge."""
        self._draw(colour, _frame, (x, y), width, height, radius, line)

    def ring(
        self, x: float, y: float, radius: float, line: float, colour: Colour,
        start: float = 0.0, end: float = 360.0,
    ) -> None:  # fmt: skip
        """A circle line, or its arc from ``start`` to ``end`` degrees clockwise from the top."""
        self._draw(colour, _ring, (x, y), radius, line, start, end)

    def stroke(
        self, points: Sequence[Point], line: float, colour: Colour, closed: bool = False
    ) -> None:
        """A polyline with round ends and corners."""
        self._draw(colour, _stroke, tuple(points), line, closed)

    def text(
        self, words: str, x: float, baseline: float, size: float, colour: Colour, *,
        bold: bool = False, anchor: str = "left", room: float | None = None,
    ) -> float:  # fmt: skip
        """One line of text; ``size`` in pixels, the rest in units. Returns its width in units.

        ``anchor`` says which end of the text lies at ``x``: left, middle or right. Text wider
        than ``room`` units is set smaller until it fits.
        """
        left, top, scale = self._place
        size = round(size)
        size, width = fitted(words, size, bold, None if room is None else room * scale)
        shift = {"left": 0.0, "middle": width / 2, "right": width}[anchor]
        pixel_x = round(left + x * scale - shift)
        pixel_top = round(top - baseline * scale) + ceil(ASCENT * size)
        shape, asked = self._next(), (words, pixel_x, pixel_top, size, bold, colour)
        if shape.asked != asked:
            shape.asked = asked
            shape.show(colour, *_typeset(words, pixel_x, pixel_top, size, _font(bold)))
        return width / scale

    def mono(self, words: str, x: float, baseline: float, size: int, colour: Colour) -> None:
        """Characters as wide as each other: ``mono_width`` of ``size`` pixels."""
        left, top, scale = self._place
        pixel_x = round(left + x * scale)
        pixel_top = round(top - baseline * scale) + ceil(MONO_ASCENT * size)
        shape, asked = self._next(), (words, pixel_x, pixel_top, size, theme.mono, colour)
        if shape.asked != asked:
            shape.asked = asked
            shape.show(colour, *_typeset(words, pixel_x, pixel_top, size, theme.mono))

    def _draw(self, colour: Colour, outline: Any, *measures: Any) -> None:
        shape, asked = self._next(), (outline, self._place, colour, measures)
        if shape.asked == asked:
            return
        shape.asked = asked
        shape.show(colour, _soft_edge(), outline(_Ground(self._place), *measures))

    def _next(self) -> _Shape:
        if self._used == len(self._shapes):
            self._shapes.append(_Shape(self._canvas))
        self._used += 1
        return self._shapes[self._used - 1]


class _Ground:
    """Turns look units into pixels."""

    def __init__(self, place: tuple[float, float, float]) -> None:
        self.left, self.top, self.scale = place

    def at(self, point: Point) -> Point:
        return self.left + point[0] * self.scale, self.top - point[1] * self.scale

    def all(self, points: Sequence[Point]) -> list[Point]:
        return [self.at(point) for point in points]


def _filled(ground: _Ground, points: Sequence[Point]) -> Mesh:
    return geometry.filled(ground.all(points))


def _filled_all(ground: _Ground, outlines: Sequence[Sequence[Point]]) -> Mesh:
    return geometry.joined([geometry.filled(ground.all(points)) for points in outlines])


def _disc(ground: _Ground, centre: Point, radius: float) -> Mesh:
    return geometry.filled(geometry.circle(*ground.at(centre), radius * ground.scale))


def _oval(ground: _Ground, centre: Point, across: float, up: float) -> Mesh:
    scale = ground.scale
    return geometry.filled(geometry.ellipse(*ground.at(centre), across * scale, up * scale))


def _box(ground: _Ground, corner: Point, width: float, height: float, radius: float) -> Mesh:
    x, y = ground.at((corner[0], corner[1] + height))
    scale = ground.scale
    return geometry.filled(geometry.rounded(x, y, width * scale, height * scale, radius * scale))


def _frame(
    ground: _Ground, corner: Point, width: float, height: float, radius: float, line: float
) -> Mesh:
    x, y = ground.at((corner[0], corner[1] + height))
    scale, half = ground.scale, line * ground.scale / 2
    middle = geometry.rounded(
        x + half, y + half, width * scale - 2 * half, height * scale - 2 * half,
        radius * scale - half,
    )  # fmt: skip
    return geometry.banded(middle, line * scale, closed=True)


def _ring(
    ground: _Ground, centre: Point, radius: float, line: float, start: float, end: float
) -> Mesh:
    if end - start <= 0:
        return NOTHING
    closed = end - start >= 360
    x, y = ground.at(centre)
    middle = (
        geometry.circle(x, y, radius * ground.scale)
        if closed
        else geometry.arc(x, y, radius * ground.scale, start, end)
    )
    return geometry.banded(middle, line * ground.scale, closed)


def _stroke(ground: _Ground, points: Sequence[Point], line: float, closed: bool) -> Mesh:
    return geometry.strokes(ground.all(points), line * ground.scale, closed)


@lru_cache(maxsize=1)
def _soft_edge() -> Texture:
    texture = Texture.create(size=(2, 1), colorfmt="rgba")
    texture.blit_buffer(b"\xff\xff\xff\x00\xff\xff\xff\xff", colorfmt="rgba", bufferfmt="ubyte")
    texture.wrap = "clamp_to_edge"
    return texture


def _font(bold: bool) -> str:
    return theme.bold if bold else theme.regular


def _line(words: str, size: float, font: str) -> CoreLabel:
    return CoreLabel(text=words, font_size=size, font_name=font)


@lru_cache(maxsize=2048)
def text_width(words: str, size: float, bold: bool = False) -> float:
    """Width in pixels of one line of text of ``size`` pixels."""
    return float(_line(words, size, _font(bold)).get_extents(words)[0])


@lru_cache(maxsize=64)
def mono_width(size: int) -> float:
    """Width in pixels of each character of ``Pencil.mono``, as it is rendered."""
    return float(_line("0" * 40, size, theme.mono).get_extents("0" * 40)[0]) / 40


def fitted(words: str, size: float, bold: bool, room: float | None) -> tuple[float, float]:
    """The size, not above ``size``, in which ``words`` fit ``room`` pixels, and their width."""
    width = text_width(words, size, bold)
    if room is None or width <= max(0.0, room):
        return size, width
    size = max(1.0, float(int(size * room / width)))
    return size, text_width(words, size, bold)


def _typeset(words: str, x: float, top: float, size: float, font: str) -> tuple[Texture, Mesh]:
    label = _line(words, size, font)
    label.refresh()
    texture = label.texture
    width, height = texture.size
    corners = ((x, top - height), (x + width, top - height), (x + width, top), (x, top))
    places = texture.tex_coords
    vertices: list[float] = []
    for index, corner in enumerate(corners):
        vertices += [*corner, places[2 * index], places[2 * index + 1]]
    return texture, (vertices, [0, 1, 2, 2, 3, 0])
