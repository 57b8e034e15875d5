"""Another scale while the kiosk runs: by touch, over real ports."""

from __future__ import annotations

from collections.abc import Iterator
from types import SimpleNamespace

import pytest
from pytest_mock import MockerFixture

from drivers.simulated.table import SimulatedTable, simulated_table
from drivers.simulated.things import Cup
from tests.helpers.fake_hid import installed
from tests.helpers.journey import STEADY, Journey


class TwoScales:
    """A kiosk on the simulated scale, and a second scale at a cable of its own."""

    def __init__(self, journey: Journey, other: SimulatedTable) -> None:
        self.journey, self.other = journey, other
        step = journey.kiosk.step

        def both() -> None:
            step()
            other.pump()

        journey.kiosk.step = both  # type: ignore[method-assign]  # the other pan's time passes too


@pytest.fixture
def scales(journey: Journey, mocker: MockerFixture) -> Iterator[TwoScales]:
    installed(mocker)
    with simulated_table(clock=journey._clock, profile=STEADY, seed=8) as other:
        listed = SimpleNamespace(
            device=other.address, description="Bridge", vid=0x1209, pid=1,
            serial_number=None, location=None,
        )  # fmt: skip
        mocker.patch("drivers.discovery.pyserial_ports.comports", return_value=[listed])
        yield TwoScales(journey, other)


def choose_cable(journey: Journey) -> None:
    journey.tap("The scale")
    journey.tap("Another scale")
    journey.tap("Cable")


def test_a_scale_at_a_cable_is_found_out_and_used(scales: TwoScales) -> None:
    journey = scales.journey
    choose_cable(journey)
    journey.until_title("Listening to the scale.")
    journey.until_title("This is the scale.")
    scales.other.bench.put(Cup(51.0))
    journey.until(lambda: journey.scene.pan.number == "51.0", "the mass on the other pan")
    assert not journey.scene.strip.simulated
    assert "Things" not in journey.seen


def test_a_cup_weighed_on_it_counts_as_real(scales: TwoScales) -> None:
    journey = scales.journey
    choose_cable(journey)
    journey.until_title("This is the scale.")
    journey.tap("Home")
    journey.ask_for_cup()
    scales.other.bench.put(Cup(12.3))
    journey.until(lambda: "weighs 12.3" in journey.title, "the weighed cup")
    assert journey.kept("SELECT simulated FROM cups_taken") == [(0,)]


def test_cups_of_the_simulated_scale_stay_with_it(scales: TwoScales) -> None:
    journey = scales.journey
    journey.take_cup()
    assert len(journey.scene.sheet.cups) == 1  # type: ignore[attr-defined]  # it is home
    choose_cable(journey)
    journey.until_title("This is the scale.")
    journey.tap("Home")
    assert journey.scene.sheet.cups == ()  # type: ignore[attr-defined]
    journey.tap("The scale")
    journey.tap("Another scale")
    journey.tap("Simulated scale")
    journey.tap("Home")
    assert len(journey.scene.sheet.cups) == 1  # type: ignore[attr-defined]


def test_nothing_is_sent_while_only_listening(scales: TwoScales) -> None:
    journey = scales.journey
    journey.tap("The scale")
    received = []
    device = scales.other.device
    heard = device.receive
    device.receive = lambda data, now: (received.append(data), heard(data, now))[1]  # type: ignore[method-assign]
    journey.tap("Another scale")
    journey.wait(3.0)
    assert received == []
    journey.tap("Cable")
    journey.wait(1.0)
    assert received == []
    journey.until_title("This is the scale.")
    assert received != []


def test_a_cup_begun_while_the_scale_is_found_out_knows_the_pan(scales: TwoScales) -> None:
    journey = scales.journey
    choose_cable(journey)
    journey.tap("Home")
    journey.ask_for_cup()
    journey.until(lambda: not journey.desk.facts.scale.trying, "the scale that was found out")
    scales.other.bench.put(Cup(12.3))
    journey.until(lambda: "weighs 12.3" in journey.title, "the weighed cup")
    assert journey.desk.memory.used
    assert journey.desk.procedure is not None
    assert journey.desk.procedure.pan is journey.desk.memory


def test_a_cable_without_a_scale_leads_to_teaching(scales: TwoScales) -> None:
    journey = scales.journey
    scales.other.switch_off()
    choose_cable(journey)
    journey.until_title("Nothing comes from this cable.")
    assert "Teach the kiosk" in journey.seen


def test_back_leaves_the_scale_as_it_was(scales: TwoScales) -> None:
    journey = scales.journey
    journey.tap("The scale")
    journey.tap("Another scale")
    journey.tap("Back")
    journey.until_title("This is the scale.")
    assert journey.scene.strip.simulated
