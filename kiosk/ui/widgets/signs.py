"""The small drawn signs; no font that Kivy ships in Roboto's style has them.

Each sign is a function of the pencil, the middle, the half size in units and the colour.
"""

from __future__ import annotations

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets.geometry import Point, arc
from kiosk.ui.widgets.pencil import Pencil


def _around(x: float, y: float, half: float, *points: Point) -> list[Point]:
    return [(x + px * half, y + py * half) for px, py in points]


def tick(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A tick: fine, kept, still."""
    pencil.stroke(_around(x, y, half, (-0.5, 0.05), (-0.14, 0.4), (0.55, -0.38)), half / 5, colour)


def cross(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """Two strokes crossed: not fine."""
    pencil.stroke(_around(x, y, half, (-0.45, -0.45), (0.45, 0.45)), half / 4.5, colour)
    pencil.stroke(_around(x, y, half, (-0.45, 0.45), (0.45, -0.45)), half / 4.5, colour)


def level(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A level stroke: cannot tell, off."""
    pencil.stroke(_around(x, y, half, (-0.42, 0), (0.42, 0)), half / 5, colour)


def plus(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """More of it."""
    pencil.stroke(_around(x, y, half, (-0.7, 0), (0.7, 0)), half / 4, colour)
    pencil.stroke(_around(x, y, half, (0, -0.7), (0, 0.7)), half / 4, colour)


def minus(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """Less of it."""
    pencil.stroke(_around(x, y, half, (-0.7, 0), (0.7, 0)), half / 4, colour)


def under(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A triangle that points down."""
    pencil.fill(_around(x, y, half, (-0.95, -0.8), (0.95, -0.8), (0, 0.85)), colour)


def over(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A triangle that points up."""
    pencil.fill(_around(x, y, half, (-0.95, 0.8), (0.95, 0.8), (0, -0.85)), colour)


def on_target(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A diamond."""
    pencil.fill(_around(x, y, half, (0, -1), (1, 0), (0, 1), (-1, 0)), colour)


def arrow(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """An arrow to the right: go on."""
    pencil.stroke(_around(x, y, half, (-0.52, 0), (0.5, 0)), half / 5, colour)
    pencil.stroke(_around(x, y, half, (0.06, -0.44), (0.52, 0), (0.06, 0.44)), half / 5, colour)


def back(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """An arrow to the left."""
    pencil.stroke(_around(x, y, half, (-0.9, 0), (0.9, 0)), half / 4, colour)
    pencil.stroke(_around(x, y, half, (-0.15, -0.72), (-0.9, 0), (-0.15, 0.72)), half / 4, colour)


def up(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """An arrow upwards: take it off."""
    line = abs(half) / 4
    pencil.stroke(_around(x, y, half, (0, 0.8), (0, -0.7)), line, colour)
    pencil.stroke(_around(x, y, half, (-0.6, -0.15), (0, -0.75), (0.6, -0.15)), line, colour)


def down(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """An arrow downwards: put it on."""
    up(pencil, x, y, -half, colour)


def chevron(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """Points to the next page."""
    pencil.stroke(_around(x, y, half, (-0.4, -0.9), (0.4, 0), (-0.4, 0.9)), half / 2.4, colour)


def square(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A filled square: stop."""
    pencil.box(x - half / 3, y - half / 3, half / 1.5, half / 1.5, half / 9, colour)


def wait(pencil: Pencil, x: float, y: float, half: float, colour: Colour, turn: float = 0) -> None:
    """An open ring: wait."""
    pencil.ring(x, y, half * 0.44, half / 5.5, colour, turn, turn + 280)


def closing_ring(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """The ring of the pan on its way to closing."""
    pencil.ring(x, y, half * 0.82, half / 3.2, theme.hair)
    pencil.ring(x, y, half * 0.82, half / 3.2, colour, 0, 290)


def power(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """The key that switches a thing on and off."""
    pencil.ring(x, y, half * 0.75, half / 4, colour, 35, 325)
    pencil.stroke(_around(x, y, half, (0, -0.9), (0, -0.1)), half / 4, colour)


def again(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A turning arrow: once more."""
    pencil.ring(x, y, half * 0.5, half / 5.5, colour, 60, 350)
    pencil.fill(_around(x, y, half, (-0.12, -0.85), (0.36, -0.48), (-0.16, -0.14)), colour)


def undo(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """An arrow that runs back."""
    bow = arc(x + half * 0.2, -y - half * 0.15, half * 0.62, -10, 180)
    pencil.stroke([(px, -py) for px, py in bow], half / 4.5, colour)
    pencil.stroke(_around(x, y, half, (0.1, -0.47), (-0.3, -0.47)), half / 4.5, colour)
    pencil.fill(_around(x, y, half, (-1, -0.42), (-0.2, -0.86), (-0.2, 0.02)), colour)


def printer(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A printer with its paper."""
    pencil.frame(x - half * 0.62, y - half, half * 1.24, half * 0.8, 0, half / 7, colour)
    pencil.box(x - half, y - half * 0.42, half * 2, half * 0.95, half / 5, colour)
    pencil.box(x - half * 0.62, y + half * 0.12, half * 1.24, half * 0.85, 0, colour)
    pencil.box(x - half * 0.48, y + half * 0.26, half * 0.96, half * 0.57, 0, theme.sheet)


def table(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """The table top: home."""
    pencil.stroke(_around(x, y, half, (-0.92, -0.55), (0.92, -0.55)), half / 4.5, colour)
    pencil.stroke(_around(x, y, half, (-0.52, -0.5), (-0.72, 0.68)), half / 4.5, colour)
    pencil.stroke(_around(x, y, half, (0.52, -0.5), (0.72, 0.68)), half / 4.5, colour)


def eye(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """The closed eye: covered. Its half width is ``half``."""
    steps = [step / 12 for step in range(13)]
    lid = [(2 * t - 1, -0.26 + 2 * t * (1 - t) * 0.92) for t in steps]
    pencil.stroke(_around(x, y, half, *lid), half / 11, colour)
    lashes = (
        ((-0.81, -0.06), (-1.04, 0.17)), ((-0.41, 0.17), (-0.53, 0.47)), ((0, 0.2), (0, 0.57)),
        ((0.41, 0.17), (0.53, 0.47)), ((0.81, -0.06), (1.04, 0.17)),
    )  # fmt: skip
    for lash in lashes:
        pencil.stroke(_around(x, y, half, *lash), half / 11, colour)


def small_eye(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """The closed eye at the size of a letter: three lashes, a heavier line."""
    steps = [step / 8 for step in range(9)]
    lid = [(2 * t - 1, -0.2 + 2 * t * (1 - t) * 0.8) for t in steps]
    pencil.stroke(_around(x, y, half, *lid), half / 5.5, colour)
    for lash in (((-0.62, 0.08), (-0.9, 0.42)), ((0, 0.22), (0, 0.6)), ((0.62, 0.08), (0.9, 0.42))):
        pencil.stroke(_around(x, y, half, *lash), half / 5.5, colour)


def lock(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A closed lock."""
    _shackle(pencil, x, y, half, colour, 0)
    _lock_body(pencil, x, y, half, colour, theme.sheet)


def open_lock(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """An open lock with a body in the lamp's yellow."""
    _shackle(pencil, x, y, half, colour, 0.3)
    _lock_body(pencil, x, y, half, theme.lamp, theme.lamp)


def _shackle(
    pencil: Pencil, x: float, y: float, half: float, colour: Colour, lifted: float
) -> None:
    top = y - half * (0.36 + lifted)
    bow = [(px, 2 * top - py) for px, py in arc(x, top, half * 0.4, -90, 90)]
    right = [] if lifted else [(x + half * 0.4, y)]
    pencil.stroke([(x - half * 0.4, y), *bow, *right], half / 4.5, colour)


def _lock_body(
    pencil: Pencil, x: float, y: float, half: float, colour: Colour, hole: Colour
) -> None:
    pencil.box(x - half * 0.75, y - half * 0.15, half * 1.5, half * 1.1, half / 6, colour)
    if hole != colour:
        keyhole(pencil, x, y + half * 0.36, half * 0.34, hole)


def keyhole(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A keyhole."""
    pencil.disc(x, y - half * 0.4, half * 0.5, colour)
    pencil.fill(_around(x, y, half, (-0.22, -0.3), (0.22, -0.3), (0.45, 1), (-0.45, 1)), colour)


def clock(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A clock face."""
    pencil.ring(x, y, half * 0.9, half / 4.5, colour)
    hands = _around(x, y, half, (0, -0.5), (0, 0), (0.42, 0.16))
    pencil.stroke(hands, half / 5, colour)


def rub_out(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """A tag that points left, with a cross in it: takes the last digit back."""
    tag = _around(x, y, half, (-1, 0), (-0.45, 0.6), (1, 0.6), (1, -0.6), (-0.45, -0.6))
    pencil.stroke(tag, half / 7, colour, closed=True)
    for way in (-1, 1):
        stroke = _around(x, y, half, (0.05, 0.24 * way), (0.53, -0.24 * way))
        pencil.stroke(stroke, half / 6, colour)


def plug(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """Both halves of a plug together."""
    _plug_halves(pencil, x, y, half, colour, 0.05)


def parted_plug(pencil: Pencil, x: float, y: float, half: float, colour: Colour) -> None:
    """Both halves of a plug apart."""
    _plug_halves(pencil, x, y, half, colour, 0.22)


def _plug_halves(
    pencil: Pencil, x: float, y: float, half: float, colour: Colour, gap: float
) -> None:
    for way in (-1, 1):
        near, far = x + way * gap * half, x + way * (gap + 0.36) * half
        pencil.stroke([(far, y), (x + way * half * 0.96, y)], half * 0.08, colour)
        plug_half(pencil, near, y, half * 0.36, half * 0.28, way, colour)


def plug_half(
    pencil: Pencil, flat: float, y: float, deep: float, half: float, way: int, colour: Colour
) -> None:
    """Half a plug whose flat face stands at ``flat``, round towards ``way`` (-1 left, 1 right)."""
    round_side = arc(0, 0, half, 0, 180)
    outline = [(flat + way * (deep - half + px), y + py) for px, py in round_side]
    pencil.fill([(flat, y + half), *outline, (flat, y - half)], colour)
