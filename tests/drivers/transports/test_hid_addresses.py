"""Which scales there are and what they are called."""

import pytest
from pytest_mock import MockerFixture

from drivers.errors import BadAddress, PortUnavailable, Reason
from drivers.transports.hid_addresses import (
    address_of,
    called,
    check_hid_address,
    connected_scales,
    is_hid,
)
from tests.helpers.fake_hid import FakeHid, FakeScale, installed, keyboard


@pytest.fixture
def hid(mocker: MockerFixture) -> FakeHid:
    return installed(mocker)


def addresses() -> list[str]:
    scales = connected_scales()
    return [address_of(scale, scales) for scale in scales]


def test_only_what_says_that_it_is_a_scale_is_one(hid: FakeHid) -> None:
    hid.plug(keyboard(), b"/dev/hidraw0")
    hid.plug(FakeScale(usage=(0x8D, 0x21)), b"/dev/hidraw1")
    hid.plug(FakeScale(vid=0xABCD, pid=0x12), b"/dev/hidraw2")
    assert addresses() == ["hid:abcd:0012:A7"]


def test_a_scale_that_is_listed_twice_is_one(hid: FakeHid, mocker: MockerFixture) -> None:
    hid.plug(FakeScale())
    twice = hid.enumerate() * 2
    mocker.patch.object(hid, "enumerate", return_value=twice)
    assert addresses() == ["hid:1209:0001:A7"]


@pytest.mark.parametrize("serial_number", [None, "", " "])
def test_without_a_serial_number_the_kind_is_the_address(
    hid: FakeHid, serial_number: str | None
) -> None:
    hid.plug(FakeScale(serial_number))
    assert addresses() == ["hid:1209:0001"]


def test_twins_are_told_apart_by_where_they_are(hid: FakeHid) -> None:
    hid.plug(FakeScale(None), b"/dev/hidraw2")
    hid.plug(FakeScale(None), b"/dev/hidraw1")
    hid.plug(FakeScale(None, pid=2), b"/dev/hidraw3")
    assert addresses() == ["hid:/dev/hidraw1", "hid:/dev/hidraw2", "hid:1209:0002"]


def test_one_serial_number_for_all_tells_nobody_apart(hid: FakeHid) -> None:
    hid.plug(FakeScale("0000"), b"/dev/hidraw1")
    hid.plug(FakeScale("0000"), b"/dev/hidraw2")
    assert addresses() == ["hid:/dev/hidraw1", "hid:/dev/hidraw2"]


def test_a_twin_without_a_serial_number_does_not_hide_the_one_that_has_one(hid: FakeHid) -> None:
    hid.plug(FakeScale(None), b"/dev/hidraw1")
    hid.plug(FakeScale("A7"), b"/dev/hidraw2")
    assert addresses() == ["hid:/dev/hidraw1", "hid:1209:0001:A7"]


@pytest.mark.parametrize("address", ["hid:1209:0001:A7", "hid:1209:0001", "hid:/dev/hidraw5"])
def test_each_form_of_address_finds_the_scale(hid: FakeHid, address: str) -> None:
    hid.plug(FakeScale(), b"/dev/hidraw5")
    hid.plug(keyboard(), b"/dev/hidraw0")
    assert called(address).path == b"/dev/hidraw5"


def test_hexadecimal_digits_may_be_capitals(hid: FakeHid) -> None:
    hid.plug(FakeScale(vid=0xABCD))
    assert called("hid:ABCD:0001").vid == 0xABCD


@pytest.mark.parametrize("serial_number", ["12:34", "Über 7", "a\nb"])
def test_a_serial_number_may_hold_anything(hid: FakeHid, serial_number: str) -> None:
    hid.plug(FakeScale(serial_number))
    hid.plug(FakeScale("other"), b"/dev/hidraw1")
    [address] = [address for address in addresses() if "other" not in address]
    assert called(address).path == b"/dev/hidraw0"


@pytest.mark.parametrize("address", ["hid:1209:0001:B1", "hid:1209:0002", "hid:/dev/hidraw0"])
def test_what_is_no_scale_here_is_missing(hid: FakeHid, address: str) -> None:
    hid.plug(FakeScale(), b"/dev/hidraw1")
    hid.plug(keyboard(), b"/dev/hidraw0")
    with pytest.raises(PortUnavailable) as caught:
        called(address)
    assert (caught.value.reason, caught.value.detail) == (Reason.MISSING, address)


def test_an_address_that_may_be_two_scales_is_not_guessed(hid: FakeHid) -> None:
    hid.plug(FakeScale("A7"), b"/dev/hidraw1")
    hid.plug(FakeScale("B1"), b"/dev/hidraw2")
    with pytest.raises(PortUnavailable, match="choose one: hid:/dev/hidraw1, hid:/dev/hidraw2"):
        called("hid:1209:0001")


def test_a_search_that_fails_says_so(hid: FakeHid, mocker: MockerFixture) -> None:
    mocker.patch.object(hid, "enumerate", side_effect=OSError("no libudev"))
    with pytest.raises(PortUnavailable, match="no libudev"):
        connected_scales()


@pytest.mark.parametrize("address", ["hid:", "hid:  "])
def test_an_address_must_name_something(address: str) -> None:
    assert is_hid(address)
    with pytest.raises(BadAddress, match="gramstand balances lists"):
        check_hid_address(address)
