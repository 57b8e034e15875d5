"""The faults of a HID scale, at the binding's boundary: its statuses, its units, its cable."""

from __future__ import annotations

import pytest

from tests.helpers.fake_hid import STALE
from tests.helpers.hid_reports import (
    BELOW_ZERO,
    FAULT,
    GRAM,
    STABLE,
    TAEL,
    TOO_MUCH,
    UNCALIBRATED,
    ZERO_GONE,
    report,
)
from tests.helpers.spoken import HidJourney

EMPTY_G = 12.3
BACK_WITHIN_S = 2.0


@pytest.mark.parametrize(
    ("sent", "title"),
    [
        (report(FAULT, GRAM, -1, 0), "The scale reports an error."),
        (report(UNCALIBRATED, GRAM, -1, 0), "The scale asks to be calibrated."),
        (report(ZERO_GONE, GRAM, -1, 0), "The scale found no zero."),
        (report(BELOW_ZERO, GRAM, -1, 123), "Below zero. Empty the pan."),
        (report(TOO_MUCH, GRAM, -1, 0), "Too heavy. Take something off."),
        (report(STABLE, TAEL, -1, 3), "The scale shows no grams."),
    ],
)
def test_each_status_has_its_sentence_and_its_way_back(
    hid_journey: HidJourney, sent: bytes, title: str
) -> None:
    hid_journey.wait(1.0)
    hid_journey.ask_for_cup()
    hid_journey.instead = sent
    hid_journey.until_title(title)
    assert hid_journey.rows("weighings") == 0
    hid_journey.instead = None
    hid_journey.clear()
    hid_journey.put(EMPTY_G)
    hid_journey.until_title("Cup 1 weighs 12.3 g.")


def test_within_two_seconds_of_its_cable_readings_flow_again(hid_journey: HidJourney) -> None:
    hid_journey.wait(1.0)
    hid_journey.ask_for_cup()
    hid_journey.put(EMPTY_G)
    scale = hid_journey.scale
    assert scale is not None
    hid_journey.module.unplug()
    hid_journey.until_title("The scale is unplugged.")
    scale.reports.clear()
    scale.sends(STALE)
    hid_journey.module.plug(scale)
    hid_journey.wait(BACK_WITHIN_S)
    assert hid_journey.kiosk.station.watch.state.readings_flow
    assert hid_journey.rows("weighings") == 0
    hid_journey.clear()
    hid_journey.put(EMPTY_G)
    hid_journey.until_title("Cup 1 weighs 12.3 g.")
