"""HID scales: listed, recognised, and found again after an unplug."""

import pytest
from pytest_mock import MockerFixture

from drivers.discovery import PortIdentity, find_again, identify, list_hid_scales
from tests.helpers.fake_hid import FakeHid, FakeScale, installed


@pytest.fixture
def hid(mocker: MockerFixture) -> FakeHid:
    return installed(mocker)


def test_scales_are_listed_with_what_they_say_of_themselves(hid: FakeHid) -> None:
    hid.plug(FakeScale("B1"), b"/dev/hidraw1")
    hid.plug(FakeScale("A7", maker=None), b"/dev/hidraw2")
    assert list_hid_scales() == [
        PortIdentity("hid:1209:0001:A7", "Pan", 0x1209, 1, "A7", "hid:/dev/hidraw2"),
        PortIdentity("hid:1209:0001:B1", "Larch Hill Pan", 0x1209, 1, "B1", "hid:/dev/hidraw1"),
    ]


@pytest.mark.parametrize("address", ["hid:1209:0001", "hid:/dev/hidraw0"])
def test_a_scale_is_known_by_the_address_that_lasts(hid: FakeHid, address: str) -> None:
    hid.plug(FakeScale())
    assert identify(address).where == "hid:1209:0001:A7"


def test_of_a_scale_that_is_not_there_only_the_address_is_known(hid: FakeHid) -> None:
    assert identify("hid:1209:0001") == PortIdentity("hid:1209:0001")


@pytest.mark.parametrize("serial_number", ["A7", None])
def test_under_another_path_it_is_the_same_scale(hid: FakeHid, serial_number: str | None) -> None:
    scale = hid.plug(FakeScale(serial_number), b"/dev/hidraw0")
    known = identify("hid:/dev/hidraw0")
    hid.unplug(b"/dev/hidraw0")
    hid.plug(scale, b"/dev/hidraw7")
    assert find_again(known) == known.where == identify("hid:/dev/hidraw7").where


def test_a_twin_is_found_only_where_it_was(hid: FakeHid) -> None:
    hid.plug(FakeScale(None), b"/dev/hidraw0")
    hid.plug(FakeScale(None), b"/dev/hidraw1")
    known = identify("hid:/dev/hidraw0")
    assert find_again(known) == "hid:/dev/hidraw0"
    hid.unplug(b"/dev/hidraw0")
    assert find_again(known) is None


def test_another_scale_in_the_place_of_a_twin_is_not_it(hid: FakeHid) -> None:
    hid.plug(FakeScale(None), b"/dev/hidraw0")
    hid.plug(FakeScale(None), b"/dev/hidraw1")
    known = identify("hid:/dev/hidraw0")
    hid.plug(FakeScale(None, pid=2), b"/dev/hidraw0")
    assert find_again(known) is None
