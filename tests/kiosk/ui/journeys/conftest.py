"""Kiosks for journeys: each on a records file that is thrown away, closed when the test ends."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.helpers.journey import SMALL, Journey
from tests.helpers.offscreen import HEIGHT, WIDTH


@pytest.fixture
def start(tmp_path: Path) -> Iterator[Callable[..., Journey]]:
    """Opens a kiosk, after closing the one before: both on the same records file."""
    from kiosk.ui.theme import theme

    opened: list[Journey] = []

    def start(**more: Any) -> Journey:
        for before in opened:
            before.close()
        opened.append(Journey(tmp_path / "records.sqlite", **more))
        return opened[-1]

    yield start
    for journey in opened:
        journey.close()
    theme.less_motion = False
    theme.fit(WIDTH, HEIGHT)


@pytest.fixture
def journey(start: Callable[..., Journey], request: pytest.FixtureRequest) -> Journey:
    """One kiosk, in a window of 800 x 480 unless parametrized."""
    return start(size=getattr(request, "param", SMALL))
