"""The last ten seconds of a pan."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.weighing.pan_history import PanHistory


def filled(seconds: float, every: float = 0.1, rest_from: float = 1e9) -> PanHistory:
    history = PanHistory()
    for step in range(round(seconds / every)):
        at = step * every
        history.note(at, Decimal(step), resting=at >= rest_from)
    return history


def test_nothing_is_remembered_of_a_pan_that_was_not_heard() -> None:
    past = PanHistory().past(5.0)
    assert (past.points, past.rest, past.pace) == ((), None, None)


def test_readings_come_with_their_age_oldest_first() -> None:
    history = PanHistory()
    history.note(1.0, Decimal("0.0"), resting=False)
    history.note(2.0, Decimal("50.1"), resting=False)
    assert history.past(2.5).points == ((1.5, Decimal("0.0")), (0.5, Decimal("50.1")))


def test_what_is_older_than_ten_seconds_is_forgotten() -> None:
    ages = [age for age, _ in filled(30).past(30.0).points]
    assert max(ages) <= 10.0
    assert len(ages) == pytest.approx(100, abs=1)


def test_the_past_moves_on_while_nothing_comes() -> None:
    assert filled(5).past(20.0).points == ()


def test_a_rest_has_its_beginning() -> None:
    assert filled(8, rest_from=5.0).past(8.0).rest == pytest.approx(3.0)


def test_a_long_rest_fills_all_that_is_remembered() -> None:
    assert filled(40, rest_from=5.0).past(40.0).rest == 10.0


def test_motion_ends_a_rest() -> None:
    history = filled(8, rest_from=5.0)
    history.note(8.0, Decimal(9), resting=False)
    assert history.past(8.0).rest is None


def test_a_reading_without_a_mass_ends_a_rest() -> None:
    history = filled(8, rest_from=5.0)
    history.interrupt()
    assert history.past(8.0).rest is None


def test_the_present_rest_tells_noise_and_drift() -> None:
    climbing = filled(8, rest_from=2.0)  # one gram a reading, ten a second
    found = climbing.past(8.0).steadiness(Decimal("0.1"))
    assert found is not None
    assert found.drift == pytest.approx(600)


def test_without_a_rest_neither_is_known() -> None:
    assert filled(8).past(8.0).steadiness(Decimal("0.1")) is None


@pytest.mark.parametrize("every", [0.04, 0.1, 0.5])
def test_the_pace_is_counted(every: float) -> None:
    assert filled(6, every).past(6.0).pace == pytest.approx(1 / every, rel=1e-6)


def test_a_silent_pan_has_no_pace() -> None:
    assert filled(5).past(12.0).pace is None
