"""A balance that sends a line only at its key: known by its silence, believed when it repeats."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

from drivers.reading import Range
from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble
from kiosk.weighing.pan_state import PanPhase, Press
from tests.helpers.loads import reading
from tests.helpers.readings import Stream

K = PanKind
AWHILE_S = 4.0


class Keyed(Stream):
    """A pan watch and a hand at the print key."""

    def prints(self, shown: str, *, then_s: float = AWHILE_S, **changes: Any) -> list[PanEvent]:
        """One line, then silence."""
        events = self.one(replace(reading(Decimal(shown), 0.0), **changes))
        return [*events, *self.waits(then_s)]

    def known(self) -> Keyed:
        """The empty pan was printed until the balance is known, and once more."""
        self.waits(AWHILE_S)
        for _ in range(3):
            self.prints("0.0")
        return self


def kinds(events: list[PanEvent]) -> list[PanKind]:
    return [event.kind for event in events]


def test_before_the_key_is_pressed_the_balance_is_silent() -> None:
    [event] = Keyed().waits(AWHILE_S)
    assert (event.kind, event.trouble) == (K.SILENT, Trouble.ASLEEP)


def test_two_lines_alone_tell_that_it_waits_for_its_key() -> None:
    balance = Keyed()
    balance.waits(AWHILE_S)
    balance.prints("0.0")
    [event] = balance.prints("0.0")[-1:]
    assert (event.kind, event.trouble) == (K.SILENT, Trouble.QUIET)


def test_a_printed_zero_is_an_empty_pan() -> None:
    balance = Keyed()
    balance.waits(AWHILE_S)
    balance.prints("0.0")
    balance.prints("0.0")
    assert kinds(balance.prints("0.0")) == [K.PAN_EMPTY]


def test_then_its_silence_is_no_trouble() -> None:
    balance = Keyed().known()
    assert balance.waits(60.0) == []
    assert balance.watch.state.phase is PanPhase.EMPTY


def test_one_line_captures_nothing() -> None:
    assert K.SETTLED not in kinds(Keyed().known().prints("12.3", stable=True))


def test_the_same_number_printed_twice_is_captured() -> None:
    balance = Keyed().known()
    balance.prints("12.3")
    [event] = balance.prints("12.3")
    assert (event.kind, event.grams) == (K.SETTLED, Decimal("12.3"))


def test_a_third_line_captures_nothing_more() -> None:
    balance = Keyed().known()
    for _ in range(2):
        balance.prints("12.3")
    assert balance.prints("12.3") == []


def test_two_numbers_that_differ_by_more_than_a_step_are_two_loads() -> None:
    balance = Keyed().known()
    balance.prints("12.3")
    assert K.SETTLED not in kinds(balance.prints("12.5"))
    assert kinds(balance.prints("12.5")) == [K.SETTLED]


def test_a_line_that_says_moving_counts_for_nothing() -> None:
    balance = Keyed().known()
    balance.prints("12.3", stable=False)
    assert K.SETTLED not in kinds(balance.prints("12.3", stable=True))


def test_a_line_that_was_sent_twice_was_printed_once() -> None:
    balance = Keyed().known()
    balance.prints("12.3", then_s=0.1)
    assert K.SETTLED not in kinds(balance.prints("12.3"))


def test_what_was_printed_long_ago_counts_for_nothing() -> None:
    balance = Keyed().known()
    balance.prints("12.3", then_s=90.0)
    assert K.SETTLED not in kinds(balance.prints("12.3"))


def test_after_a_capture_the_empty_pan_is_printed() -> None:
    balance = Keyed().known()
    balance.prints("12.3")
    balance.prints("12.3")
    assert balance.watch.state.press is Press.EMPTY
    assert kinds(balance.prints("0.0")) == [K.LOAD_REMOVED, K.PAN_EMPTY]


def test_the_screen_can_say_which_press_is_next() -> None:
    balance = Keyed().known()
    assert balance.watch.state.press is Press.LOAD
    balance.prints("12.3")
    assert balance.watch.state.press is Press.ONCE_MORE


def test_after_two_quiet_minutes_the_empty_pan_is_to_be_printed_anew() -> None:
    balance = Keyed().known()
    [event] = balance.waits(150.0)
    assert (event.kind, event.trouble) == (K.SILENT, Trouble.QUIET)
    balance.prints("12.3")
    assert balance.prints("12.3") == []


def test_after_its_cable_is_back_the_empty_pan_is_to_be_printed_anew() -> None:
    balance = Keyed().known()
    balance.watch.lost(balance.now)
    [event] = balance.watch.back(balance.now)
    assert event.trouble is Trouble.QUIET


def test_a_load_under_which_it_was_switched_on_is_noticed_when_it_is_off() -> None:
    balance = Keyed().known()
    balance.prints("-12.3")
    [event] = balance.prints("-12.3")
    assert event.trouble is Trouble.BELOW_ZERO


def test_an_overload_is_said_with_the_first_line() -> None:
    balance = Keyed().known()
    over = {"value": None, "grams": None, "range": Range.OVER}
    assert kinds(balance.prints("0.0", **over)) == [K.OVERLOADED]


def test_a_balance_that_sends_all_the_time_is_asleep_when_it_stops() -> None:
    balance = Keyed()
    balance.shows("0.0")
    assert [event.trouble for event in balance.waits(AWHILE_S)] == [Trouble.ASLEEP]
    balance.shows("0.0")
    assert [event.trouble for event in balance.waits(AWHILE_S)] == [Trouble.ASLEEP]


def test_two_lines_in_a_row_before_a_silence_are_no_two_presses() -> None:
    balance = Keyed()
    balance.shows("0.0", 0.2)
    assert [event.trouble for event in balance.waits(AWHILE_S)] == [Trouble.ASLEEP]
