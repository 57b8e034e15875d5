"""How one sample of a count key is drawn, and the legend of its bricks."""

from __future__ import annotations

from typing import Any

from kiosk.ui.theme import theme
from kiosk.ui.widgets.bricks import draw_bar
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.pencil import Pencil

UNDO_WIDE = 104  # units at the right end of a row
NAME_AT, BAR_AT, MASS_WIDE, NOTE_INSET = 18, 106, 118, 18


def paint_row(
    pencil: Pencil, box: tuple[float, float, float], row: dict[str, Any], bar: tuple[int, int, int]
) -> None:
    """A row in ``box`` (top, width, height); ``bar`` is its bricks, those that differ, the most."""
    (top, wide, high), state = box, row.get("state", "to come")
    ground = {"kept": theme.kraft, "on the pan": theme.card}.get(state, theme.sheet)
    pencil.box(0, top, wide, high, 14, ground)
    now = state == "on the pan"
    pencil.frame(0, top, wide, high, 14, 4 if now else 2, theme.act if now else theme.line)
    middle, bar_end = top + high / 2, wide - UNDO_WIDE - MASS_WIDE
    bar_box = (BAR_AT, middle - high * 0.3, bar_end - BAR_AT, high * 0.6)
    draw_bar(pencil, bar_box, *bar, theme.lamp if state == "kept" else theme.lamp_t)
    _write(pencil, row, state, middle, wide, bar_end)


def _write(
    pencil: Pencil, row: dict[str, Any], state: str, middle: float, wide: float, bar_end: float
) -> None:
    coming, unit = state == "to come", pencil.unit
    colour = theme.soft if coming else theme.ink
    pencil.text(row.get("name", ""), NAME_AT, middle + _drop(theme.body, unit), theme.body,
                colour, bold=not coming, room=BAR_AT - NAME_AT - 8)  # fmt: skip
    written = 0.0
    if not coming:
        baseline = middle + _drop(theme.card_title, unit)
        written = 9 + pencil.text(row.get("mass_text", ""), bar_end + 9, baseline,
                                  theme.card_title, theme.ink, bold=True,
                                  room=MASS_WIDE - 14)  # fmt: skip
    if state != "kept":
        end = wide - NOTE_INSET
        pencil.text(row.get("note", ""), end, middle + _drop(theme.label, unit), theme.label,
                    colour, anchor="right", room=end - bar_end - written - 10)  # fmt: skip


def paint_legend(
    pencil: Pencil, middle: float, wide: float, brick_text: str, differ_text: str, differing: bool
) -> None:
    """What one brick is, and by how many of them the samples differ."""
    baseline, start = middle + _drop(theme.label, pencil.unit), wide / 2 - 10
    _brick(pencil, 8, middle, lit=False)
    pencil.text(brick_text, 32, baseline, theme.label, theme.ink, room=start - 40)
    if differing and differ_text:
        _brick(pencil, start, middle, lit=True)
        start += 24
    pencil.text(differ_text, start, baseline, theme.label, theme.act if differing else theme.ink,
                bold=differing, room=wide - start)  # fmt: skip


def _brick(pencil: Pencil, left: float, middle: float, lit: bool) -> None:
    pencil.box(left, middle - 12, 12, 24, 0, theme.act if lit else theme.lamp)
    pencil.frame(left, middle - 12, 12, 24, 0, 2.5, theme.ink)


def _drop(size: float, unit: float) -> float:
    """From the middle of a line down to its baseline, in units."""
    return CAP / 2 * size / unit
