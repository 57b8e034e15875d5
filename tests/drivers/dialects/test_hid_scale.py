"""The dialect of HID scales: what it makes of packets, and that it never sends anything."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.dialects.hid_scale import HidScale
from drivers.events import BalanceEvent, CommandRefused, LineUnreadable, ReadingReceived
from drivers.packet import Packet
from tests.helpers import hid_reports as hid
from tests.helpers.hid_reports import report

NINE = hid.scale(hid.identified(9), hid.DATA)
WITH_LONG_ONE = hid.scale(
    hid.identified(3),
    hid.DATA,
    hid.identified(8),
    hid.items((hid.BITS, 8), (hid.COUNT, 20), (hid.INPUT, 2)),
)


@pytest.fixture
def scale() -> HidScale:
    return HidScale("b")


def heard(scale: HidScale, raw: bytes) -> list[BalanceEvent]:
    """What one report tells."""
    return scale.feed(Packet(1.0, raw))


def grams(scale: HidScale, raw: bytes) -> str | None:
    """The mass in one report, None if it tells none."""
    events = heard(scale, raw)
    masses = [event.reading.grams for event in events if isinstance(event, ReadingReceived)]
    return f"{masses[0]:f}" if masses and masses[0] is not None else None


def test_before_a_descriptor_is_known_the_standard_report_is_read(scale: HidScale) -> None:
    assert grams(scale, report(weight=14)) == "14"


@pytest.mark.parametrize("descriptor", [b"", hid.scale(), b"\x05"])
def test_a_descriptor_that_tells_nothing_leaves_the_standard_report(
    scale: HidScale, descriptor: bytes
) -> None:
    scale.described(descriptor)
    assert grams(scale, report(weight=14)) == "14"


def test_a_described_report_is_read_as_described(scale: HidScale) -> None:
    scale.described(NINE)
    assert grams(scale, report(weight=14, report_id=9)) == "14"
    assert grams(scale, report(weight=14)) is None


def test_a_scale_without_report_ids_is_read(scale: HidScale) -> None:
    scale.described(hid.scale(hid.DATA))
    assert grams(scale, report(weight=14)[1:]) == "14"
    assert heard(scale, bytes(5)) == []


def test_the_layout_holds_until_the_next_descriptor(scale: HidScale) -> None:
    scale.described(NINE)
    scale.reset(2.0)
    assert grams(scale, report(weight=14, report_id=9)) == "14"
    scale.described(b"")
    assert grams(scale, report(weight=14)) == "14"


@pytest.mark.parametrize(
    "raw",
    [b"", bytes(1), bytes(6), bytes(64), report(status=0, weight=9), report(weight=9, report_id=0)],
)
def test_nothing_zeros_no_id_and_no_status_tell_nothing(scale: HidScale, raw: bytes) -> None:
    assert heard(scale, raw) == []


def test_a_status_report_alone_tells_nothing(scale: HidScale) -> None:
    assert heard(scale, bytes([4, hid.STABLE])) == []


def test_a_report_that_the_descriptor_names_tells_nothing(scale: HidScale) -> None:
    scale.described(WITH_LONG_ONE)
    assert heard(scale, bytes([8, *range(20)])) == []


def test_an_unknown_report_is_unreadable(scale: HidScale) -> None:
    raw = report(report_id=9, weight=14)
    assert heard(scale, raw) == [LineUnreadable(raw=raw, at=1.0)]


@pytest.mark.parametrize("raw", [report(weight=14)[:5], report(weight=14) + b"\0", b"\x03"])
def test_a_report_of_another_length_is_unreadable(scale: HidScale, raw: bytes) -> None:
    assert heard(scale, raw) == [LineUnreadable(raw=raw, at=1.0)]


def test_a_report_filled_up_to_the_longest_one_is_read(scale: HidScale) -> None:
    scale.described(WITH_LONG_ONE)
    assert grams(scale, report(weight=14) + bytes(15)) == "14"


@pytest.mark.parametrize("filling", [bytes(14), bytes(16), bytes(14) + b"\1"])
def test_a_report_filled_up_in_another_way_is_not(scale: HidScale, filling: bytes) -> None:
    scale.described(WITH_LONG_ONE)
    [event] = heard(scale, report(weight=14) + filling)
    assert isinstance(event, LineUnreadable)


def test_zero_is_refused_with_what_to_do_and_nothing_is_sent(scale: HidScale) -> None:
    scale.zero()
    assert scale.due(1.0) == b""
    [refused] = scale.feed(Packet(1.5, b""))
    assert isinstance(refused, CommandRefused)
    assert (refused.command, refused.at) == ("zero", 1.5)
    assert "press it" in refused.reason
    assert scale.feed(Packet(1.6, b"")) == []


def test_a_wish_for_zero_does_not_outlive_the_port(scale: HidScale) -> None:
    scale.zero()
    scale.reset(2.0)
    assert scale.feed(Packet(2.1, b"")) == []


@given(st.sampled_from([b"", hid.SIX_REPORTS, NINE, WITH_LONG_ONE]), st.binary(max_size=70))
def test_no_bytes_make_it_fail_or_invent_a_mass(descriptor: bytes, raw: bytes) -> None:
    scale = HidScale("b")
    scale.described(descriptor)
    if grams(scale, raw) is not None:
        assert raw[0] == (9 if descriptor == NINE else 3)
        assert raw[1] in (hid.AT_ZERO, hid.MOVING, hid.STABLE)
        assert raw[2] in range(1, 13)
        assert len(raw) == 6 or (descriptor == WITH_LONG_ONE and len(raw) == 21)


@given(st.integers(1, 255), st.integers(0, 255), st.integers(-128, 127), st.integers(0, 65535))
def test_a_well_formed_report_has_a_mass_or_a_reason(
    status: int, unit: int, power: int, weight: int
) -> None:
    [event] = heard(HidScale("b"), report(status, unit, power, weight))
    assert isinstance(event, ReadingReceived)
    assert (event.reading.grams is None) == (event.reading.reason is not None)


@given(st.binary(max_size=90), st.binary(max_size=40))
def test_no_descriptor_makes_a_report_fail(descriptor: bytes, raw: bytes) -> None:
    scale = HidScale("b")
    scale.described(hid.scale(descriptor, hid.DATA))
    heard(scale, raw)
