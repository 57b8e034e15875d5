from pathlib import Path
from types import SimpleNamespace

import pytest
from pytest_mock import MockerFixture

from drivers.discovery import PortIdentity, find_again, identify, is_elsewhere, list_ports


def usb(device: str, serial_number: str | None = "A7", location: str | None = "1-2") -> object:
    return SimpleNamespace(
        device=device,
        description="a bridge",
        vid=0x1209,
        pid=1,
        serial_number=serial_number,
        location=location,
    )


def built_in(device: str) -> object:
    return SimpleNamespace(
        device=device, description="n/a", vid=None, pid=None, serial_number=None, location=None
    )


@pytest.fixture
def plugged_in(mocker: MockerFixture):
    comports = mocker.patch("drivers.discovery.pyserial_ports.comports")

    def plug_in(*ports: object) -> None:
        comports.return_value = list(ports)

    plug_in()
    return plug_in


def test_ports_are_listed_by_address(plugged_in) -> None:
    plugged_in(usb("/dev/ttyUSB1"), built_in("/dev/ttyS0"))
    assert [port.where for port in list_ports()] == ["/dev/ttyS0", "/dev/ttyUSB1"]


def test_a_usb_port_is_known_by_what_it_says_of_itself(plugged_in) -> None:
    plugged_in(usb("COM3"))
    assert identify("COM3") == PortIdentity("COM3", "a bridge", 0x1209, 1, "A7", "1-2")


@pytest.mark.parametrize("address", ["socket://host:1", "/some/link"])
def test_a_url_or_a_link_is_known_by_its_address_only(plugged_in, address: str) -> None:
    plugged_in(usb("/dev/ttyUSB0"))
    assert identify(address) == PortIdentity(address)


def test_a_serial_number_is_found_under_another_name_and_in_another_socket(plugged_in) -> None:
    plugged_in(usb("/dev/ttyUSB0"))
    known = identify("/dev/ttyUSB0")
    plugged_in(usb("/dev/ttyUSB0", serial_number="B1"), usb("/dev/ttyUSB3", location="1-4"))
    assert find_again(known) == "/dev/ttyUSB3"


def test_without_a_serial_number_the_socket_decides(plugged_in) -> None:
    plugged_in(usb("COM3", serial_number=None))
    known = identify("COM3")
    plugged_in(usb("COM3", None, location="1-3"), usb("COM5", None, location="1-2"))
    assert find_again(known) == "COM5"


def test_one_serial_number_for_all_is_told_apart_by_the_socket(plugged_in) -> None:
    plugged_in(usb("COM3"))
    known = identify("COM3")
    plugged_in(usb("COM4", location="1-3"), usb("COM5", location="1-2"))
    assert find_again(known) == "COM5"


def test_another_device_at_the_same_name_is_not_it(plugged_in) -> None:
    plugged_in(usb("/dev/ttyUSB0"))
    known = identify("/dev/ttyUSB0")
    plugged_in(usb("/dev/ttyUSB0", serial_number="B1"))
    assert find_again(known) is None


def test_a_built_in_port_is_found_by_its_name(plugged_in) -> None:
    plugged_in(built_in("COM1"))
    known = identify("COM1")
    assert find_again(known) == "COM1"
    plugged_in()
    assert find_again(known) is None


def test_a_link_is_found_while_it_leads_somewhere(plugged_in, tmp_path: Path) -> None:
    link, device = tmp_path / "balance", tmp_path / "pts"
    link.symlink_to(device)
    known = identify(str(link))
    assert find_again(known) is None
    device.touch()
    assert find_again(known) == str(link)


def test_a_url_is_always_worth_a_try(plugged_in) -> None:
    assert find_again(PortIdentity("socket://host:1")) == "socket://host:1"


def test_the_ports_of_this_machine_can_be_listed() -> None:
    assert all(port.where for port in list_ports())


def test_a_port_of_its_kind_in_another_socket_is_elsewhere(plugged_in) -> None:
    plugged_in(usb("COM3", None))
    known = identify("COM3")
    plugged_in(usb("COM5", None, location="1-4"))
    assert find_again(known) is None
    assert is_elsewhere(known)


def test_a_port_that_is_simply_gone_is_not_elsewhere(plugged_in) -> None:
    plugged_in(usb("COM3", None))
    known = identify("COM3")
    plugged_in(usb("COM4", "another"))
    assert not is_elsewhere(known)


def test_a_port_without_usb_is_never_elsewhere(plugged_in) -> None:
    plugged_in(usb("COM5", None))
    assert not is_elsewhere(PortIdentity("socket://host:1"))
