"""A HID scale as a Balance: from the address to readings, through every loss of its cable."""

import time
from decimal import Decimal

import pytest
from pytest_mock import MockerFixture

from drivers.balance import Balance, open_balance, usual_dialect
from drivers.errors import BadAddress, Reason
from drivers.events import Back, CommandRefused, Lost, ReadingReceived
from tests.helpers.event_log import EventLog
from tests.helpers.fake_hid import STALE, FakeHid, FakeScale, installed
from tests.helpers.hid_reports import DATA, identified, report, scale

A7 = "hid:1209:0001:A7"


@pytest.fixture
def hid(mocker: MockerFixture) -> FakeHid:
    return installed(mocker)


@pytest.fixture
def log() -> EventLog:
    return EventLog()


def balance(log: EventLog, where: str = A7, **more: str) -> Balance:
    """One that a test pumps, on a clock that goes on by a second a look."""
    times = iter(range(10_000))
    return open_balance(
        where, publish=log, clock=lambda: float(next(times)), wait=lambda _: None, **more
    )


def pump(it: Balance, turns: int) -> None:
    for _ in range(turns):
        it.pump()


def masses(log: EventLog) -> list[Decimal | None]:
    return [event.reading.grams for event in log.of(ReadingReceived)]


def test_a_hid_address_is_heard_without_naming_a_dialect(hid: FakeHid, log: EventLog) -> None:
    hid.plug(FakeScale()).sends(STALE, report(power=-1, weight=123))
    pump(balance(log), 3)
    assert [type(event) for event in log.events] == [Back, ReadingReceived]
    assert masses(log) == [Decimal("12.3")]
    assert log.of(ReadingReceived)[0].reading.balance == A7


def test_reports_are_read_as_this_scale_describes_them(hid: FakeHid, log: EventLog) -> None:
    nine = scale(identified(9), DATA)
    hid.plug(FakeScale(descriptor=nine)).sends(STALE, report(weight=5, report_id=9))
    pump(balance(log), 3)
    assert masses(log) == [Decimal(5)]


def test_after_an_unplug_it_is_found_under_another_path(hid: FakeHid, log: EventLog) -> None:
    mine = hid.plug(FakeScale(), b"/dev/hidraw0")
    mine.sends(STALE, report(weight=1))
    it = balance(log)
    pump(it, 3)
    hid.unplug(b"/dev/hidraw0")
    hid.plug(FakeScale("B1"), b"/dev/hidraw0").sends(STALE, report(weight=99))
    pump(it, 3)
    mine.sends(STALE, report(weight=2))
    hid.plug(mine, b"/dev/hidraw5")
    pump(it, 4)
    assert [type(event) for event in log.events] == [
        Back, ReadingReceived, Lost, Back, ReadingReceived,
    ]  # fmt: skip
    assert log.of(Lost)[0].reason is Reason.UNPLUGGED
    assert masses(log) == [1, 2]


def test_a_refused_scale_is_lost_with_its_reason(hid: FakeHid, log: EventLog) -> None:
    hid.plug(FakeScale(refusal="Permission denied"))
    pump(balance(log), 3)
    [lost] = log.of(Lost)
    assert lost.reason is Reason.NOT_ALLOWED


def test_zero_is_refused_with_the_hand_it_takes(hid: FakeHid, log: EventLog) -> None:
    hid.plug(FakeScale())
    it = balance(log)
    pump(it, 1)
    it.zero()
    pump(it, 2)
    [refused] = log.of(CommandRefused)
    assert (refused.command, "press it" in refused.reason) == ("zero", True)


def test_a_silent_scale_closes_at_once(hid: FakeHid, log: EventLog) -> None:
    hid.plug(FakeScale())
    it = open_balance(A7, publish=log)
    it.start()
    log.wait_for(Back)
    begun = time.monotonic()
    it.close()
    assert time.monotonic() - begun < 1.0
    assert hid.closed == hid.opened


@pytest.mark.parametrize(
    ("where", "dialect"),
    [
        ("hid:1209:0001", "hid-scale"),
        ("COM3", "sma"),
        ("socket://h:1", "sma"),
        ("simulated", "sma"),
    ],
)
def test_each_address_has_its_usual_dialect(where: str, dialect: str) -> None:
    assert usual_dialect(where) == dialect


@pytest.mark.parametrize(
    ("where", "dialect", "says"),
    [
        (A7, "sma", "is a HID scale and speaks hid-scale, not sma; leave the dialect out"),
        ("COM3", "hid-scale", "sends no HID reports, so it cannot speak hid-scale"),
        ("hid:", "hid-scale", "names no scale; gramstand balances lists"),
    ],
)
def test_an_address_and_a_dialect_that_do_not_fit_are_refused(
    log: EventLog, where: str, dialect: str, says: str
) -> None:
    with pytest.raises(BadAddress, match=says):
        balance(log, where, dialect=dialect)
