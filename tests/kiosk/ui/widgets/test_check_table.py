"""Rows with verdicts that differ in shape, not in colour."""

from __future__ import annotations

from typing import Any

import pytest

from kiosk.ui.presenters.views import CheckRowView
from kiosk.ui.theme import theme
from kiosk.ui.widgets.check_table import BADGE, INSET, CheckTable
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.verdict_mark import draw_verdict
from tests.helpers.offscreen import frames, pixel

HEAD = ("known mass", "shown g", "off by g", "limit g")


def row(verdict: str = "fine", **more: Any) -> CheckRowView:
    known = {"name": "50 g weight", "shown": "50.0", "off": "0.0", "limit": "0.1",
             "verdict_text": verdict}  # fmt: skip
    return CheckRowView(verdict=verdict, **(known | more))


def shown(window: Any, rows: list[CheckRowView], high: float = 200) -> CheckTable:
    table = CheckTable(
        rows=rows, head=list(HEAD), size_hint=(None, None), size=(542, high), pos=(400, 200)
    )
    window.add_widget(table)
    frames(2)
    return table


class Badge(Drawing):
    """One verdict, drawn large."""

    sheet_size = (100, 100)
    verdict = "fine"

    def paint(self, pencil: Pencil) -> None:
        draw_verdict(pencil, self.verdict, 50, 50, 40)


def badge(window: Any, verdict: str) -> Badge:
    made = type("Made", (Badge,), {"verdict": verdict})
    drawn = made(size_hint=(None, None), size=(100, 100), pos=(100, 100))
    window.add_widget(drawn)
    frames(2)
    return drawn


# (dx, dy) from the middle in hundredths: the corner of a square, the inside of a ring.
@pytest.mark.parametrize(
    ("verdict", "corner", "inside"),
    [("fine", False, True), ("not fine", True, True), ("cannot tell", False, False)],
)
def test_each_verdict_has_its_own_shape(
    window: Any, verdict: str, corner: bool, inside: bool
) -> None:
    drawn = badge(window, verdict)
    ink = pytest.approx(theme.ink[:3], abs=0.05)
    x, y = drawn.center
    assert (pixel(window, x + 36, y + 36) == ink) is corner
    assert (pixel(window, x, y + 28) == ink) is inside


def test_rows_share_the_height_but_never_grow_beyond_a_line(window: Any) -> None:
    few, many = shown(window, [row()]), shown(window, [row()] * 6)
    assert few.row_high() == pytest.approx(60)
    assert 6 * many.row_high() < 200
    assert many.row_high() > 20


def test_the_row_on_the_pan_is_framed(window: Any) -> None:
    table = shown(window, [row(now=True)])
    middle = table.top - 27 - 30
    frame = [pixel(window, table.x + dx, middle) for dx in (0.5, 1.5)]
    assert any(each == pytest.approx(theme.ink[:3], abs=0.2) for each in frame)


def test_a_row_without_a_verdict_has_no_badge(window: Any) -> None:
    table = shown(window, [row("")])
    middle = table.top - 27 - 30
    ground = pixel(window, table.right - INSET - BADGE, middle)
    assert ground == pytest.approx(theme.kraft[:3], abs=0.02)


def test_no_rows_draw_no_head(window: Any) -> None:
    table = shown(window, [])
    assert pixel(window, table.x + 30, table.top - 15) == pytest.approx(
        pixel(window, table.x + 30, table.top - 60), abs=0.01
    )
