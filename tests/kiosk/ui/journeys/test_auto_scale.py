"""The kiosk that looks for its scale by itself: with nothing, one and two things plugged in."""

from __future__ import annotations

import sys
from collections.abc import Callable
from types import SimpleNamespace

import pytest
from pytest_mock import MockerFixture

from kiosk.ui.connection import AUTO, ScaleChoice
from tests.helpers.fake_hid import FakeHid, FakeScale
from tests.helpers.journey import Journey

Start = Callable[[], Journey]


@pytest.fixture
def hid(monkeypatch: pytest.MonkeyPatch) -> FakeHid:
    module = FakeHid()
    for name in ("hid", "hidraw"):  # one by one: what is imported meanwhile stays imported
        monkeypatch.setitem(sys.modules, name, module)
    return module


@pytest.fixture
def cables(mocker: MockerFixture) -> list[SimpleNamespace]:
    """The serial ports that are plugged in; none at first."""
    listed: list[SimpleNamespace] = []
    mocker.patch("drivers.discovery.pyserial_ports.comports", side_effect=lambda: listed)
    return listed


@pytest.fixture
def begin(start: Callable[..., Journey], hid: FakeHid, cables: list[SimpleNamespace]) -> Start:
    """Starts a kiosk that is locked, as after each start."""

    def begin() -> Journey:
        journey = start(where=lambda _: AUTO)
        journey.desk.lock.close()
        journey.wait(0.5)
        return journey

    return begin


def plug_cable(cables: list[SimpleNamespace], device: str = "/dev/ttyUSB7") -> None:
    cables.append(
        SimpleNamespace(
            device=device, description="Bridge", vid=0x1209, pid=1, serial_number=None,
            location=None,
        )
    )  # fmt: skip


def without_code(journey: Journey) -> None:
    journey.until_title("Choose a code for the coach.")
    journey.tap("No code yet")
    journey.until_title("Which scale?")


def test_with_nothing_plugged_in_the_coach_is_asked(begin: Start) -> None:
    journey = begin()
    without_code(journey)
    assert "Simulated scale" in journey.seen


def test_a_cable_is_chosen_by_a_person(begin: Start, cables: list[SimpleNamespace]) -> None:
    plug_cable(cables)
    journey = begin()
    without_code(journey)
    assert journey.desk.facts.scale.chosen is None
    assert "Bridge" in journey.seen


def test_the_only_usb_scale_is_used_at_once(
    begin: Start, hid: FakeHid, cables: list[SimpleNamespace]
) -> None:
    hid.plug(FakeScale())
    journey = begin()
    assert journey.screen == "home"
    chosen = journey.desk.facts.scale.chosen
    assert chosen is not None
    assert chosen.where.startswith("hid:")


def test_beside_a_cable_the_coach_is_asked(
    begin: Start, hid: FakeHid, cables: list[SimpleNamespace]
) -> None:
    hid.plug(FakeScale())
    plug_cable(cables)
    journey = begin()
    without_code(journey)
    assert journey.desk.facts.scale.chosen is None


def test_a_way_of_speaking_that_is_known_no_more_is_told(
    begin: Start, cables: list[SimpleNamespace]
) -> None:
    plug_cable(cables)
    last = ScaleChoice(where=cables[0].device, dialect="Scale 9")
    first = begin()
    first.tap("Back")
    first.desk.notebook.remember("scale", last.as_text())
    first.wait(0.5)
    journey = begin()
    without_code(journey)
    assert "Scale 9" in journey.seen
