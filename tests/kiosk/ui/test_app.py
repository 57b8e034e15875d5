"""The app keeps its window open through a fault of its own."""

from __future__ import annotations

import logging

import pytest
from kivy.base import ExceptionManager

from kiosk.ui.app import StayOpen


def fault(words: str = "a ring of no length") -> Exception:
    try:
        raise ValueError(words)
    except ValueError as error:
        return error


def test_a_fault_is_passed_over_and_logged(caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.ERROR):
        assert StayOpen(lambda: None).handle_exception(fault()) == ExceptionManager.PASS
    assert "goes on after a fault" in caplog.text
    assert "a ring of no length" in caplog.text


def test_the_same_fault_is_logged_once(caplog: pytest.LogCaptureFixture) -> None:
    handler = StayOpen(lambda: None)
    with caplog.at_level(logging.ERROR):
        for _ in range(3):
            handler.handle_exception(fault())
    assert len(caplog.records) == 1


def test_after_a_fault_what_was_going_on_is_taken_up_again() -> None:
    taken_up: list[str] = []
    StayOpen(lambda: taken_up.append("again")).handle_exception(fault())
    assert taken_up == ["again"]


@pytest.mark.parametrize("end", [KeyboardInterrupt(), SystemExit()])
def test_what_is_no_fault_ends_the_kiosk(end: BaseException) -> None:
    assert StayOpen(lambda: None).handle_exception(end) == ExceptionManager.RAISE
