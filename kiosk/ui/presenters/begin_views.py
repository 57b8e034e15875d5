"""Presenters of what is asked before the first sample of a key."""

from __future__ import annotations

from decimal import Decimal

from kiosk.procedures.begin_key import BeginKey
from kiosk.procedures.procedure import Person
from kiosk.texts import plural, say
from kiosk.texts.numbers import grams, percent
from kiosk.ui.presenters.cup_views import home_button
from kiosk.ui.presenters.views import QuestionView, button

STEPS = 5


def old_samples_view(procedure: BeginKey) -> QuestionView:
    """Whether the samples that the material remembers are used."""
    old = procedure.remembered
    assert old is not None
    at, days = old.sampled_at.astimezone(), procedure.days_old
    widened = procedure.moisture_percent
    piece = say_of_bits("key.old.piece", old.bits, mass=grams(old.piece_mass))
    return QuestionView(
        title=say("key.old.title", day=at.day, month=say(f"key.month.{at.month}")),
        body=f"{piece} {_widens(widened, days)}",
        step=1,
        steps=STEPS,
        step_text=say("key.step.1"),
        art="full tray",
        main=button(say("key.old.yes"), Person.YES, sign="arrow"),
        second=button(say("key.old.no"), Person.NO),
        home=home_button(),
    )


def _widens(per_cent: float, days: float) -> str:
    if not per_cent:
        return say("key.old.fresh")
    return plural("key.old.moist", int(days), percent=percent(Decimal(per_cent)))


def bits_view() -> QuestionView:
    """Whether broken bits count, each as a piece."""
    return QuestionView(
        title=say("key.bits.title"),
        body=say("key.bits.body"),
        step=1,
        steps=STEPS,
        step_text=say("key.step.1"),
        art="full tray",
        main=button(say("key.bits.no"), Person.NO, sign="tick"),
        second=button(say("key.bits.yes"), Person.YES),
        home=home_button(),
    )


def say_of_bits(key: str, bits: bool | None, **places: object) -> str:
    """A text in the words for whole pieces, for pieces and bits, or for what does not break."""
    more = {None: "", False: ".whole", True: ".bits"}[bits]
    return say(f"{key}{more}", **places)


def same_bag_view() -> QuestionView:
    """Whether what was sampled and what is poured are one lot."""
    return QuestionView(
        title=say("key.same_bag.title"),
        body=say("key.same_bag.body"),
        step=1,
        steps=STEPS,
        step_text=say("key.step.1"),
        art="full tray",
        main=button(say("key.same_bag.yes"), Person.YES, sign="tick"),
        second=button(say("key.same_bag.no"), Person.NO),
        home=home_button(),
    )
