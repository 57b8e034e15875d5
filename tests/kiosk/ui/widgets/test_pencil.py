"""A drawing is described again and again, but its instructions stay."""

from __future__ import annotations

from typing import Any

import pytest
from kivy.graphics import Canvas, Mesh

from kiosk.ui.theme import theme
from kiosk.ui.widgets.pencil import Pencil, fitted, text_width

RED = (1.0, 0.0, 0.0, 1.0)


@pytest.fixture
def canvas(window: Any) -> Canvas:
    return Canvas()


def meshes(canvas: Canvas) -> list[Mesh]:
    return [each for each in canvas.children if isinstance(each, Mesh)]


def drawn(pencil: Pencil, *radii: float) -> None:
    pencil.begin(0, 100, 1)
    for radius in radii:
        pencil.disc(50, 50, radius, RED)
    pencil.end()


def test_drawing_again_adds_no_instruction(canvas: Canvas) -> None:
    pencil = Pencil(canvas)
    drawn(pencil, 10, 20)
    before = list(canvas.children)
    drawn(pencil, 30, 40)
    assert canvas.children == before


def test_an_unchanged_shape_is_not_touched(canvas: Canvas) -> None:
    pencil = Pencil(canvas)
    drawn(pencil, 10, 20)
    first, second = meshes(canvas)
    first.vertices = second.vertices = []
    drawn(pencil, 10, 30)
    assert not first.vertices
    assert second.vertices


def test_a_shape_that_is_left_out_disappears(canvas: Canvas) -> None:
    pencil = Pencil(canvas)
    drawn(pencil, 10, 20)
    drawn(pencil, 10)
    assert not meshes(canvas)[1].vertices


def test_a_shape_left_out_comes_back(canvas: Canvas) -> None:
    pencil = Pencil(canvas)
    drawn(pencil, 10, 20)
    drawn(pencil, 10)
    drawn(pencil, 10, 20)
    assert meshes(canvas)[1].vertices


def test_units_run_down_from_the_upper_left(canvas: Canvas) -> None:
    pencil = Pencil(canvas)
    pencil.begin(100, 500, 2)
    pencil.box(10, 20, 30, 40, 0, RED)
    xs, ys = meshes(canvas)[0].vertices[0::4], meshes(canvas)[0].vertices[1::4]
    assert (min(xs), max(xs)) == pytest.approx((119.5, 180.5))
    assert (min(ys), max(ys)) == pytest.approx((379.5, 460.5))


def test_text_stands_on_its_baseline(canvas: Canvas) -> None:
    pencil = Pencil(canvas)
    pencil.begin(0, 100, 1)
    width = pencil.text("7", 50, 60, 40, RED, anchor="middle")
    xs, ys = meshes(canvas)[0].vertices[0::4], meshes(canvas)[0].vertices[1::4]
    assert (min(xs) + max(xs)) / 2 == pytest.approx(50, abs=1)
    assert max(xs) - min(xs) == pytest.approx(width, abs=1)
    assert min(ys) < 40 < max(ys)


def test_text_that_fits_keeps_its_size(window: Any) -> None:
    assert fitted("12.3", 40, True, 500)[0] == 40


def test_text_that_does_not_fit_is_set_smaller(window: Any) -> None:
    room = text_width("10 730", 40, True) * 0.7
    size, width = fitted("10 730", 40, True, room)
    assert 25 <= size < 40
    assert width <= room


def test_all_digits_are_equally_wide(window: Any) -> None:
    assert len({text_width(digit * 8, 88, True) for digit in "0123456789"}) == 1


def test_the_bold_cut_is_the_real_one(window: Any) -> None:
    assert text_width("settling", 40, True) != text_width("settling", 40)
    assert theme.bold.endswith("Roboto-Bold.ttf")


def test_nothing_fits_where_there_is_no_room() -> None:
    assert fitted("", 40, True, -9.0) == (40, 0.0)
    assert fitted("12.3", 40, True, -9.0)[0] == 1
