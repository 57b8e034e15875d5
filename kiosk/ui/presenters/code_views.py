"""The presenter of the coach's code."""

from __future__ import annotations

from kiosk.procedures.procedure import Person
from kiosk.texts import plural, say
from kiosk.ui.lock import DIGITS, Asking, Lock
from kiosk.ui.presenters.views import CodeView, button


def code_view(lock: Lock, drawer: str, now: float) -> CodeView:
    """The pad for the code; `drawer` is the text key of what it opens, "" for what was locked."""
    waits = lock.waits(now)
    if waits:
        main = button(plural("code.wait", waits), sign="wait", state="waiting")
    elif lock.complete:
        main = button(say(f"code.{lock.asking}.main"), Person.ENTER, sign="arrow")
    else:
        main = button(say(f"code.{lock.asking}.main"), sign="off", state="off")
    return CodeView(
        title=say(f"code.{lock.asking}.title"),
        typed=len(lock.typed),
        digits=DIGITS,
        typed_text=say("code.typed", typed=len(lock.typed), digits=DIGITS),
        note=_note(lock, drawer),
        main=main,
        second=button(say("code.later"), Person.LATER) if lock.asking is Asking.NEW else None,
        home=button(say("button.back"), Person.HOME, sign="back"),
    )


def _note(lock: Lock, drawer: str) -> str:
    if lock.wrong:
        return say("code.differ" if lock.asking is Asking.NEW else "code.wrong")
    if lock.asking is Asking.CODE:
        return "" if drawer else say("code.locked_itself")
    return say(f"code.{lock.asking}.note")
