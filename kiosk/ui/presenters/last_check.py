"""Presenter of the last check of the scale: what it said, and when the strip warns."""

from __future__ import annotations

from datetime import datetime

from kiosk.estimating.balance_check import Verdict
from kiosk.records.entries import BalanceChecked
from kiosk.texts import plural, say

# A scale that is carried about and stands in many rooms may be off after any knock; a check takes
# five minutes. That a month is a fair measure for a classroom is common practice, no source.
OLD_AFTER_DAYS = 30


def warning(last: BalanceChecked | None, now: datetime) -> str:
    """What the strip says of the last check; "" while it was fine or open, and is not old.

    A scale that was never checked is no reason for a warning: nothing is known against it.
    """
    if last is None:
        return ""
    if last.verdict == Verdict.NOT_FINE:
        return say("strip.check_failed")
    return say("strip.check_old") if _days(last, now) > OLD_AFTER_DAYS else ""


def last_check_text(last: BalanceChecked | None, now: datetime) -> str:
    """When the scale was checked, and how it went."""
    if last is None:
        return say("check.last.never")
    verdict = say(f"check.{last.verdict.replace(' ', '_')}")
    days = _days(last, now)
    if days < 1:  # also for a clock that went back
        return say("check.last.today", verdict=verdict)
    return plural("check.last.days", days, verdict=verdict)


def _days(last: BalanceChecked, now: datetime) -> int:
    return (now - last.at).days
