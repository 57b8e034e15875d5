"""Teaching the kiosk a balance by touch, over a real port, from the list of scales to a cup."""

from __future__ import annotations

from collections.abc import Iterator
from types import SimpleNamespace

import pytest
from pytest_mock import MockerFixture

from drivers.dialects import use_shapes
from kiosk.commands.shapes import ShapeFiles
from kiosk.procedures.procedure import Person
from kiosk.ui.connection import ScaleChoice
from tests.helpers.fake_hid import installed
from tests.helpers.journey import LARGE, SMALL, Journey
from tests.helpers.line_styles import KINDS, Kind
from tests.helpers.pan import press
from tests.helpers.taught import LinePan

UNKNOWN = ("clock before", "station and id", "counter, commas")


class Unknown:
    """A kiosk on the simulated scale, and at a cable a balance that nobody knows."""

    def __init__(self, journey: Journey, chosen: Kind, mocker: MockerFixture) -> None:
        self.journey = journey
        self.balance = LinePan(chosen, journey._clock)
        self.shapes = ShapeFiles(journey.records.parent / "balances")
        use_shapes(self.shapes)
        listed = SimpleNamespace(
            device=self.balance.port.address, description="Bridge", vid=0x1209, pid=1,
            serial_number=None, location=None,
        )  # fmt: skip
        mocker.patch("drivers.discovery.pyserial_ports.comports", return_value=[listed])
        step = journey.kiosk.step

        def both() -> None:
            self.balance.port.pump()
            step()

        journey.kiosk.step = both  # type: ignore[method-assign]  # the other pan's time passes too

    def to_teaching(self) -> None:
        for name in ("The scale", "Another scale", "Cable"):
            self.journey.tap(name)
        self.journey.until_title("This scale speaks in its own way.")
        self.journey.tap("Teach the kiosk")
        self.journey.until_title("Leave the pan empty.")

    def load(self, grams: float) -> None:
        self.balance.put(grams)
        self.journey.until_title("Now take it off.")
        self.journey.wait(2.0)
        self.balance.put(0.0)
        self.journey.wait(3.0)


@pytest.fixture
def unknown(
    journey: Journey, mocker: MockerFixture, request: pytest.FixtureRequest
) -> Iterator[Unknown]:
    installed(mocker)
    made = Unknown(journey, KINDS[getattr(request, "param", UNKNOWN[0])], mocker)
    yield made
    use_shapes(None)
    made.balance.port.close()


@pytest.mark.parametrize("unknown", UNKNOWN, indirect=True)
def test_a_scale_is_taught_kept_and_used_for_a_cup(unknown: Unknown) -> None:
    journey = unknown.journey
    unknown.to_teaching()
    journey.until_title("Put a cup on the pan.")
    for grams in (52.18, 30.4, 71.0):
        unknown.load(grams)
    journey.until_title("Keep it as Scale 1?")
    journey.tap("Keep Scale 1")
    journey.until_title("This scale is Scale 1 now.")
    journey.tap("Use it")
    journey.until_title("This is the scale.")
    assert unknown.shapes.names() == ("Scale 1",)
    journey.tap("Home")
    journey.ask_for_cup()
    unknown.balance.put(12.3)
    journey.until(lambda: "weighs 12.3" in journey.title, "the weighed cup")
    assert journey.kept("SELECT simulated FROM cups_taken") == [(0,)]
    (text,) = journey.kept("SELECT text FROM choices WHERE name = 'scale'")
    choice = ScaleChoice.from_text(str(text[0]))
    assert choice is not None
    assert choice.dialect == "Scale 1"


@pytest.mark.parametrize("journey", [SMALL, LARGE], indirect=True)
def test_back_leaves_everything_as_it_was(unknown: Unknown) -> None:
    journey = unknown.journey
    unknown.to_teaching()
    journey.until_title("Put a cup on the pan.")
    unknown.load(52.18)
    journey.tap("That is right")
    journey.until_title("Keep it as Scale 1?")
    journey.tap("Back")
    journey.until_title("This scale speaks in its own way.")
    assert unknown.shapes.names() == ()
    assert journey.kiosk.drawer.teaching is None


def test_home_from_a_locked_drawer_ends_the_lesson(unknown: Unknown) -> None:
    journey = unknown.journey
    unknown.to_teaching()
    journey.desk.lock.close()
    journey.wait(0.2)
    assert journey.screen == "code"
    assert journey.scene.pan.number == ""
    journey.desk.code_press(press(Person.HOME))
    journey.wait(0.2)
    journey.until_screen("home")
    assert journey.kiosk.drawer.teaching is None
