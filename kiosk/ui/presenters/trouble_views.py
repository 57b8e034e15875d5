"""Presenters of what is in the way: each trouble with its own sentence and its own way back."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from drivers.errors import Reason
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Person
from kiosk.texts import plural, say
from kiosk.texts.numbers import mass_number
from kiosk.ui.presenters.scale_facts import ScaleKind
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    ButtonView,
    MessageView,
    PutOnView,
    SamplesView,
    SheetView,
    TroubleView,
    button,
)
from kiosk.weighing.pan_state import PanState, Press

_WAIT, _BACK_WAIT = "trouble.unplugged.wait", "trouble.back.wait"
# hindrance: (texts, pictures of the three lines, words of the waiting button)
_SHAPES = {
    Hindrance.UNPLUGGED: ("unplugged", "pan,plug,zero", _WAIT),
    Hindrance.ASLEEP: ("asleep", "pan,,", _WAIT),
    Hindrance.QUIET: ("quiet", "pan,,zero", "trouble.quiet.wait"),
    Hindrance.LATE: ("late", "pan,,", _WAIT),
    Hindrance.GARBLED: ("garbled", "pan,,", "trouble.garbled.wait"),
    Hindrance.BELOW_ZERO: ("below_zero", "pan,zero,zero", _BACK_WAIT),
    Hindrance.TARED: ("tared", "pan,zero,zero", _BACK_WAIT),
    Hindrance.NO_MASS: ("no_mass", "pan,,zero", _BACK_WAIT),
    Hindrance.UNIT: ("unit", ",,", "trouble.unit.wait"),
    Hindrance.CALIBRATION: ("calibration", "pan,,", _WAIT),
    Hindrance.NO_ZERO: ("no_zero", "pan,,zero", _BACK_WAIT),
    Hindrance.ERROR: ("error", "pan,,", _WAIT),
    Hindrance.TOO_HEAVY: ("too_heavy", "pan,,", "trouble.too_heavy.wait"),
}
# After these the numbers come again, and only an empty pan is missing.
OVER_WITH_NUMBERS = frozenset(
    {
        Hindrance.UNPLUGGED, Hindrance.ASLEEP, Hindrance.LATE, Hindrance.GARBLED,
        Hindrance.CALIBRATION, Hindrance.NO_ZERO,
    }
)  # fmt: skip


def zero_text(facts: TableFacts) -> str:
    """What an empty pan shows on this balance: 0, 0.0, 0.00 ..."""
    return mass_number(Decimal(0), facts.readability or Decimal("0.1"))


# Why a port cannot be opened, where that asks for something else than a look at the plug.
_PORTS = {
    Reason.NOT_ALLOWED: ("not_allowed", ",,", "trouble.unplugged.wait"),
    Reason.BUSY: ("busy", ",plug,zero", "trouble.unplugged.wait"),
    Reason.CLOSED: ("network", "pan,,", "trouble.unplugged.wait"),
    Reason.NOT_ANSWERING: ("network", "pan,,", "trouble.unplugged.wait"),
    Reason.OTHER: ("failed", "pan,plug,", "trouble.unplugged.wait"),
    Reason.MISSING: ("missing", "pan,plug,", "trouble.unplugged.wait"),
    Reason.ELSEWHERE: ("elsewhere", "pan,plug,", "trouble.unplugged.wait"),
}


def hindrance_view(
    hindrance: Hindrance,
    facts: TableFacts,
    pan: PanState,
    *,
    lost: Reason | None,
    masses_kept: int,
    home: ButtonView | None,
) -> TroubleView:
    """Why the pan cannot be used, and what to do about it.

    `lost` tells why the port of a lost balance is gone; `masses_kept` are those of a key in the
    making.
    """
    texts, pictures, wait = _SHAPES[hindrance]
    if hindrance is Hindrance.UNPLUGGED and lost in _PORTS and not pan.readings_flow:
        texts, pictures, wait = _PORTS[lost]
        if lost is Reason.NOT_ALLOWED and _is_usb_scale(facts):
            texts = "not_allowed_usb"
    title = f"trouble.{texts}.title"
    if hindrance in OVER_WITH_NUMBERS and pan.readings_flow:
        texts, pictures, wait = "back", "pan,,zero", _BACK_WAIT
        title = "trouble.back.title"
    zero = zero_text(facts)
    return TroubleView(
        title=say(title),
        lines=tuple(say(f"trouble.{texts}.{line}", zero=zero) for line in (1, 2, 3)),
        now=2 if pan.taken_off else 1,
        kind=pictures,
        zero=zero,
        main=button(say(wait), sign="wait", state="waiting"),
        home=home,
        kept=say("trouble.kept"),
        kept_more=_kept(facts, masses_kept),
        cups=() if masses_kept else facts.marks(),
    )


_PRESSES = {
    Press.LOAD: "press.load",
    Press.ONCE_MORE: "press.once_more",
    Press.EMPTY: "press.empty",
}


def _is_usb_scale(facts: TableFacts) -> bool:
    chosen = facts.scale.chosen
    return chosen is not None and chosen.kind is ScaleKind.HID


def pan_note(pan: PanState) -> str:
    """What is to be done at the scale itself before a step goes on; empty if nothing is."""
    if pan.press is not Press.NOTHING:
        return say(_PRESSES[pan.press])
    return say("look.body") if pan.look else ""


def noted(view: SheetView, pan: PanState) -> SheetView:
    """The sheet with what is to be done at the scale itself, where it says something of its own."""
    note = pan_note(pan)
    if not note:
        return view
    if isinstance(view, SamplesView):
        return replace(view, advice=note)
    if isinstance(view, PutOnView) and pan.press is not Press.NOTHING:
        view = replace(view, sign="", sign_text="", side_text="")  # nothing comes by itself
    return replace(view, body=note)


def creeping_view(*, home: ButtonView | None) -> TroubleView:
    """The reading moves on and on in one direction: what makes it do so."""
    return TroubleView(
        title=say("creeping.title"),
        lines=(say("creeping.1"), say("creeping.2"), say("creeping.3")),
        kind=",,",
        kept=say("creeping.more"),
        main=button(say("restless.wait"), sign="wait", state="waiting"),
        home=home,
    )


def restless_view(facts: TableFacts, *, home: ButtonView | None) -> TroubleView:
    """The pan does not come to rest: its causes, the most usual first."""
    return TroubleView(
        title=say("restless.title"),
        lines=(say("restless.1"), say("restless.2"), say("restless.3")),
        kind="pan,,",
        kept=say("restless.4"),
        main=button(say("restless.wait"), sign="wait", state="waiting"),
        home=home,
    )


def failure_view(why: str, *, at_stake: bool, home: ButtonView | None) -> MessageView:
    """The records could not do something; `at_stake` if something captured hangs on it."""
    more = (say("records.body"), say("records.then")) if at_stake else ()
    return MessageView(
        title=say("records.title" if at_stake else "records.stopped"),
        lines=(why, *more),
        main=button(say("records.again"), Person.AGAIN, sign="again"),
        home=home,
    )


def refusal_view(why: str) -> MessageView:
    """Something that was captured while the records were away will never be stored."""
    return MessageView(
        title=say("journal.title"),
        lines=(why, say("journal.stays")),
        main=button(say("journal.seen"), Person.HOME),
    )


def _kept(facts: TableFacts, masses: int) -> str:
    if masses:
        return plural("trouble.kept_masses", masses)
    return say("trouble.kept_cups") if facts.cups else ""
