"""``gramstand listen`` at a HID scale."""

from __future__ import annotations

import pytest
from pytest_mock import MockerFixture

from tests.helpers.command import Command
from tests.helpers.fake_hid import STALE, FakeHid, FakeScale, installed
from tests.helpers.hid_reports import BELOW_ZERO, MOVING, report


@pytest.fixture
def hid(mocker: MockerFixture) -> FakeHid:
    return installed(mocker)


def test_prints_each_report(gramstand: Command, hid: FakeHid) -> None:
    hid.plug(FakeScale()).sends(
        STALE, report(MOVING, power=-1, weight=12345), report(BELOW_ZERO, power=-1, weight=10)
    )
    code, told = gramstand.answers(
        "listen", "--scale", "hid:1209:0001:A7", "--readings", "2", "--json"
    )
    assert code == 0
    assert told == [
        {
            "value": "1234.5",
            "unit": "g",
            "grams": "1234.5",
            "stable": False,
            "basis": None,
            "range": "in range",
        },
        {
            "value": "1.0",
            "unit": "g",
            "grams": None,
            "stable": None,
            "basis": None,
            "range": "under",
            "reason": "the balance is below zero and sends no number for that",
        },
    ]


def test_a_scale_that_is_not_there_is_lost(gramstand: Command, hid: FakeHid) -> None:
    code, out, err = gramstand(
        "listen", "--scale", "hid:1209:0001", "--dialect", "hid-scale", "--readings", "1", "--json"
    )
    assert (code, out) == (1, '{"lost": "no such port"}\n')
    assert "hid:1209:0001" in err


def test_another_dialect_is_refused(gramstand: Command, hid: FakeHid) -> None:
    line = gramstand.refusal("listen", "--scale", "hid:1209:0001", "--dialect", "sma")
    assert "speaks hid-scale" in line
