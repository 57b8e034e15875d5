"""Where the mass stands, by descriptors that are published, made, odd and torn."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.dialects.hid_descriptor import layout_of
from drivers.dialects.hid_layout import STANDARD, Field, Layout
from tests.helpers import hid_reports as hid

ALONE = replace(STANDARD, others=frozenset())


def told(descriptor: bytes) -> Layout:
    """The layout of a descriptor that has one."""
    layout = layout_of(descriptor)
    assert layout is not None
    return layout


def test_the_smallest_descriptor_says_id_3_and_six_bytes() -> None:
    assert len(hid.SMALLEST) == 67
    assert told(hid.SMALLEST) == ALONE


def test_of_six_reports_the_input_report_is_taken_not_the_weight_limit() -> None:
    assert told(hid.SIX_REPORTS) == ALONE


def test_any_report_id_may_carry_the_data() -> None:
    assert told(hid.scale(hid.identified(9), hid.DATA)) == replace(ALONE, report_id=9)


def test_without_ids_a_report_begins_with_its_first_field() -> None:
    layout = told(hid.scale(hid.DATA))
    assert (layout.report_id, layout.size, layout.status.offset, layout.weight.offset) == (
        0, 5, 0, 3,
    )  # fmt: skip


def test_order_and_padding_are_followed() -> None:
    mixed = hid.WEIGHT + hid.padding(16) + hid.UNIT + hid.STATUS + hid.SCALING
    layout = told(hid.scale(hid.identified(3), mixed))
    places = [layout.weight, layout.unit, layout.status, layout.scaling]
    assert [field.offset for field in places] == [1, 5, 6, 7]
    assert layout.size == 8


def test_padding_that_is_no_whole_byte_counts_for_the_size() -> None:
    layout = told(hid.scale(hid.identified(3), hid.DATA, hid.padding(3)))
    assert layout.size == 7


def test_other_input_reports_are_known_and_how_long_the_longest_is() -> None:
    own = hid.identified(8) + hid.items((hid.BITS, 8), (hid.COUNT, 20), (hid.INPUT, 2))
    layout = told(hid.scale(hid.identified(4), hid.STATUS, own, hid.identified(3), hid.DATA))
    assert layout.others == {4, 8}
    assert (layout.size, layout.longest) == (6, 21)


def test_two_numbers_of_one_item_stand_one_after_the_other() -> None:
    both = hid.items(
        (hid.BITS, 16), (hid.COUNT, 2), (hid.USAGE, 0x40), (hid.USAGE, 0x41), (hid.INPUT, 2)
    )
    layout = told(hid.scale(hid.identified(3), hid.STATUS, hid.UNIT, both))
    assert (layout.weight, layout.scaling) == (Field(3, 2), Field(5, 2, signed=True))


def test_a_weight_may_be_longer_and_have_a_sign() -> None:
    long_one = hid.variable(0x40, 32, lowest=-(2**31))
    layout = told(hid.scale(hid.identified(3), hid.STATUS, hid.UNIT, hid.SCALING, long_one))
    assert layout.weight == Field(4, 4, signed=True)


def test_the_power_of_ten_has_a_sign_whatever_is_said() -> None:
    unsigned = hid.variable(0x41, 8, lowest=0)
    layout = told(hid.scale(hid.identified(3), hid.STATUS, hid.UNIT, unsigned, hid.WEIGHT))
    assert layout.scaling == STANDARD.scaling


def test_units_that_are_listed_one_by_one_are_counted_in_that_order() -> None:
    two = hid.items(
        (hid.LOWEST, 1), (hid.BITS, 8), (hid.COUNT, 1),
        (hid.USAGE, 0x52), (hid.USAGE, 0x5B), (hid.INPUT, 0),
    )  # fmt: skip
    layout = told(hid.scale(hid.identified(3), hid.STATUS, two, hid.SCALING, hid.WEIGHT))
    assert [layout.unit.usage(bytes([3, 4, number])) for number in (0, 1, 2, 3)] == [
        None, 0x52, 0x5B, None,
    ]  # fmt: skip


def test_a_row_may_begin_with_number_nought() -> None:
    from_nought = hid.array(0x51, 0x5C, lowest=0)
    layout = told(hid.scale(hid.identified(3), hid.STATUS, from_nought, hid.SCALING, hid.WEIGHT))
    assert layout.unit.usage(bytes([3, 4, 1])) == 0x52


@pytest.mark.parametrize("flag", [hid.ARRAY, hid.VARIABLE])
def test_a_field_named_status_or_unit_has_the_numbers_of_the_tables(flag: int) -> None:
    one_byte = hid.items((hid.BITS, 8), (hid.COUNT, 1))
    status = hid.items((hid.USAGE, 0x70), (hid.INPUT, flag))
    unit = hid.items((hid.USAGE, 0x50), (hid.INPUT, flag))
    rest = hid.SCALING + hid.WEIGHT
    assert told(hid.scale(hid.identified(3), one_byte, status, unit, rest)) == ALONE


def test_a_usage_may_bring_its_page_along() -> None:
    foreign = hid.items((hid.PAGE, 1)) + b"".join(
        [
            hid.items((hid.LOWEST, 1), (hid.BITS, 8), (hid.COUNT, 1)),
            hid.items((hid.FIRST, 0x8D0071), (hid.LAST, 0x8D0078), (hid.INPUT, 0)),
            hid.items((hid.FIRST, 0x8D0051), (hid.LAST, 0x8D005C), (hid.INPUT, 0)),
            hid.variable(0x8D0041, 8),
            hid.variable(0x8D0040, 16),
        ]
    )
    assert told(hid.scale(hid.identified(3), foreign)) == ALONE


def test_what_was_put_aside_comes_back() -> None:
    aside = hid.items((hid.PUSH, None), (hid.PAGE, 1), (hid.REPORT_ID, 7), (hid.POP, None))
    assert told(hid.scale(hid.identified(3), aside, hid.DATA)) == ALONE


def test_long_items_are_passed_over() -> None:
    long_item = bytes([0xFE, 4, 0xF0, 0x85, 7, 0x85, 7])
    assert told(hid.scale(hid.identified(3), long_item, hid.DATA)) == ALONE


@pytest.mark.parametrize(
    "reports",
    [
        [],
        [hid.STATUS, hid.UNIT, hid.SCALING],
        [hid.UNIT, hid.SCALING, hid.WEIGHT],
        [hid.identified(3), hid.STATUS, hid.UNIT, hid.identified(4), hid.SCALING, hid.WEIGHT],
        [hid.padding(4), hid.DATA],
        [hid.STATUS, hid.UNIT, hid.SCALING, hid.variable(0x40, 12)],
        [hid.STATUS, hid.UNIT, hid.SCALING, hid.variable(0x40, 64)],
        [hid.STATUS, hid.UNIT, hid.SCALING, hid.variable(0x40, 16, count=0)],
        [hid.item(hid.PAGE, 0x8E), hid.DATA],
    ],
    ids=["nothing", "no weight", "no status", "in two reports", "between bytes", "no whole byte",
         "too long", "no room", "another page"],
)  # fmt: skip
def test_what_cannot_be_read_is_no_layout(reports: list[bytes]) -> None:
    assert layout_of(hid.scale(*reports)) is None


def test_a_row_without_end_does_not_fill_the_memory() -> None:
    endless = hid.items((hid.FIRST, 0x71), (hid.LAST, 0x8D0000 + 0xFFFF), (hid.INPUT, 0))
    layout = told(hid.scale(hid.items((hid.BITS, 8), (hid.COUNT, 1)), endless, hid.DATA))
    assert len(layout.status.usages) == 256


@given(st.binary(max_size=200))
def test_no_bytes_make_it_fail(descriptor: bytes) -> None:
    layout_of(descriptor)


@given(st.integers(0, len(hid.SIX_REPORTS) - 1), st.integers(0, 255))
def test_no_changed_byte_makes_it_fail(place: int, byte: int) -> None:
    changed = bytearray(hid.SIX_REPORTS)
    changed[place] = byte
    layout_of(bytes(changed))


@pytest.mark.parametrize("length", range(len(hid.SMALLEST) - 3))
def test_a_descriptor_torn_before_the_weight_has_no_layout(length: int) -> None:
    assert layout_of(hid.SMALLEST[:length]) is None
