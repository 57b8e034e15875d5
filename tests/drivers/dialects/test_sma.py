"""The conversation with a balance of SMA SCP-0499, written down as requests and answers."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.dialects.sma import Sma
from drivers.events import (
    BalanceEvent,
    CommandDone,
    CommandRefused,
    Identified,
    LineUnreadable,
    ReadingReceived,
)
from drivers.packet import Packet
from tests.helpers.conversation import STEP, converse
from tests.helpers.sma_frames import FRAMES, frame, weight

PLAIN = frame("plain")
HUH = b"\n?\r"
AGAIN = b"\n!\r"
W = (b"W", PLAIN)
# An invented balance with two ranges; the lines as public manuals lay them out.
INFORMATION = [
    (b"I", b"\nSMA:2/1.0\r"), W,
    (b"N", b"\nTYP:S\r"), W,
    (b"N", b"\nCAP:g  :600.0:1:1\r\nCAP:g  :6000:1:0\r"), W,
    (b"N", b"\nCMD:HPTMC\r"), W,
    (b"N", b"\nEND:\r"), W,
]  # fmt: skip
ABOUT = [
    (b"A", b"\nSMA:2/1.0\r"), W,
    (b"B", b"\nMFG:Larch\r"), W,
    (b"B", b"\nMOD:Pan 6\r"), W,
    (b"B", b"\nSN_:0007\r"), W,
    (b"B", b"\nEND:\r"),
]  # fmt: skip
STRANGER = [W, (b"I", HUH), W, (b"A", HUH)]


def identified(events: list[BalanceEvent]) -> list[Identified]:
    return [event for event in events if isinstance(event, Identified)]


def kinds(events: list[BalanceEvent]) -> list[str]:
    return [type(event).__name__ for event in events]


def at_rest() -> tuple[Sma, float]:
    """A dialect that knows its balance, and the time."""
    dialect = Sma("the balance")
    events, now = converse(dialect, STRANGER)
    assert identified(events)
    return dialect, now


def test_a_level_two_balance_is_asked_all_about_itself_between_weights() -> None:
    events, _ = converse(Sma("the balance"), [W, *INFORMATION, *ABOUT, W, W])
    [known] = identified(events)
    assert known.name == "Larch Pan 6"
    assert (known.capacity, known.readability) == (Decimal(6000), Decimal("0.1"))
    assert kinds(events).count("ReadingReceived") == 12


def test_a_level_one_balance_answers_question_marks_and_is_weighed_on() -> None:
    events, _ = converse(Sma("the balance"), [W, (b"I", HUH), W, *ABOUT, W, W])
    [known] = identified(events)
    assert (known.name, known.capacity, known.readability) == ("Larch Pan 6", None, None)
    assert not any(isinstance(event, CommandRefused) for event in events)


def test_a_balance_that_knows_no_question_is_identified_as_unknown() -> None:
    events, _ = converse(Sma("the balance"), [*STRANGER, W, W])
    [known] = identified(events)
    assert (known.name, known.capacity, known.readability) == (None, None, None)


def test_nothing_is_asked_before_the_first_reading() -> None:
    converse(Sma("the balance"), [(b"W", None), (b"W", None), W, (b"I", HUH)])


def test_a_series_ends_when_the_balance_stops_knowing_more() -> None:
    short = [(b"I", b"\nSMA:2/1.0\r"), W, (b"N", HUH), W, (b"A", HUH), W, W]
    events, _ = converse(Sma("the balance"), [W, *short])
    assert len(identified(events)) == 1


def test_a_balance_that_never_says_end_is_not_asked_for_ever() -> None:
    dialect = Sma("the balance")
    endless = [(b"I", b"\nSMA:2/1.0\r"), W, *[(b"N", b"\nOP1:more\r"), W] * 19]
    events, _ = converse(dialect, [W, *endless, (b"A", HUH), W, W])
    assert len(identified(events)) == 1


def test_a_question_that_arrived_damaged_is_asked_again_but_not_for_ever() -> None:
    damaged = [(b"I", AGAIN), W, (b"I", AGAIN), W, (b"I", AGAIN), W, (b"A", HUH), W]
    events, _ = converse(Sma("the balance"), [W, *damaged])
    assert len(identified(events)) == 1


def test_weighing_goes_on_while_a_question_has_no_answer() -> None:
    dialect = Sma("the balance")
    events, now = converse(dialect, [W, (b"I", None), W, W, W, W, W])
    assert now < 1.0
    assert kinds(events) == ["ReadingReceived"] * 6


def test_a_balance_that_ignores_questions_is_identified_after_two_seconds() -> None:
    dialect = Sma("the balance")
    events: list[BalanceEvent] = []
    now = 0.0
    while now < 3.0 and not identified(events):
        asked = dialect.due(now)
        now += STEP
        events += dialect.feed(Packet(now, PLAIN if asked == b"\nW\r" else b""))
    assert 2.0 <= now <= 2.5


@pytest.mark.parametrize(
    ("told", "readability"),
    [
        ("kg_:6000:1:0", "1000"),
        ("g  :620.00:1:2", "0.01"),
        ("g:5000:20:0", "20"),
        ("lb :15:5:3", "2.26796185"),
    ],
)
def test_readability_is_the_step_of_the_last_digit(told: str, readability: str) -> None:
    lines = [(b"I", b"\nCAP:" + told.encode() + b"\r"), W, (b"N", HUH), W, (b"A", HUH), W]
    events, _ = converse(Sma("the balance"), [W, *lines])
    assert identified(events)[0].readability == Decimal(readability)


@pytest.mark.parametrize("told", ["g  :0:1:0", "g  :600:0:1", "stn:600:1:1", "g:600", "g:6e2:1:1"])
def test_a_capacity_that_makes_no_sense_is_not_known(told: str) -> None:
    lines = [(b"I", b"\nCAP:" + told.encode() + b"\r"), W, (b"N", HUH), W, (b"A", HUH), W]
    events, _ = converse(Sma("the balance"), [W, *lines])
    assert (identified(events)[0].capacity, identified(events)[0].readability) == (None, None)


def test_weights_are_asked_for_at_most_ten_times_a_second() -> None:
    dialect, now = at_rest()
    sent = 0
    for tick in range(1000):
        at = now + tick / 1000
        if dialect.due(at):
            sent += 1
            dialect.feed(Packet(at, PLAIN))
    assert 9 <= sent <= 11


def test_a_weight_without_an_answer_is_asked_for_again_after_a_second() -> None:
    dialect, now = at_rest()
    converse(dialect, [(b"W", None)], now)
    sent = [at for at in range(40) if dialect.due(now + at * STEP)]
    assert sent[0] * STEP == pytest.approx(1.0, abs=0.06)


def test_the_first_request_is_due_at_once() -> None:
    assert Sma("the balance").due(0.0) == b"\nW\r"


def test_after_a_reset_everything_begins_anew() -> None:
    dialect, now = at_rest()
    dialect.feed(Packet(now, PLAIN[:7]))
    dialect.reset(now)
    events, _ = converse(dialect, [*STRANGER, W], now)
    assert kinds(events) == ["ReadingReceived", "ReadingReceived", "Identified", "ReadingReceived"]


def test_a_request_for_weight_that_is_not_understood_is_told_and_not_hurried() -> None:
    dialect = Sma("the balance")
    events, now = converse(dialect, [(b"W", HUH), (b"W", HUH)])
    assert now >= 1.0
    assert events == [
        CommandRefused(command="weigh", reason="the balance does not know this request", at=at)
        for at in (STEP, pytest.approx(now))
    ]


def test_a_request_for_weight_that_arrived_damaged_is_sent_again_soon() -> None:
    _, now = converse(Sma("the balance"), [(b"W", AGAIN), W])
    assert now <= 0.2


def test_a_question_mark_that_nobody_asked_for_is_passed_over() -> None:
    dialect, now = at_rest()
    converse(dialect, [W], now)
    assert dialect.feed(Packet(now + STEP, HUH)) == []


def test_zero_is_done_when_the_answer_shows_centre_of_zero() -> None:
    dialect, now = at_rest()
    dialect.zero()
    events, then = converse(dialect, [(b"Z", weight("0.00", status="Z"))], now)
    assert kinds(events) == ["ReadingReceived", "CommandDone"]
    assert events[1] == CommandDone(command="zero", at=then)


def test_zero_waits_until_the_weight_has_its_answer() -> None:
    dialect, now = at_rest()
    converse(dialect, [(b"W", None)], now)
    dialect.zero()
    assert dialect.due(now + 0.5) == b""
    dialect.feed(Packet(now + 0.5, PLAIN))
    assert dialect.due(now + 0.5) == b"\nZ\r"


def test_zero_does_not_wait_for_ever() -> None:
    dialect, now = at_rest()
    converse(dialect, [(b"W", None)], now)
    dialect.zero()
    assert dialect.due(now + 1.5) == b"\nZ\r"


@pytest.mark.parametrize(
    ("answer", "reason"),
    [
        (weight("-" * 10, status="E"), "the balance could not set itself to zero"),
        (weight("-" * 10, status="I"), "the balance found no zero when it was switched on"),
        (HUH, "the balance does not know this request"),
    ],
)
def test_zero_is_refused_by_the_answer(answer: bytes, reason: str) -> None:
    dialect, now = at_rest()
    dialect.zero()
    events, then = converse(dialect, [(b"Z", answer), W], now)
    assert CommandRefused(command="zero", reason=reason, at=pytest.approx(now + STEP)) in events
    assert then - now < 1.0


def refusal(events: list[BalanceEvent]) -> str:
    [refused] = [event for event in events if isinstance(event, CommandRefused)]
    return refused.reason


def test_zero_without_any_answer_is_refused_after_a_second() -> None:
    dialect, now = at_rest()
    dialect.zero()
    events, then = converse(dialect, [(b"Z", None), W], now)
    assert refusal(events) == "the balance did not answer"
    assert 1.0 <= then - now <= 1.2


def test_zero_that_shows_another_number_is_refused_after_a_second() -> None:
    dialect, now = at_rest()
    dialect.zero()
    events, _ = converse(dialect, [(b"Z", PLAIN), *[W] * 12], now)
    assert refusal(events) == "the balance did not go to zero"


def test_zero_that_comes_a_little_later_is_done() -> None:
    dialect, now = at_rest()
    dialect.zero()
    moving = weight("12.00", motion="M")
    events, _ = converse(dialect, [(b"Z", moving), (b"W", weight("0.00")), *[W] * 12], now)
    assert [event for event in events if isinstance(event, CommandDone)]
    assert not [event for event in events if isinstance(event, CommandRefused)]


@pytest.mark.parametrize(
    "shown", [weight("0.00", kind="N"), weight("0.00", motion="M"), weight("-" * 10)]
)
def test_zero_is_not_done_by_a_number_that_proves_nothing(shown: bytes) -> None:
    dialect, now = at_rest()
    dialect.zero()
    events, _ = converse(dialect, [(b"Z", shown), *[W] * 12], now)
    assert refusal(events) == "the balance did not go to zero"


def test_zero_that_arrives_damaged_is_asked_three_times() -> None:
    dialect, now = at_rest()
    dialect.zero()
    events, _ = converse(dialect, [(b"Z", AGAIN), (b"Z", AGAIN), (b"Z", AGAIN), W], now)
    assert refusal(events) == "the request does not get through to the balance"


def test_zero_wanted_twice_is_asked_once() -> None:
    dialect, now = at_rest()
    dialect.zero()
    dialect.zero()
    converse(dialect, [(b"Z", weight("0.00", status="Z")), W, W], now)


def test_a_reset_forgets_a_wanted_zero() -> None:
    dialect, now = at_rest()
    dialect.zero()
    dialect.reset(now)
    assert dialect.due(now) == b"\nW\r"


def test_a_balance_that_sends_on_its_own_is_heard() -> None:
    dialect = Sma("the balance")
    events: list[BalanceEvent] = []
    for tick in range(60):
        dialect.due(tick * STEP)
        events += dialect.feed(Packet(tick * STEP, PLAIN))
    assert kinds(events).count("ReadingReceived") == 60
    assert len(identified(events)) == 1


def test_boot_text_and_echoed_keys_between_frames_are_no_readings() -> None:
    data = b"\r\nSELF TEST OK\r\n" + PLAIN + b"W" + b"\nW\r" + PLAIN
    events = Sma("the balance").feed(Packet(0.0, data))
    assert kinds(events).count("ReadingReceived") == 2
    assert {event.raw for event in events if isinstance(event, LineUnreadable)} >= {b"W", b"\nW\r"}


def test_diagnostics_that_nobody_asked_for_tell_nothing() -> None:
    assert Sma("the balance").feed(Packet(0.0, b"\n    \r")) == []


def test_no_reading_comes_out_of_a_torn_frame() -> None:
    torn = PLAIN[:11] + weight("999.99")[14:]
    events = Sma("the balance").feed(Packet(0.0, torn + PLAIN[:15] + PLAIN))
    readings = [event.reading.raw for event in events if isinstance(event, ReadingReceived)]
    assert readings == [PLAIN]


STREAM = st.lists(
    st.binary(max_size=30)
    | st.sampled_from([*map(frame, FRAMES), HUH, AGAIN, PLAIN[:9], PLAIN[9:], b"\nEND:\r"]),
    max_size=12,
).map(b"".join)


@settings(deadline=None)
@given(STREAM, st.lists(st.integers(0, 300), max_size=10), st.booleans())
def test_no_bytes_can_make_it_raise_or_differ_by_where_they_are_cut(
    data: bytes, cuts: list[int], zero: bool
) -> None:
    whole, cut = Sma("the balance"), Sma("the balance")
    for dialect in (whole, cut):
        dialect.due(0.0)
        if zero:
            dialect.zero()
    ends = [*sorted(cuts), len(data)]
    in_parts: list[BalanceEvent] = []
    for start, end in zip([0, *ends], ends, strict=False):
        in_parts += cut.feed(Packet(0.5, data[start:end]))
    at_once = whole.feed(Packet(0.5, data))
    assert [event for event in in_parts if not isinstance(event, Identified)] == [
        event for event in at_once if not isinstance(event, Identified)
    ]
    assert len(identified(in_parts)) == len(identified(at_once))


@settings(deadline=None)
@given(st.lists(st.binary(max_size=40), max_size=20))
def test_every_reading_is_a_whole_frame_that_was_sent(chunks: list[bytes]) -> None:
    dialect = Sma("the balance")
    events = [event for chunk in chunks for event in dialect.feed(Packet(0.0, chunk))]
    sent = b"".join(chunks)
    for event in events:
        if isinstance(event, ReadingReceived):
            raw = event.reading.raw
            assert len(raw) == 20
            assert raw in sent
            assert raw.count(b"\n") == 1
