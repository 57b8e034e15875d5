"""An open HID scale: whole reports, never waiting for ever, every failure with its reason."""

from collections.abc import Callable

import pytest
from pytest_mock import MockerFixture

from drivers.errors import PortLost, PortUnavailable, Reason
from drivers.transports.hid_device import HidDevice, open_hid_scale
from tests.helpers.fake_hid import STALE, FakeDevice, FakeHid, FakeScale, installed
from tests.helpers.hid_reports import SIX_REPORTS, report

A7 = "hid:1209:0001:A7"
Opened = Callable[..., HidDevice]


@pytest.fixture
def hid(mocker: MockerFixture) -> FakeHid:
    return installed(mocker)


@pytest.fixture
def descriptors() -> list[bytes]:
    return []


@pytest.fixture
def opened(hid: FakeHid, descriptors: list[bytes]) -> Opened:
    return lambda patience=0.05: open_hid_scale(A7, patience, descriptors.append)


def test_each_packet_is_one_whole_report(hid: FakeHid, opened: Opened) -> None:
    hid.plug(FakeScale()).sends(STALE, report(weight=1), report(weight=2))
    device = opened()
    assert [device.read() for _ in range(4)] == [b"", report(weight=1), report(weight=2), b""]


def test_the_stale_report_is_thrown_away_however_late_it_comes(
    hid: FakeHid, opened: Opened
) -> None:
    scale = hid.plug(FakeScale())
    device = opened()
    assert device.read() == b""
    scale.sends(STALE, report(weight=1))
    assert [device.read(), device.read()] == [b"", report(weight=1)]


def test_a_read_waits_so_long_and_no_longer(hid: FakeHid, opened: Opened) -> None:
    hid.plug(FakeScale())
    opened(0.05).read()
    assert hid.opened[0].limits == [50]


def test_without_patience_a_read_does_not_wait_at_all(hid: FakeHid, opened: Opened) -> None:
    hid.plug(FakeScale())
    assert opened(0.0).read() == b""


def test_a_report_of_full_length_comes_whole(hid: FakeHid, opened: Opened) -> None:
    longest = bytes([3, *range(256)] * 4)[:1025]
    hid.plug(FakeScale()).sends(STALE, longest)
    device = opened()
    device.read()
    assert device.read() == longest


def test_what_the_scale_says_of_its_reports_is_handed_on(
    hid: FakeHid, opened: Opened, descriptors: list[bytes]
) -> None:
    hid.plug(FakeScale(descriptor=SIX_REPORTS))
    opened()
    assert descriptors == [SIX_REPORTS]


def test_a_descriptor_that_cannot_be_read_is_empty(
    hid: FakeHid, opened: Opened, descriptors: list[bytes]
) -> None:
    hid.plug(FakeScale(descriptor=None))
    opened()
    assert descriptors == [b""]


def test_a_pulled_cable_is_a_lost_port(hid: FakeHid, opened: Opened) -> None:
    hid.plug(FakeScale())
    device = opened()
    hid.unplug()
    with pytest.raises(PortLost) as caught:
        device.read()
    assert caught.value.reason is Reason.UNPLUGGED


def test_a_scale_that_is_gone_closes_without_a_word(
    hid: FakeHid, opened: Opened, mocker: MockerFixture
) -> None:
    hid.plug(FakeScale())
    device = opened()
    mocker.patch.object(FakeDevice, "close", side_effect=OSError("gone"))
    device.close()
    device.close()


def test_nothing_is_ever_sent(hid: FakeHid, opened: Opened) -> None:
    hid.plug(FakeScale())
    with pytest.raises(PortLost, match="nothing is sent"):
        opened().write(b"\x02\x02")


@pytest.mark.parametrize(
    ("refusal", "reason"),
    [
        ("No such file or directory", Reason.MISSING),
        ("No such device", Reason.MISSING),
        ("Permission denied", Reason.NOT_ALLOWED),
        ("Device or resource busy", Reason.BUSY),
        ("(0xE00002C5) (iokit/common) exclusive access", Reason.BUSY),
        ("(0xE00002E2) (iokit/common) not permitted", Reason.NOT_ALLOWED),
        ("(0x00000005) Zugriff verweigert", Reason.BUSY),
        ("something new", Reason.OTHER),
    ],
)
def test_a_scale_that_cannot_be_opened_says_why(
    hid: FakeHid, opened: Opened, refusal: str, reason: Reason
) -> None:
    hid.plug(FakeScale(refusal=refusal))
    with pytest.raises(PortUnavailable) as caught:
        opened()
    assert caught.value.reason is reason
    assert refusal in caught.value.detail


def test_a_refused_scale_on_linux_names_the_rule_to_write(
    hid: FakeHid, opened: Opened, mocker: MockerFixture
) -> None:
    mocker.patch("drivers.transports.hid_device.sys.platform", "linux")
    hid.plug(FakeScale(refusal="Permission denied"))
    with pytest.raises(PortUnavailable) as caught:
        opened()
    rule = 'KERNEL=="hidraw*", ATTRS{idVendor}=="1209", ATTRS{idProduct}=="0001", TAG+="uaccess"'
    assert rule in caught.value.detail
    assert "/etc/udev/rules.d/" in caught.value.detail


def test_without_words_from_the_system_the_error_itself_is_told(
    hid: FakeHid, opened: Opened, mocker: MockerFixture
) -> None:
    hid.plug(FakeScale(refusal="x"))
    mocker.patch.object(FakeDevice, "error", side_effect=OSError)
    with pytest.raises(PortUnavailable, match="open failed"):
        opened()


def test_a_scale_that_fails_right_after_opening_is_not_left_open(
    hid: FakeHid, opened: Opened, mocker: MockerFixture
) -> None:
    hid.plug(FakeScale())
    mocker.patch.object(FakeDevice, "set_nonblocking", side_effect=OSError("gone"))
    with pytest.raises(PortUnavailable, match="gone"):
        opened()
    assert hid.closed == hid.opened
