"""The dialect that only listens: what it hears, drops and refuses."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.dialects.lines import Lines
from drivers.events import (
    BalanceEvent,
    CommandRefused,
    Identified,
    LineUnreadable,
    ReadingReceived,
)
from drivers.line_shape import LineShape, Mark, Place, Terminator
from drivers.packet import Packet

FULL = b"ST,+00123.45  g\r\n"
SHAPE = LineShape(
    name="it", lengths=(15,), stable=Mark(text="ST", place=Place.BEFORE),
    readability=Decimal("0.01"), port_settings="4800-7E1",
)  # fmt: skip
WRAPPED = LineShape(name="it", terminator=Terminator.STX_ETX)
LINES = st.lists(
    st.sampled_from(
        [FULL, FULL[:7], FULL[7:], b"US,-00000.12  g\r", b"12,5 kg\r", b"OL\r", b"\x02-1.5 g\x03",
         b"E+9", b"g" * 70, b"9" * 30, b"[", b"]\r", b"- ", b".,;", b"\x00\xff"]
    ) | st.binary(max_size=12)
).map(b"".join)  # fmt: skip


def values(events: list[BalanceEvent]) -> list[str | None]:
    """The grams of the readings."""
    readings = [event.reading for event in events if isinstance(event, ReadingReceived)]
    return [None if reading.grams is None else str(reading.grams) for reading in readings]


@pytest.mark.parametrize("shape", [None, SHAPE, WRAPPED])
@given(data=LINES, size=st.integers(1, 15))
@settings(max_examples=60)
def test_arbitrary_bytes_never_raise_and_may_be_cut_anywhere(
    shape: LineShape | None, data: bytes, size: int
) -> None:
    cut = Lines("b", shape)
    events = [
        event
        for at in range(0, len(data), size)
        for event in cut.feed(Packet(1.0, data[at : at + size]))
    ]
    assert events == Lines("b", shape).feed(Packet(1.0, data))


@given(st.integers(0, 2 * len(FULL)), st.integers(1, len(FULL) - 1))
def test_a_torn_line_of_known_length_gives_no_mass(start: int, lost: int) -> None:
    stream = FULL * 4
    torn = stream[:start] + stream[start + lost :]
    assert set(values(Lines("b", SHAPE).feed(Packet(1.0, b"\r" + torn)))) <= {"123.45"}


@pytest.mark.parametrize("cut", range(1, len(FULL)))
@pytest.mark.parametrize("shape", [None, SHAPE])
def test_a_line_cut_at_its_start_after_opening_is_dropped(
    cut: int, shape: LineShape | None
) -> None:
    dialect = Lines("b", shape)
    dialect.reset(0.0)
    events = dialect.feed(Packet(0.01, FULL[cut:] + FULL))
    assert values(events) == ["123.45"]


def test_a_first_line_is_heard_once_the_next_shows_that_it_was_whole() -> None:
    dialect = Lines("b")
    dialect.reset(0.0)
    assert dialect.feed(Packet(0.01, b"US,-00000.12  g\r\n")) == []
    [first, second] = dialect.feed(Packet(0.2, FULL))
    assert isinstance(first, ReadingReceived)
    assert first.reading.at == 0.01
    assert values([first, second]) == ["-0.12", "123.45"]


def test_digits_at_the_very_start_may_have_lost_others() -> None:
    dialect = Lines("b")
    dialect.reset(0.0)
    assert values(dialect.feed(Packet(0.01, b"23.45 g\r\n87.12 g\r\n"))) == ["87.12"]


def test_after_silence_the_first_line_is_whole() -> None:
    dialect = Lines("b")
    dialect.reset(10.0)
    assert dialect.feed(Packet(10.1, b"")) == []
    assert values(dialect.feed(Packet(10.2, b"12.3 g\r\n"))) == ["12.3"]


def test_after_another_opening_everything_is_forgotten() -> None:
    dialect = Lines("b")
    dialect.feed(Packet(0.0, b"\r12"))
    dialect.reset(1.0)
    assert values(dialect.feed(Packet(1.01, b".3 g\r45.6 g\r"))) == ["45.6"]


def test_nothing_is_ever_sent() -> None:
    dialect = Lines("b", SHAPE)
    dialect.zero()
    assert dialect.due(0.0) == b""


def test_zero_is_refused_with_what_to_do() -> None:
    dialect = Lines("b")
    dialect.zero()
    [refused] = dialect.feed(Packet(3.0, b""))
    assert refused == CommandRefused(
        command="zero",
        reason="this balance takes no requests: press its own zero key",
        at=3.0,
    )
    assert dialect.feed(Packet(4.0, b"")) == []


def test_the_readability_that_was_learned_is_told_once_in_grams() -> None:
    shape = SHAPE.model_copy(update={"unit": "oz", "lengths": ()})
    dialect = Lines("b", shape)
    events = dialect.feed(Packet(1.0, b"\r12.34 g\r1.23 oz\r1.24 oz\r"))
    assert [event for event in events if isinstance(event, Identified)] == [
        Identified(name="it", capacity=None, readability=Decimal("0.28349523125"), at=1.0)
    ]
    assert isinstance(events[1], ReadingReceived)  # in grams nothing is known of the step


def test_the_unit_sent_last_holds_for_moving_lines_until_another_opening() -> None:
    dialect = Lines("b", LineShape(name="it", unit_lacks_while_moving=True))
    assert values(dialect.feed(Packet(1.0, b"\r1.5 kg\r1.6\r"))) == ["1500.0", "1600.0"]
    dialect.reset(2.0)
    assert values(dialect.feed(Packet(3.0, b"1.6\r"))) == [None]


def test_a_line_without_its_stx_is_none_of_a_balance_that_wraps_them() -> None:
    events = Lines("b", WRAPPED).feed(Packet(1.0, b"\r12.3 g\r\x0212.3 g\x03"))
    assert [type(event) for event in events] == [LineUnreadable, ReadingReceived]


def test_it_is_called_by_its_shape() -> None:
    assert (Lines("b").name, Lines("b", SHAPE).name) == ("lines", "it")


def drip(data: bytes, *, every_s: float) -> list[BalanceEvent]:
    """Each byte in a packet of its own."""
    lines = Lines("b")
    return [
        event
        for place, byte in enumerate(data)
        for event in lines.feed(Packet(place * every_s, bytes([byte])))
    ]


def test_bytes_without_an_end_are_told_of_each_second() -> None:
    told = drip(b"\x86\xff" * 20, every_s=0.1)
    assert [type(event) for event in told] == [LineUnreadable] * 3
    assert [round(event.at, 1) for event in told] == [1.0, 2.0, 3.0]


def test_a_slow_line_is_no_endless_one() -> None:
    told = drip(b"\r" + FULL + FULL, every_s=0.04)
    assert [type(event) for event in told] == [ReadingReceived] * 2


def test_a_line_that_begins_long_after_the_last_is_no_endless_one() -> None:
    lines = Lines("b")
    lines.feed(Packet(0.0, b"\r" + FULL))
    told = lines.feed(Packet(30.0, FULL[:5])) + lines.feed(Packet(30.1, FULL[5:]))
    assert [type(event) for event in told] == [ReadingReceived]
