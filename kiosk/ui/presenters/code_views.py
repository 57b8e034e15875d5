"""The presenter of the coach's code."""

from __future__ import annotations

from kiosk.procedures.procedure import Person
from kiosk.texts import plural, say
from kiosk.ui.lock import DIGITS, Asking, Lock
from kiosk.ui.presenters.views import ButtonView, CodeView, button

COACH = "coach"


def wait_button(waits: int) -> ButtonView:
    """In the place of the main button while nothing is taken for so many seconds."""
    return button(plural("code.wait", waits), sign="wait", state="waiting")


def code_view(lock: Lock, drawer: str, now: float, whose: str = COACH) -> CodeView:
    """The pad for the code; `drawer` is the text key of what it opens, "" for what was locked.

    `whose` it is: coach, or helper.
    """
    waits = lock.waits(now)
    either = lock.helper_welcome and lock.helper_digest and lock.asking is Asking.CODE
    if waits:
        main = wait_button(waits)
    elif lock.complete:
        main = button(say(f"code.{lock.asking}.main"), Person.ENTER, sign="arrow")
    else:
        main = button(say(f"code.{lock.asking}.main"), sign="off", state="off")
    return CodeView(
        title=say("codes.either.code" if either else f"codes.{whose}.{lock.asking}"),
        typed=len(lock.typed),
        digits=DIGITS,
        typed_text=say("code.typed", typed=len(lock.typed), digits=DIGITS),
        note=_note(lock, drawer, whose),
        main=main,
        second=button(say("code.later"), Person.LATER) if lock.asking is Asking.NEW else None,
        home=button(say("button.back"), Person.HOME, sign="back"),
    )


def _note(lock: Lock, drawer: str, whose: str) -> str:
    if lock.taken:
        return say(f"codes.{whose}.taken")
    if lock.wrong:
        return say("code.differ" if lock.asking is Asking.NEW else "code.wrong")
    if lock.asking is Asking.CODE:
        return "" if drawer else say("code.locked_itself")
    return say(f"codes.{whose}.new.note" if lock.asking is Asking.NEW else "code.again.note")
