"""The edges of a container as rows: one target, the row under the finger is meant."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.edge_rows import GAP, OPEN_HIGH, EdgeRows
from tests.helpers.offscreen import frames, tap_at


def row(edge: str, state: str = "to come") -> dict[str, Any]:
    return {"edge": edge, "name": edge, "state": state, "cells": ("9.2",), "typing": None,
            "note": "", "mean": "9.2 cm"}  # fmt: skip


def shown(window: Any, *rows: dict[str, Any], high: int = 300) -> EdgeRows:
    widget = EdgeRows(rows=list(rows), size_hint=(None, None), size=(276, high))
    window.add_widget(widget)
    frames(2)
    return widget


def chosen(widget: EdgeRows) -> list[str]:
    heard: list[str] = []
    widget.bind(on_choose=lambda _widget, edge: heard.append(edge))
    return heard


BOX = (row("long", "done"), row("wide", "done"), row("tall", "now"))
BIN = (row("top long"), row("top wide"), row("bottom long"), row("bottom wide", "now"), row("tall"))


@pytest.mark.parametrize("rows", [BOX, BIN], ids=["box", "bin"])
def test_the_rows_fill_their_height_without_overlapping(
    window: Any, rows: tuple[dict[str, Any], ...]
) -> None:
    widget = shown(window, *rows)
    boxes = widget.boxes()
    for (top, high), (following, _) in pairwise(boxes):
        assert following == pytest.approx(top + high + GAP)
    assert sum(boxes[-1]) == pytest.approx(widget.high)


def test_three_rows_are_as_high_as_each_other(window: Any) -> None:
    highs = [high for _, high in shown(window, *BOX).boxes()]
    assert highs == pytest.approx([highs[0]] * 3)


def test_of_five_rows_the_present_one_is_open(window: Any) -> None:
    highs = [high for _, high in shown(window, *BIN).boxes()]
    assert highs[3] == OPEN_HIGH
    assert max(highs[:3]) < OPEN_HIGH / 2


@pytest.mark.parametrize("place", range(5))
def test_a_tap_means_the_row_under_the_finger(window: Any, place: int) -> None:
    widget = shown(window, *BIN)
    heard = chosen(widget)
    top, high = widget.boxes()[place]
    tap_at(widget.center_x, widget.top - (top + high / 2) * theme.u)
    assert heard == [BIN[place]["edge"]]


@pytest.mark.parametrize("size", [(1, 1), (20, 300), (276, 20)])
def test_a_squeezed_table_is_drawn_without_harm(window: Any, size: tuple[int, int]) -> None:
    widget = shown(window, row("long"), row("tall", "now"))
    widget.size = size
    frames(1)
    widget.paint(widget._pencil)
    assert sum(widget.boxes()[-1]) == pytest.approx(widget.high)
