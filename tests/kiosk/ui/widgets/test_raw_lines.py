"""Raw lines: which part of a long one shows, and what is drawn of it."""

from __future__ import annotations

from typing import Any

import pytest

from kiosk.ui.presenters.teach_views import LineSpan, LineView
from kiosk.ui.theme import theme
from kiosk.ui.widgets.pencil import mono_width
from kiosk.ui.widgets.raw_lines import CUT, FindingChip, RawLines, _cut, mono_size, shown_part
from tests.helpers.contrast import contrast
from tests.helpers.offscreen import colour_in, frames, pixels

TEXT = "Larch Hill 09:01:50 ST      +12.30 g practice pan"
NUMBER = LineSpan(kind="number", start=28, end=34)


def line(text: str = TEXT, *spans: LineSpan) -> LineView:
    return LineView(text=text, spans=spans, ago="now", newest=True)


def test_what_fits_shows_whole() -> None:
    assert shown_part([line("12.3 g")], 40) == (0, 6)


@pytest.mark.parametrize("room", [12, 20, 30])
def test_the_number_always_shows(room: int) -> None:
    start, end = shown_part([line(TEXT, NUMBER)], room)
    assert end - start == room
    assert start <= NUMBER.start
    assert NUMBER.end <= end


def test_where_a_line_goes_on_is_marked() -> None:
    part = (10, 20)
    assert _cut(TEXT, 10, 20, part) == CUT + TEXT[11:19] + CUT
    assert _cut(TEXT, 12, 15, part) == TEXT[12:15]


def test_a_found_number_stands_on_its_tint(window: Any) -> None:
    widget = RawLines(
        rows=[line("  1 g", LineSpan(kind="number", start=0, end=3))],
        size_hint=(None, None), size=(542, 165), pos=(10, 10),
    )  # fmt: skip
    window.add_widget(widget)
    frames(3)
    picture, middle = pixels(window), 10 + 165 / 2
    assert colour_in(picture, window, 34, middle) == pytest.approx(theme.lamp[:3], abs=0.02)
    assert colour_in(picture, window, 300, middle) == pytest.approx(theme.lid[:3], abs=0.02)


@pytest.mark.parametrize(("room", "smaller"), [(400, False), (90, True)])
def test_characters_are_set_smaller_only_where_they_must(room: float, smaller: bool) -> None:
    size = mono_size("1234567.89", 22, room)
    assert (size < 22) == smaller
    assert 10 * mono_width(size) <= room


@pytest.mark.parametrize("found", [True, False])
def test_only_what_is_found_has_its_tick(window: Any, found: bool) -> None:
    chip = FindingChip(
        kind="unit", name="unit", found=found, size_hint=(None, None), size=(204, 40), pos=(10, 10)
    )
    window.add_widget(chip)
    frames(3)
    beside = colour_in(pixels(window), window, 10 + 204 - 26 - 9, 30)
    assert beside == pytest.approx((theme.ink if found else theme.kraft)[:3], abs=0.02)


@pytest.mark.parametrize("tint", ["lamp", "on_t", "act_t", "over_t"])
def test_characters_are_legible_on_each_tint(tint: str) -> None:
    assert contrast(theme.ink, getattr(theme, tint)) >= 7
