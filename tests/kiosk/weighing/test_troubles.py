"""What is in the way, what it becomes, and what has to be seen before anything is weighed."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from drivers.reading import Fault, Range
from kiosk.weighing.pan_events import PanKind, Trouble
from kiosk.weighing.pan_state import PanPhase
from tests.helpers.loads import reading
from tests.helpers.readings import EVERY_S, Stream

K = PanKind
NO_MASS = {"value": None, "grams": None, "range": Range.UNUSABLE, "reason": "no number"}
FAULTS = [
    (Fault.UNIT, Trouble.UNIT),
    (Fault.CALIBRATION, Trouble.CALIBRATION),
    (Fault.ZERO, Trouble.NO_ZERO),
    (Fault.REPORTED, Trouble.ERROR),
    (None, Trouble.NO_MASS),
]


def empty() -> Stream:
    stream = Stream()
    stream.shows("0.0")
    return stream


@pytest.mark.parametrize(("fault", "trouble"), FAULTS)
def test_each_fault_is_its_own_trouble(fault: Fault | None, trouble: Trouble) -> None:
    events = empty().shows("0.0", 4.0, **NO_MASS, fault=fault)
    assert [(event.kind, event.trouble) for event in events] == [(K.UNREADABLE, trouble)]


@pytest.mark.parametrize(("fault", "trouble"), FAULTS)
def test_a_balance_that_wakes_with_a_fault_is_silent_no_more(
    fault: Fault | None, trouble: Trouble
) -> None:
    stream = empty()
    stream.waits(4.0)
    events = stream.shows("0.0", 4.0, **NO_MASS, fault=fault)
    assert [event.trouble for event in events] == [trouble]


@pytest.mark.parametrize("fault", [Fault.CALIBRATION, Fault.ZERO])
def test_after_its_zero_may_have_changed_an_empty_pan_is_seen_first(fault: Fault) -> None:
    stream = empty()
    stream.shows("0.0", **NO_MASS, fault=fault)
    assert stream.shows("12.3") == []
    assert [event.kind for event in stream.shows("0.0")] == [K.PAN_EMPTY]


def test_an_error_that_has_passed_lets_the_load_be_weighed() -> None:
    stream = empty()
    stream.shows("12.3", **NO_MASS, fault=Fault.REPORTED)
    assert K.SETTLED in [event.kind for event in stream.shows("12.3")]


def test_a_unit_that_is_known_again_lets_the_load_be_weighed() -> None:
    stream = empty()
    stream.shows("12.3", 4.0, **NO_MASS, fault=Fault.UNIT)
    assert K.SETTLED in [event.kind for event in stream.shows("12.3")]


def test_a_unit_that_is_held_back_while_the_load_moves_is_no_trouble() -> None:
    assert empty().shows("12.3", 2.0, **NO_MASS, fault=Fault.UNIT) == []


def test_after_sleep_and_an_unknown_unit_the_empty_pan_is_still_asked_for() -> None:
    stream = empty()
    stream.waits(4.0)
    stream.shows("0.0", 4.0, **NO_MASS, fault=Fault.UNIT)
    events = stream.shows("12.3")
    assert [event.trouble for event in events] == [Trouble.ASLEEP]
    assert stream.watch.state.must_empty


# Garbage -------------------------------------------------------------------------------------


def garbage(stream: Stream, seconds: float) -> list[Trouble | None]:
    events = []
    for _ in range(round(seconds / EVERY_S)):
        stream.now += EVERY_S
        events += [*stream.watch.tick(stream.now), *stream.watch.garbage(stream.now)]
    return [event.trouble for event in events]


def test_bytes_that_are_no_frames_are_told_once_after_two_seconds() -> None:
    stream = empty()
    assert garbage(stream, 1.5) == []
    assert garbage(stream, 5.0) == [Trouble.GARBLED]


def test_torn_lines_between_good_ones_are_no_trouble() -> None:
    stream = empty()
    for _ in range(10):
        assert garbage(stream, 1.0) == []
        assert stream.shows("0.0", 0.1) == []


def test_after_garbage_an_empty_pan_is_seen_first() -> None:
    stream = empty()
    garbage(stream, 3.0)
    assert stream.shows("12.3") == []
    assert [event.kind for event in stream.shows("0.0")] == [K.PAN_EMPTY]


# Old readings --------------------------------------------------------------------------------


def late(stream: Stream, seconds: float, by: float = 2.0) -> list[Trouble | None]:
    """Readings that took so long to come."""
    events = []
    for _ in range(round(seconds / EVERY_S)):
        stream.now += EVERY_S
        events += stream.watch.tick(stream.now)
        events += stream.watch.reading(replace(reading(Decimal("12.3"), 0.0), at=stream.now - by))
    return [event.trouble for event in events]


def test_readings_that_come_late_are_told_and_not_looked_at() -> None:
    stream = empty()
    assert late(stream, 6.0) == [Trouble.LATE]
    assert not stream.watch.state.loaded


def test_a_number_older_than_a_second_is_not_shown() -> None:
    stream = empty()
    assert stream.watch.state.grams is not None
    stream.waits(1.2)
    assert stream.watch.state.grams is None
    assert not stream.watch.state.readings_flow


# Taken off, left on --------------------------------------------------------------------------


def test_a_tared_pan_that_shows_less_than_nothing_was_emptied() -> None:
    stream = empty()
    stream.net("0.0")
    assert not stream.watch.state.taken_off
    stream.net("-12.3")
    assert stream.watch.state.taken_off


def test_a_pan_below_zero_was_emptied() -> None:
    stream = empty()
    stream.shows("-12.3")
    assert stream.watch.state.taken_off


def test_after_a_silence_something_may_lie_there_that_counts_as_nothing() -> None:
    stream = empty()
    assert not stream.watch.state.look
    stream.waits(4.0)
    stream.shows("0.0")
    assert stream.watch.state.look


def test_the_next_load_shows_that_the_pan_was_empty() -> None:
    stream = empty()
    stream.waits(4.0)
    stream.shows("0.0")
    stream.shows("12.3")
    assert not stream.watch.state.look


def test_a_load_that_shows_by_being_lifted_was_what_lay_there() -> None:
    stream = empty()
    stream.waits(4.0)
    stream.shows("0.0")
    stream.shows("-12.3")
    assert not stream.watch.state.look


# Units ---------------------------------------------------------------------------------------


def test_a_load_that_rests_is_not_captured_again_in_another_unit() -> None:
    stream = empty()
    stream.shows("12.3")
    ounces = {"value": Decimal("0.435"), "unit": "oz", "grams": Decimal("12.332042559375")}
    assert stream.shows("12.3", 4.0, **ounces) == []
    assert stream.watch.state.unit == "oz"


def test_a_mass_in_ounces_is_captured_exactly_with_its_step() -> None:
    stream = Stream(readability=None)
    zero = {"value": Decimal("0.000"), "unit": "oz", "grams": Decimal("0.000")}
    stream.shows("0.0", **zero)
    ounces = {"value": Decimal("0.435"), "unit": "oz", "grams": Decimal("12.332042559375")}
    [settled] = [e for e in stream.shows("12.3", **ounces) if e.kind is K.SETTLED]
    assert settled.grams == Decimal("12.332042559375")
    assert settled.readability == Decimal("0.028349523125")


def test_what_a_balance_tells_of_itself_is_a_step_of_the_unit_that_it_shows() -> None:
    stream = empty()
    ounces = {"value": Decimal("0.435"), "unit": "oz", "grams": Decimal("12.332042559375")}
    stream.shows("12.3", 1.0, **ounces)
    assert stream.watch.state.readability == Decimal("0.005") * Decimal("28.349523125")


# Creeping ------------------------------------------------------------------------------------


def test_a_reading_that_goes_one_way_for_seconds_creeps() -> None:
    stream = empty()
    stream.rises("20.0", "40.0", 8.0)
    assert stream.watch.state.creeping
    assert stream.watch.state.phase is PanPhase.MOVING


def test_a_reading_that_goes_to_and_fro_does_not_creep() -> None:
    stream = empty()
    for _ in range(4):
        stream.rises("20.0", "22.0", 1.0)
        stream.rises("22.0", "20.0", 1.0)
    assert not stream.watch.state.creeping


def test_a_tared_balance_that_was_overloaded_is_still_tared() -> None:
    stream = empty()
    stream.net("12.3")
    stream.shows("0.0", 1.0, value=None, grams=None, range=Range.OVER)
    assert stream.watch.state.phase is PanPhase.TOO_HEAVY
    [event] = stream.net("12.3")
    assert event.trouble is Trouble.TARED
    assert stream.watch.state.phase is PanPhase.UNREADABLE


def test_a_moment_without_a_mass_on_waking_is_no_fault() -> None:
    stream = empty()
    stream.waits(4.0)
    assert stream.shows("0.0", 0.4, **NO_MASS, fault=Fault.ZERO) == []
