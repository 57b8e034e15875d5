"""The presenter of the keypad that stands in the pan's place while readings are typed."""

from __future__ import annotations

from dataclasses import dataclass

from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.hand_in import HandInState
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.queue_steps import QueueState
from kiosk.texts import say
from kiosk.ui.presenters.views import PutOnView, SheetView
from kiosk.ui.reading_off import ReadingOff
from kiosk.weighing.pan_events import PanKind

_MASS = frozenset({PanKind.SETTLED, PanKind.DISTURBED})
# The pan tells of a cup there before anybody said whose it is; an adult has nothing to type yet.
_QUIET = frozenset({HandInState.CHOOSE, HandInState.SCORED})
# Crumbs would settle there; an adult sees them, and says that the pan is empty.
_LIFTED = frozenset({QueueState.CLEAR, QueueState.LIFTED, QueueState.DIRTY, QueueState.RECORDED})


@dataclass(frozen=True, slots=True, kw_only=True)
class PadView:
    """The keypad: what is asked, the digits so far, which of its keys can be pressed."""

    ask: str = ""
    text: str = ""
    unit: str = ""
    typed: str = ""
    warns: bool = False
    digits: bool = True
    empty_text: str = ""
    empty_on: bool = True
    empty_main: bool = False
    done_text: str = ""
    done_on: bool = True


def pad_view(
    procedure: Procedure | None, typing: ReadingOff, *, scale_open: bool
) -> PadView | None:
    """The keypad; None where no number is asked for.

    `scale_open`: the coach looks after the scale, where only the zero can be missing.
    """
    zeroed = typing.pan.zeroed
    mass, empty = _wanted(procedure)
    if not (mass or empty or (scale_open and not zeroed)):
        return None
    reading_zero = not zeroed or isinstance(procedure, BalanceCheck)
    return PadView(
        ask=typing.note or say(_ask(mass=mass, zeroed=zeroed, reading_zero=reading_zero)),
        text=typing.text,
        unit=say("pad.unit"),
        typed=say("pad.typed"),
        warns=bool(typing.note),
        digits=mass or reading_zero,
        empty_text=say("pad.pan_empty"),
        empty_on=bool(typing.text) or not reading_zero,
        empty_main=zeroed and not mass,
        done_text=say("pad.sure" if typing.asking else "pad.done"),
        done_on=bool(typing.text) and (mass or not zeroed),
    )


def zero_view(asked: SheetView) -> PutOnView:
    """Before anything else the empty pan: its zero tells the digits. A stop on the same way."""
    return PutOnView(
        title=say("pad.zero.title"),
        body=say("pad.zero.body"),
        step=asked.step,
        steps=asked.steps,
        step_text=asked.step_text,
        arrows="up",
        side_text=say("pad.zero.digits"),
        home=asked.home,
    )


def _wanted(procedure: Procedure | None) -> tuple[bool, bool]:
    """Whether the present state hears of a mass, and of an empty pan."""
    if procedure is None or procedure.state in _QUIET or not procedure.ask.needs_pan:
        return False, False
    heard = procedure.TABLE.get(procedure.state, {}).keys()
    mass = bool(heard & _MASS) and procedure.state not in _LIFTED
    return mass, PanKind.PAN_EMPTY in heard


def _ask(*, mass: bool, zeroed: bool, reading_zero: bool) -> str:
    if not zeroed:
        return "pad.zero"
    if mass:
        return "pad.mass"
    return "pad.read_zero" if reading_zero else "pad.empty"
