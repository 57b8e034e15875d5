"""When the strip warns of the last check, and what the drawer says of it."""

from __future__ import annotations

from datetime import timedelta

import pytest

from kiosk.ui.presenters.last_check import OLD_AFTER_DAYS, last_check_text, warning
from tests.helpers.recorded import AT, balance_checked


@pytest.mark.parametrize("verdict", ["fine", "cannot tell"])
@pytest.mark.parametrize("days", [0, OLD_AFTER_DAYS])
def test_a_check_that_was_not_failed_is_quiet_for_a_month(verdict: str, days: int) -> None:
    last = balance_checked("c", verdict=verdict)
    assert warning(last, AT + timedelta(days=days)) == ""


def test_an_old_check_is_to_be_done_again() -> None:
    late = AT + timedelta(days=OLD_AFTER_DAYS + 1)
    assert warning(balance_checked("c"), late) == "check the scale"


@pytest.mark.parametrize("days", [0, 400])
def test_a_failed_check_warns_from_the_first_day(days: int) -> None:
    last = balance_checked("c", verdict="not fine")
    assert warning(last, AT + timedelta(days=days)) == "scale not fine"


def test_a_scale_that_was_never_checked_is_not_accused() -> None:
    assert warning(None, AT) == ""


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (-3, "Checked today: fine."),
        (0, "Checked today: fine."),
        (1, "Checked 1 day ago: fine."),
        (40, "Checked 40 days ago: fine."),
    ],
)
def test_the_drawer_tells_when_it_was(days: int, words: str) -> None:
    assert last_check_text(balance_checked("c"), AT + timedelta(days=days)) == words


def test_the_drawer_says_that_there_was_none() -> None:
    assert last_check_text(None, AT) == "Not checked yet."
