"""Kivy is set up for drawing offscreen before any test of the screens imports it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from tests.helpers.offscreen import HEIGHT, WIDTH, open_window, prepare_once

prepare_once()


@pytest.fixture
def window(request: pytest.FixtureRequest) -> Iterator[Any]:
    """The empty window, 1024 x 600 unless parametrized; nothing on it moves by itself."""
    from kiosk.ui.theme import theme

    width, height = getattr(request, "param", (WIDTH, HEIGHT))
    theme.less_motion = True
    opened = open_window(width, height)
    yield opened
    for child in list(opened.children):
        opened.remove_widget(child)
    theme.less_motion = False
    theme.fit(WIDTH, HEIGHT)
