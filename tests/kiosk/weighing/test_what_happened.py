"""What a pan watch makes of readings written by hand: one event an episode."""

from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.reading import Range
from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble
from kiosk.weighing.pan_watch import PanPhase
from tests.helpers.readings import Stream


def kinds(events: list[PanEvent]) -> list[str]:
    return [event.kind.value for event in events]


@pytest.fixture
def stream() -> Stream:
    """A balance that steps by 0.1 g, its empty pan seen."""
    balance = Stream()
    balance.shows("0.0")
    return balance


def test_an_empty_pan_is_told_once() -> None:
    assert kinds(Stream().shows("0.0", 5.0)) == ["pan empty"]


def test_a_load_comes_rests_and_goes(stream: Stream) -> None:
    assert kinds(stream.shows("12.3", 4.0)) == ["load placed", "settled"]
    assert kinds(stream.shows("0.0", 3.0)) in (
        ["disturbed", "load removed", "pan empty"],
        ["load removed", "pan empty"],
    )


def test_what_settles_is_a_reading_that_was_shown(stream: Stream) -> None:
    settled = stream.shows("12.3", 3.0)[-1]
    assert settled.kind is PanKind.SETTLED
    assert settled.grams == Decimal("12.3")
    assert settled.readability == Decimal("0.1")
    assert settled.reading is not None
    assert settled.reading.raw == b"12.3 g"


def test_a_load_settles_once(stream: Stream) -> None:
    assert kinds(stream.shows("50.0", 30.0)).count("settled") == 1


def test_something_added_is_placed_and_settles_anew(stream: Stream) -> None:
    stream.shows("50.0", 3.0)
    assert kinds(stream.shows("70.0", 3.0)) == ["load placed", "settled"]


def test_something_taken_out_disturbs_and_settles_anew(stream: Stream) -> None:
    stream.shows("50.0", 3.0)
    assert kinds(stream.shows("40.0", 3.0)) == ["disturbed", "settled"]


def test_a_pour_is_not_captured_while_it_rises(stream: Stream) -> None:
    stream.shows("50.0", 3.0)
    rising = stream.rises("50.0", "62.0", 10.0)  # twelve divisions a second
    assert "settled" not in kinds(rising)
    assert kinds(stream.shows("62.0", 6.0)) == ["settled"]


@pytest.mark.parametrize("grams", ["-0.3", "-0.1", "0.1", "0.3"])
def test_a_few_divisions_beside_zero_are_an_empty_pan(grams: str) -> None:
    assert kinds(Stream().shows(grams)) == ["pan empty"]


def test_a_pan_that_rests_far_below_zero_wants_a_clean_zero() -> None:
    balance = Stream()
    (told,) = balance.shows("-12.3")
    assert (told.kind, told.trouble) == (PanKind.UNREADABLE, Trouble.BELOW_ZERO)
    assert balance.watch.state.must_empty
    assert kinds(balance.shows("0.0")) == ["pan empty"]
    assert not balance.watch.state.must_empty


def test_a_load_lifted_from_a_zero_that_hid_it_is_noticed_without_rest(stream: Stream) -> None:
    (told,) = stream.shows("-12.3", 0.2)
    assert told.trouble is Trouble.BELOW_ZERO
    assert stream.shows("90.0", 3.0) == []


def test_a_balance_tared_by_its_key_is_told_once(stream: Stream) -> None:
    stream.shows("12.3", 3.0)
    (told,) = stream.net("0.0", 3.0)
    assert (told.kind, told.trouble) == (PanKind.UNREADABLE, Trouble.TARED)


def test_overload_is_told_once_and_passes(stream: Stream) -> None:
    over = stream.without_mass(2.0, Range.OVER)
    assert kinds(over) == ["overloaded"]
    assert stream.watch.state.phase is PanPhase.TOO_HEAVY
    assert "pan empty" in kinds(stream.shows("0.0"))


def test_a_single_frame_without_mass_is_no_news(stream: Stream) -> None:
    assert stream.without_mass(0.2) == []


def test_frames_without_mass_are_told_after_half_a_second(stream: Stream) -> None:
    (told,) = stream.without_mass(2.0)
    assert (told.kind, told.trouble) == (PanKind.UNREADABLE, Trouble.NO_MASS)


def test_silence_is_told_once(stream: Stream) -> None:
    (told,) = stream.waits(6.0)
    assert (told.kind, told.trouble) == (PanKind.SILENT, Trouble.ASLEEP)


def test_after_silence_nothing_settles_before_an_empty_pan(stream: Stream) -> None:
    stream.waits(3.0)
    assert stream.shows("12.3", 4.0) == []
    assert kinds(stream.shows("0.0", 3.0)) == ["pan empty"]
    assert kinds(stream.shows("12.3", 3.0)) == ["load placed", "settled"]


def test_a_lost_port_is_told_as_such_and_wants_an_empty_pan(stream: Stream) -> None:
    (told,) = stream.watch.lost(stream.now)
    assert (told.kind, told.trouble) == (PanKind.SILENT, Trouble.LOST)
    stream.waits(5.0)
    stream.watch.back(stream.now)
    assert stream.shows("12.3", 4.0) == []


def test_readings_older_than_a_second_are_not_looked_at(stream: Stream) -> None:
    late = Stream()
    late.now = stream.now - 10
    stream.watch.tick(stream.now)
    late.watch = stream.watch
    assert late.shows("50.0", 3.0) == []


def test_weighing_again_settles_the_same_load_from_fresh_readings(stream: Stream) -> None:
    stream.shows("50.0", 3.0)
    stream.watch.weigh_again(stream.now)
    (again,) = stream.shows("50.1", 3.0)
    assert again.kind is PanKind.SETTLED
    assert again.grams == Decimal("50.1")


def test_a_load_that_lies_there_from_the_start_counts() -> None:
    assert kinds(Stream().shows("50.0", 3.0)) == ["load placed", "settled"]


def test_the_ring_closes_as_the_load_comes_to_rest(stream: Stream) -> None:
    stream.rises("0.0", "50.0", 1.0)
    open_ = stream.watch.state.progress
    stream.shows("50.0", 3.0)
    assert open_ < 0.5
    assert stream.watch.state.progress == 1.0
    assert stream.watch.state.phase is PanPhase.STABLE


def test_restlessness_is_counted(stream: Stream) -> None:
    for _ in range(10):
        stream.shows("50.0", 0.3)
        stream.shows("53.0", 0.3)
    assert stream.watch.state.restless_for > 5.0


def test_the_step_is_learned_from_the_digits() -> None:
    balance = Stream(readability=None)
    balance.shows("12.34", 3.0)
    assert balance.watch.state.readability == Decimal("0.01")


def test_the_balances_own_word_on_its_step_counts() -> None:
    balance = Stream(readability=None)
    balance.watch.identified(Decimal("0.5"), Decimal(2000))
    balance.shows("12.5", 3.0)
    assert balance.watch.state.readability == Decimal("0.5")


def test_an_empty_pan_tells_where_its_zero_rests_and_settles_no_mass(stream: Stream) -> None:
    stream.shows("50.0", 3.0)
    emptied = stream.shows("-0.1", 3.0)[-1]
    assert emptied.kind is PanKind.PAN_EMPTY
    assert emptied.reading is not None
    assert emptied.reading.grams == Decimal("-0.1")
    assert emptied.grams is None
