"""How a cup is drawn, wherever one stands: a dark rim, a body that narrows, a number on it."""

from __future__ import annotations

from math import cos, sin

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets.geometry import Point
from kiosk.ui.widgets.pencil import Pencil, fitted

LEAN = 0.17  # how far a wall comes in on its way down, as share of the height
CAP = 0.711  # height of Roboto's capitals and digits, as share of the size (1456/2048)

GRAIN_PLACES = [(row, column) for row in range(4) for column in range(6)]
GRAIN_TURNS = (0.5, -0.7, 0.3, 0.9, -0.5, 0.6, -0.9, 0.4, 0.8, -0.6, 0.2)  # radians, no pattern

Box = tuple[float, float, float, float]


def draw_cup(
    pencil: Pencil, box: Box, ground: Colour, *, rim: float, edge: Colour = theme.ink,
    number: str = "", size: float = 0.0, words: Colour = theme.ink, filled: bool = False,
    lean: float = LEAN,
) -> None:  # fmt: skip
    """A cup in ``box`` (left, top, width, height in units) with a rim ``rim`` units thick.

    ``size`` is that of the number in pixels; ``filled`` heaps grains in it.
    """
    left, top, wide, high = box
    line, mouth, inset = max(rim * 0.5, wide * 0.02), top + rim / 2, rim * 0.9
    right, narrow = left + wide, inset + lean * high
    body = _body(left + inset, right - inset, mouth, top + high - line / 2, lean * high)
    pencil.fill(body, ground)
    if filled:
        _heap(pencil, body)
    pencil.stroke(body, line, edge, closed=True)
    pencil.stroke([(left + rim / 2, mouth), (right - rim / 2, mouth)], rim, edge)
    if number:
        room = wide - inset - narrow - line
        # Room for two digits, so that all cups of a row have numbers of one size.
        size, _ = fitted(number.rjust(2, "0"), round(size), True, room * pencil.unit)
        baseline = top + (high + rim - line) / 2 + CAP / 2 * size / pencil.unit
        pencil.text(number, left + wide / 2, baseline, size, words, bold=True, anchor="middle")


def _body(left: float, right: float, mouth: float, foot: float, lean: float) -> list[Point]:
    return [(left, mouth), (right, mouth), (right - lean, foot), (left + lean, foot)]


def _heap(pencil: Pencil, body: list[Point]) -> None:
    (left, top), (right, _), (foot_right, foot), (foot_left, _) = body
    deep, wide = foot - top, right - left
    brim = 0.34  # where the heap touches the wall, as share of the depth
    lean = (foot_left - left) * brim
    steps = [step / 12 for step in range(13)]
    bow = [
        (left + lean + (wide - 2 * lean) * t, top + deep * (brim - 0.62 * t * (1 - t)))
        for t in steps
    ]
    pencil.fill([*bow, (foot_right, foot), (foot_left, foot)], theme.lamp)
    pencil.stroke(bow, wide * 0.026, theme.ink)
    for index, (row, column) in enumerate(GRAIN_PLACES):
        height = brim + 0.07 + row * (0.93 - brim) / 4
        share = (column - 2.5 + (row % 2) * 0.5) / 5.6
        reach = wide - 2 * (foot_left - left) * height
        if abs(share) < 0.44:
            place = (left + right) / 2 + share * reach, top + deep * height
            draw_grain(pencil, *place, wide * 0.042, GRAIN_TURNS[index * 7 % len(GRAIN_TURNS)])


def draw_grain(pencil: Pencil, x: float, y: float, half: float, turn: float) -> None:
    """One grain, ``turn`` radians from level."""
    dx, dy = half * cos(turn), half * sin(turn)
    pencil.stroke([(x - dx, y - dy), (x + dx, y + dy)], half * 0.6, theme.grain)
