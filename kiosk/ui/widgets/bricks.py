"""A mass as bricks: one brick is one step of the balance, or ten of them, or a hundred."""

from __future__ import annotations

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets.pencil import Pencil

MOST = 60  # bricks in a bar that can still be told apart
BRICK_WIDE = 5.9  # units of one brick while there is room


def grouping(most_steps: int) -> int:
    """How many steps one brick stands for, so that no bar has more than sixty."""
    group = 1
    while most_steps > MOST * group:
        group *= 10
    return group


def grouped(steps: int, differing: int, group: int) -> tuple[int, int]:
    """Bricks of a bar and how many of them differ; a difference never disappears."""
    bricks = max(1, round(steps / group)) if steps else 0
    differ = min(bricks, max(1, round(differing / group))) if differing else 0
    return bricks, differ


def draw_bar(
    pencil: Pencil, box: tuple[float, float, float, float], bricks: int, differing: int,
    widest: int, ground: Colour,
) -> None:  # fmt: skip
    """A bar in ``box``, whose width is that of ``widest`` bricks; the last ones differ."""
    left, top, room, high = box
    if not bricks:
        return
    brick = min(BRICK_WIDE, (room - 4) / max(widest, 1))
    wide = brick * bricks + 4
    pencil.box(left, top, wide, high, 0, ground)
    start = left + 2 + brick * (bricks - differing)
    pencil.box(start, top, brick * differing, high, 0, theme.act)
    joints = [left + 2 + brick * place for place in range(1, bricks)]
    joint = min(1.5, brick / 3)
    pencil.fills(
        [
            [(x - joint / 2, top), (x + joint / 2, top), (x + joint / 2, top + high),
             (x - joint / 2, top + high)]
            for x in joints
        ],
        theme.ink,
    )  # fmt: skip
    pencil.frame(left, top, wide, high, 0, 3, theme.ink)
