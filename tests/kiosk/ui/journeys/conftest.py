"""Kiosks for journeys: each on a records file that is thrown away, closed when the test ends."""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from kiosk.ui.theme import theme
from tests.helpers.fake_hid import FakeHid, FakeScale
from tests.helpers.journey import SMALL, USUAL, Journey
from tests.helpers.offscreen import HEIGHT, WIDTH
from tests.helpers.spared import spare
from tests.helpers.spoken import HidJourney


@pytest.fixture(scope="package", autouse=True)
def _little_to_clean() -> Iterator[None]:
    """Spare the garbage collector what stays anyway: it would look at it again all the time."""
    gc.collect()
    gc.freeze()
    yield
    gc.unfreeze()
    theme.less_motion = False
    theme.fit(WIDTH, HEIGHT)


@pytest.fixture
def start(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[..., Journey]]:
    """Opens a kiosk, after closing the one before: both on the same records file."""
    spare(monkeypatch)
    opened: list[Journey] = []

    def start(**more: Any) -> Journey:
        for before in opened:
            before.close()
        opened.append(Journey(tmp_path / "records.sqlite", **more))
        return opened[-1]

    yield start
    for journey in opened:
        journey.close()


@pytest.fixture
def journey(start: Callable[..., Journey], request: pytest.FixtureRequest) -> Journey:
    """One kiosk, in a window of 800 x 480 unless parametrized."""
    return start(size=getattr(request, "param", SMALL))


@pytest.fixture
def usual(start: Callable[..., Journey], request: pytest.FixtureRequest) -> Journey:
    """The same on a balance as classrooms have them: it rings, creeps and is never quite still."""
    return start(size=getattr(request, "param", SMALL), profile=USUAL)


@pytest.fixture
def hid_journey(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[HidJourney]:
    spare(monkeypatch)
    module = FakeHid()
    for name in ("hid", "hidraw"):  # one by one: what is imported meanwhile stays imported
        monkeypatch.setitem(sys.modules, name, module)
    scale = module.plug(FakeScale())
    journey = HidJourney(tmp_path / "records.sqlite", where=lambda _: "hid:/dev/hidraw0")
    journey.speak_through(module, scale)
    yield journey
    journey.close()
