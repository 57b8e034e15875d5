"""The words around the tent: in its two empty corners and along its base."""

from __future__ import annotations

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.pencil import Pencil, text_width
from kiosk.ui.widgets.tent_shape import TentShape

UNIT_SHARE = 0.6  # size of the unit beside a number in a corner
APART = 12  # units between two words on the axis
SIGN_ROOM = 32  # units for the sign before the side
LINE = 1.1  # from one baseline to the next, as share of the size
ONE_LINE_SHARE = 0.75  # words are set smaller by no more than this before they take a second line


def paint_points(pencil: Pencil, tent: TentShape, points: str, of_text: str) -> None:
    """The score and what it is out of, in the left corner."""
    top = tent.base - tent.high
    pencil.text(points, 0, top + 43, theme.score, theme.ink, bold=True,
                room=_room(tent, top + 43))  # fmt: skip
    pencil.text(of_text, 1, top + 72, theme.pan_line, theme.ink, room=_room(tent, top + 72))


def paint_error(
    pencil: Pencil, tent: TentShape, side: str, error_text: str, side_text: str
) -> None:
    """By how much, and on which side, in the right corner."""
    colour = mark.DATA_WORD_COLOURS[side]
    top, right = tent.base - tent.high, 2 * tent.left + tent.wide
    first = top + 40
    amount, _, unit = error_text.rpartition(" ")
    unit_size = theme.volume * UNIT_SHARE
    width = pencil.text(unit, right, first, unit_size, colour, bold=True, anchor="right")
    gap = unit_size * 0.26 / pencil.unit if unit else 0
    pencil.text(amount, right - width - gap, first, theme.volume, colour, bold=True,
                anchor="right", room=_room(tent, first) - width - gap)  # fmt: skip
    second = first + (37 if error_text else 0)
    _paint_side(pencil, tent, side, side_text, second)


def _paint_side(pencil: Pencil, tent: TentShape, side: str, words: str, baseline: float) -> None:
    if not words:
        return
    right, colour = 2 * tent.left + tent.wide, mark.DATA_WORD_COLOURS[side]
    lines, size = _side_lines(pencil, tent, words, baseline)
    step = size * LINE / pencil.unit
    width = 0.0
    for place, line in enumerate(lines):
        wide = pencil.text(line, right, baseline + place * step, size, colour, bold=True,
                           anchor="right")  # fmt: skip
        width = width or wide
    sign = (right - width - SIGN_ROOM * 0.66, baseline - size * 0.36 / pencil.unit, 10)
    mark.SIGNS[side](pencil, *sign, mark.DATA_COLOURS[side])


def _side_lines(
    pencil: Pencil, tent: TentShape, words: str, baseline: float
) -> tuple[list[str], float]:
    """The words in one line, else in two, in the largest size that stays clear of the slope."""
    largest, least = int(theme.card_title), int(theme.text_floor)
    split = words.split(" ", 1)
    for lines, smallest in (([words], round(largest * ONE_LINE_SHARE)), (split, least)):
        for size in range(largest, max(smallest, least) - 1, -1):
            if _clear(pencil, tent, lines, baseline, size):
                return lines, size
    return split, least


def _clear(pencil: Pencil, tent: TentShape, lines: list[str], baseline: float, size: float) -> bool:
    for place, line in enumerate(lines):
        room = _room(tent, baseline + place * size * LINE / pencil.unit)
        sign = 0 if place else SIGN_ROOM
        if text_width(line, size, True) / pencil.unit + sign > room:
            return False
    return True


def paint_cost_words(pencil: Pencil, tent: TentShape, lines: tuple[str, str]) -> None:
    """What an unsure key costs, in the left corner."""
    for line, (words, baseline) in enumerate(_two_lines(tent, lines)):
        pencil.text(words, 0, baseline, theme.body, theme.ink, bold=not line,
                    room=_room(tent, baseline))  # fmt: skip


def paint_band_words(pencil: Pencil, tent: TentShape, band: float, lines: tuple[str, str]) -> None:
    """What the flat top means, in the right corner, with a line that leads to it."""
    right, width, baseline = 2 * tent.left + tent.wide, 0.0, 0.0
    for line, (words, baseline) in enumerate(_two_lines(tent, lines)):
        width = pencil.text(words, right, baseline, theme.body, theme.on_x, bold=not line,
                            anchor="right", room=_room(tent, baseline))  # fmt: skip
    if width:
        side, level = tent.x(1 + band) + 6, baseline - theme.body * 0.36 / pencil.unit
        end = right - width - 22
        if end - side > 60:
            pencil.stroke([(side, level - 12), (side + 52, level), (end, level)], 2.5, theme.on_x)


def paint_axis_words(
    pencil: Pencil, tent: TentShape, marked: float | None, colour: Colour, *,
    left: str, peak: str, right: str, yours: str,
) -> None:  # fmt: skip
    """0, the true value and double under the base, and the estimate between them."""
    baseline, size = tent.base + 31, theme.label
    end = 2 * tent.left + tent.wide
    left_end = pencil.text(left, 0, baseline, size, theme.ink)
    right_start = end - pencil.text(right, end, baseline, size, theme.ink, anchor="right")
    middle, half = tent.x(1), text_width(peak, size, True) / pencil.unit / 2
    peak_start = middle - half
    if marked is not None and yours:
        wide = text_width(yours, size, True) / pencil.unit
        start = min(max(marked - wide / 2, left_end + APART), right_start - APART - wide)
        if start < middle + half + APART and start + wide > middle - half - APART:
            # Too close to stand apart: each on its own side of the ridge pole.
            if marked <= middle:
                start, peak_start = middle - 9 - wide, middle + 6
            else:
                start, peak_start = middle + 9, middle - 6 - 2 * half
        pencil.text(yours, start, baseline, size, colour, bold=True)
    pencil.text(peak, peak_start, baseline, size, theme.ink, bold=True)


def _two_lines(tent: TentShape, lines: tuple[str, str]) -> list[tuple[str, float]]:
    top = tent.base - tent.high
    return [(line, top + 24 + 30 * place) for place, line in enumerate(lines)]


def _room(tent: TentShape, baseline: float) -> float:
    """Units between the edge of the widget and the slope, at the foot of a line of text."""
    share = (tent.base - baseline - 3) / tent.high
    return tent.left + tent.wide / 2 * min(max(share, 0.2), 1) - 6
