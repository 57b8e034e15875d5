"""What is said and offered while a sample is counted in tens."""

from __future__ import annotations

from kiosk.procedures.count_in_tens import CountInTens
from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.ui.presenters.views import ButtonView, button

IN_TENS = (SamplesState.TENS, SamplesState.ODD_TEN)


def tens_text(procedure: CountInTens) -> str:
    """How many tens were put on, or what is the matter with one."""
    if procedure.odd is None or procedure.state is SamplesState.TENS:
        return say("key.tens", done=procedure.tens_done, all=procedure.tens_wanted)
    place, off = procedure.odd
    if place <= procedure.tens_done:
        return say("key.odd_ten.below", place=place)
    if procedure.first_two:
        return say("key.odd_ten.two")
    return say({1: "key.odd_ten.more", -1: "key.odd_ten.less"}.get(off, "key.odd_ten.far"))


def tens_button(procedure: CountInTens) -> ButtonView | None:
    """Begin with them, or say that a ten is one."""
    if procedure.state is SamplesState.ODD_TEN:
        return button(say("key.odd_ten.sure"), Person.YES)
    return button(say("key.in_tens"), Person.TENS) if procedure.offers(Person.TENS) else None
