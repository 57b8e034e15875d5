from types import SimpleNamespace

import pytest
from pytest_mock import MockerFixture

from drivers.errors import BadAddress, PortUnavailable, Reason
from drivers.port import Port
from drivers.transports.port_settings import PortSettings


def bridge(device: str, serial_number: str = "A7") -> object:
    return SimpleNamespace(
        device=device,
        description="a bridge",
        vid=0x1209,
        pid=1,
        serial_number=serial_number,
        location=None,
    )


@pytest.fixture
def comports(mocker: MockerFixture):
    return mocker.patch("drivers.discovery.pyserial_ports.comports", return_value=[])


@pytest.fixture
def opened(mocker: MockerFixture):
    return mocker.patch("drivers.port.open_transport")


def test_after_an_unplug_the_same_device_is_opened_under_its_new_name(comports, opened) -> None:
    port = Port("/dev/ttyUSB0", PortSettings())
    comports.return_value = [bridge("/dev/ttyUSB0")]
    port.open()
    comports.return_value = [bridge("/dev/ttyUSB0", "B1"), bridge("/dev/ttyUSB1")]
    port.open()
    assert [call.args[0] for call in opened.call_args_list] == ["/dev/ttyUSB0", "/dev/ttyUSB1"]
    assert port.where == "/dev/ttyUSB1"


def test_while_the_device_is_away_the_port_is_missing(comports, opened) -> None:
    port = Port("COM3", PortSettings())
    comports.return_value = [bridge("COM3")]
    port.open()
    comports.return_value = []
    with pytest.raises(PortUnavailable) as caught:
        port.open()
    assert caught.value.reason is Reason.MISSING
    assert opened.call_count == 1


def test_a_port_that_was_never_open_is_tried_at_its_address(comports, opened) -> None:
    opened.side_effect = [PortUnavailable(Reason.MISSING, "none"), opened.return_value]
    port = Port("COM3", PortSettings())
    with pytest.raises(PortUnavailable):
        port.open()
    assert port.open() is opened.return_value


def test_an_address_that_can_be_none_is_refused() -> None:
    with pytest.raises(BadAddress):
        Port("", PortSettings())
