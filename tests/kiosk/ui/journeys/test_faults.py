"""Every fault of a scale, on a simulated balance behind a real port: its sentence, its way back."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from dataclasses import replace
from decimal import Decimal

import pytest
from serial.tools.list_ports_common import ListPortInfo

from drivers import discovery
from drivers.simulated.profile import Profile
from tests.helpers.journey import Journey
from tests.helpers.spoken import MARKED

EMPTY_G, FILLED_G = 12.3, 105.7
REST_S = 3.0
BACK_WITHIN_S = 2.0
Start = Callable[..., Journey]


def cup_is_weighed(journey: Journey) -> None:
    """The way back is open: the pan is emptied, the cup is put on and weighed."""
    journey.clear()
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")
    assert journey.rows("weighings") == 1


@pytest.fixture
def lined(start: Start) -> Journey:
    """At the instruction for an empty cup, on a balance that sends lines."""
    journey = start(style=MARKED)
    journey.wait(1.0)
    journey.ask_for_cup()
    return journey


# Bytes that mean nothing ---------------------------------------------------------------------


def test_another_parity_is_told_as_speech_at_another_speed(lined: Journey) -> None:
    lined.table.device.faults.other_parity = True
    lined.until_title("It speaks, but not at this speed.")
    assert lined.scene.strip.words[0] == "Scale not clear"
    lined.put(EMPTY_G)
    lined.wait(REST_S)
    lined.table.device.faults.other_parity = False
    lined.until_title("The scale is back.")
    assert lined.rows("weighings") == 0
    cup_is_weighed(lined)


# The balance's own words ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("word", "title"),
    [
        ("CAL", "The scale asks to be calibrated."),
        ("Err 4", "The scale reports an error."),
        ("------", "The scale shows no number."),
    ],
)
def test_a_word_in_place_of_the_number_is_told(lined: Journey, word: str, title: str) -> None:
    lined.table.device.show_word(word)
    lined.until_title(title)
    lined.table.device.show_word(None)
    cup_is_weighed(lined)


def test_a_balance_that_woke_with_too_much_says_that_it_found_no_zero(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(900.0)
    journey.table.switch_off()
    journey.until_title("The scale is silent.")
    journey.table.switch_on()
    journey.until_title("The scale found no zero.")
    journey.clear()
    journey.table.press_zero()
    cup_is_weighed(journey)


# Its keys ------------------------------------------------------------------------------------


def test_a_cup_weighed_in_grams_is_handed_in_in_ounces(journey: Journey) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    journey.table.press_unit()  # kilograms
    journey.table.press_unit()
    journey.wait(REST_S)
    journey.put(FILLED_G)
    journey.until_screen("score")
    [(unit, value, grams, step)] = journey.kept(
        "SELECT unit, value, grams, readability FROM cups_handed_in "
        "JOIN weighings w ON w.id = filled_id"
    )
    factor = Decimal("28.349523125")
    assert unit == "oz"
    assert Decimal(str(grams)) == Decimal(str(value)) * factor
    assert Decimal(str(step)) == Decimal("0.005") * factor
    assert abs(Decimal(str(grams)) - Decimal("105.7")) <= Decimal(str(step))


def test_a_cup_that_rests_is_not_weighed_anew_when_the_unit_changes(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    for _ in range(4):
        journey.table.press_unit()
        journey.wait(1.0)
    assert journey.rows("weighings") == 1


def test_the_pan_says_in_what_unit_the_scale_shows(journey: Journey) -> None:
    journey.ask_for_cup()
    for _ in range(2):
        journey.table.press_unit()
    journey.wait(REST_S)
    assert journey.scene.pan.line1 == "it shows oz"


def test_a_unit_that_is_no_mass_is_told_until_its_key_brings_grams(start: Start) -> None:
    journey = start(style=replace(MARKED, units={"kg": "pcs", "oz": "pcs", "lb": "pcs"}))
    journey.wait(1.0)
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.table.press_unit()
    journey.until_title("The scale shows no grams.")
    assert journey.rows("weighings") == 0
    for _ in range(3):
        journey.table.press_unit()
    journey.until_title("Cup 1 weighs 12.3 g.")


# Once everything is off, the next thing to do is lit --------------------------------------------


def test_when_the_tared_cup_is_off_the_key_is_next(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(200.0)
    journey.until_screen("question")
    journey.table.press_tare()
    journey.until_title("The scale was tared by its key.")
    assert journey.scene.sheet.now == 1
    journey.clear()
    assert journey.scene.sheet.now == 2


def test_below_zero_with_everything_off_the_key_is_next(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.table.switch_off()
    journey.wait(4.0)
    journey.table.switch_on()
    journey.wait(REST_S)
    journey.bench.lift()
    journey.until_title("Below zero. Empty the pan.")
    assert journey.scene.sheet.now == 2


def test_a_scale_that_was_off_under_a_load_asks_to_look_at_its_pan(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.table.switch_off()
    journey.until_title("The scale is silent.")
    journey.put(EMPTY_G)
    journey.wait(REST_S)
    journey.table.switch_on()
    journey.until_screen("put on")
    assert "Something on it already? Take it off first." in journey.seen


# Slow and late -------------------------------------------------------------------------------

CREEPING = Profile(
    readability=Decimal("0.01"), capacity=Decimal(500), noise=0.1, damping=0.7,
    filter_seconds=0.05, drift_g_per_minute=12.0,
)  # fmt: skip


def test_a_reading_that_creeps_without_end_is_told(start: Start) -> None:
    journey = start(profile=CREEPING)
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("The number keeps creeping.")
    assert journey.rows("weighings") == 0


def test_numbers_that_come_too_late_are_told(
    journey: Journey, monkeypatch: pytest.MonkeyPatch
) -> None:
    journey.ask_for_cup()
    station = journey.kiosk.station
    take = station.watch.reading
    monkeypatch.setattr(station.watch, "reading", lambda r: take(replace(r, at=r.at - 3.0)))
    journey.put(EMPTY_G)
    journey.until_title("The numbers come too late.")
    assert journey.rows("weighings") == 0
    monkeypatch.undo()
    cup_is_weighed(journey)


# The port ------------------------------------------------------------------------------------

SERIAL_NUMBER, FIRST, OTHER = "LH-1", "1-1.2", "1-1.4"


class Sockets:
    """What pyserial lists: the table's port as a USB adapter, while it is plugged in."""

    def __init__(self, serial_number: str | None) -> None:
        self.serial_number = serial_number
        self.location = FIRST
        self.link: str | None = None

    def port_of(self, link: str) -> str:
        self.link = link
        return os.path.realpath(link)

    def comports(self) -> list[ListPortInfo]:
        if self.link is None or not os.path.exists(self.link):
            return []
        port = ListPortInfo(os.path.realpath(self.link), skip_link_detection=True)
        port.vid, port.pid = 0x1209, 0x0001
        port.serial_number, port.location = self.serial_number, self.location
        return [port]


@pytest.fixture
def sockets(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> Iterator[Sockets]:
    listed = Sockets(request.param)
    monkeypatch.setattr(discovery.pyserial_ports, "comports", listed.comports)
    return listed


def on_usb(start: Start, sockets: Sockets) -> Journey:
    """A kiosk that knows the port of its table as that of a USB adapter."""
    journey = start(style=MARKED, where=sockets.port_of)
    journey.wait(1.0)
    journey.ask_for_cup()
    return journey


def into_another_socket(journey: Journey, sockets: Sockets) -> None:
    """Its port has another name there."""
    journey.table.unplug()
    journey.until_title("The scale is unplugged.")
    keeps_the_name, other = os.openpty()
    sockets.location = OTHER
    journey.table.plug()
    os.close(keeps_the_name)
    os.close(other)


@pytest.mark.parametrize("sockets", [SERIAL_NUMBER], indirect=True)
def test_in_another_socket_it_is_known_by_its_serial_number(start: Start, sockets: Sockets) -> None:
    journey = on_usb(start, sockets)
    into_another_socket(journey, sockets)
    journey.wait(BACK_WITHIN_S)
    assert journey.kiosk.station.watch.state.readings_flow
    cup_is_weighed(journey)


@pytest.mark.parametrize("sockets", [None], indirect=True)
def test_without_a_serial_number_its_old_socket_is_asked_for(
    start: Start, sockets: Sockets
) -> None:
    journey = on_usb(start, sockets)
    into_another_socket(journey, sockets)
    journey.until_title("The scale is in another socket.")
    sockets.location = FIRST
    journey.wait(BACK_WITHIN_S)
    cup_is_weighed(journey)


def test_within_two_seconds_of_the_cable_readings_flow_in_the_same_step(lined: Journey) -> None:
    lined.table.unplug()
    lined.until_title("The scale is unplugged.")
    lined.table.plug()
    lined.wait(BACK_WITHIN_S)
    assert lined.kiosk.station.watch.state.readings_flow
    assert lined.scene.sheet.step == 1
    cup_is_weighed(lined)


@pytest.mark.parametrize(
    ("number", "title"),
    [(13, "The kiosk may not use the port."), (11, "Another program uses the scale.")],
)
def test_a_port_that_comes_back_refused_says_why(
    lined: Journey, monkeypatch: pytest.MonkeyPatch, number: int, title: str
) -> None:
    def refused(*_args: object, **_more: object) -> None:
        raise OSError(number, "refused")

    lined.table.unplug()
    lined.until_title("The scale is unplugged.")
    monkeypatch.setattr("serial.Serial.open", refused)
    lined.table.plug()
    lined.until_title(title)
    monkeypatch.undo()
    lined.wait(BACK_WITHIN_S)
    cup_is_weighed(lined)
