"""``gramstand balances``: what is plugged in, in words, without opening any of it."""

from types import SimpleNamespace

import pytest
from pytest_mock import MockerFixture

from tests.helpers.command import Command
from tests.helpers.fake_hid import FakeHid, FakeScale, installed, keyboard


def bridge(**more: object) -> SimpleNamespace:
    """An adapter as pyserial lists it."""
    said = {
        "device": "/dev/ttyUSB0", "description": "Bridge", "vid": 0x1209, "pid": 1,
        "serial_number": "B1", "location": "1-2",
    }  # fmt: skip
    return SimpleNamespace(**{**said, **more})


@pytest.fixture
def comports(mocker: MockerFixture):
    mocker.patch("serial.serial_for_url", side_effect=AssertionError("a port was opened"))
    return mocker.patch("drivers.discovery.pyserial_ports.comports", return_value=[])


@pytest.fixture
def hid(mocker: MockerFixture, comports) -> FakeHid:
    return installed(mocker)


def test_serial_ports_and_hid_scales_come_a_line_each(
    gramstand: Command, comports, hid: FakeHid
) -> None:
    comports.return_value = [bridge()]
    hid.plug(FakeScale())
    hid.plug(keyboard(), b"/dev/hidraw1")
    assert gramstand.answers("balances", "--json") == (
        0,
        [
            {
                "where": "/dev/ttyUSB0",
                "kind": "serial",
                "description": "USB adapter for a serial cable, Bridge, serial number B1, "
                "in USB socket 1-2",
            },
            {
                "where": "hid:1209:0001:A7",
                "kind": "hid",
                "description": "USB scale, Larch Hill Pan, serial number A7",
            },
        ],
    )


def test_nothing_is_opened(gramstand: Command, comports, hid: FakeHid) -> None:
    comports.return_value = [bridge()]
    hid.plug(FakeScale(refusal="it was opened"))
    assert gramstand("balances")[0] == 0
    assert hid.opened == []


def test_a_person_reads_the_address_and_what_it_is(
    gramstand: Command, comports, hid: FakeHid
) -> None:
    hid.plug(FakeScale(None, product=None, maker=None))
    assert gramstand("balances") == (0, "hid:1209:0001: USB scale\n", "")


@pytest.mark.parametrize("description", ["", "n/a", "ttyS0"])
def test_a_socket_of_the_machine_is_called_so(
    gramstand: Command, comports, hid: FakeHid, description: str
) -> None:
    comports.return_value = [
        bridge(
            device="/dev/ttyS0",
            description=description,
            vid=None,
            serial_number=None,
            location=None,
        )
    ]
    _, [told] = gramstand.answers("balances", "--json")
    assert told["description"] == "serial socket of this machine"


def test_nothing_there_is_no_failure_and_one_friendly_line(
    gramstand: Command, comports, hid: FakeHid
) -> None:
    code, out, err = gramstand("balances", "--json")
    assert (code, out) == (0, "")
    assert err == (
        "No serial port and no USB scale was found: plug the cable in, switch the scale on, "
        "and try again.\n"
    )


def test_where_usb_cannot_be_searched_the_ports_still_come(
    gramstand: Command, comports, hid: FakeHid, mocker: MockerFixture
) -> None:
    comports.return_value = [bridge()]
    mocker.patch.object(hid, "enumerate", side_effect=OSError("no libudev"))
    code, out, err = gramstand("balances", "--json")
    assert code == 1
    assert '"where": "/dev/ttyUSB0"' in out
    assert err == "USB scales cannot be looked for: USB cannot be searched: no libudev\n"
