"""``--scale auto``: used where only one scale can be meant, else a list to choose from."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from pytest_mock import MockerFixture

from kiosk.commands.auto_scale import the_only_scale
from kiosk.commands.console import BadInputError
from tests.helpers.fake_hid import FakeHid, FakeScale, installed

PORT = SimpleNamespace(
    device="/dev/ttyUSB0", description="Bridge", vid=0x1209, pid=1, serial_number=None,
    location="1-2",
)  # fmt: skip


@pytest.fixture
def comports(mocker: MockerFixture):
    return mocker.patch("drivers.discovery.pyserial_ports.comports", return_value=[])


@pytest.fixture
def hid(mocker: MockerFixture, comports) -> FakeHid:
    return installed(mocker)


def test_the_only_usb_scale_is_meant(comports, hid: FakeHid) -> None:
    comports.return_value = [PORT]
    hid.plug(FakeScale())
    assert the_only_scale() == "hid:1209:0001:A7"


def test_a_port_is_never_taken_without_being_chosen(comports, hid: FakeHid) -> None:
    comports.return_value = [PORT]
    with pytest.raises(BadInputError, match=r"Choose one .* /dev/ttyUSB0: USB adapter .* Bridge"):
        the_only_scale()


def test_without_anything_plugged_in_it_says_so(hid: FakeHid) -> None:
    with pytest.raises(BadInputError, match="plug the cable in"):
        the_only_scale()
