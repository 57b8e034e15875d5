"""What is said of samples beside their rows: how good they are, and how many pieces to count."""

from __future__ import annotations

from kiosk.estimating.advice import Advice, CountMoreAtOnce
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.ui.presenters.tens_views import tens_text
from kiosk.ui.presenters.views import ButtonView, button

PIECES_RUNGS = (10, 20, 50, 100, 200, 300, 500)  # a sample may have
ON_PAN = (SamplesState.READY, SamplesState.TOO_FEW)


def advice_text(procedure: CountSamples) -> str:
    """How good the key gets and what would be gained, or what to expect before the first sample."""
    match procedure.state:
        case SamplesState.EMPTY_TRAY:
            # Pieces that go back at once could be counted twice, and the interval would not know.
            return say("key.aside")
        case SamplesState.ADD:
            return say("key.add")
        case SamplesState.SAME:
            return say("key.same", pieces=procedure.kept.pieces)
        case SamplesState.TENS | SamplesState.ODD_TEN:
            return tens_text(procedure)
        case SamplesState.TOO_MANY:
            return say("key.too_many")
    advice = _advice(procedure)
    if advice is not None:
        return advice.sentence
    first = procedure.kept.first_advice()
    return first.sentence if first else say("key.honest")


def pieces_button(procedure: CountSamples) -> ButtonView | None:
    """The advised number of pieces; before the first sample some other number at least."""
    pieces = _advised_pieces(procedure)
    if pieces is None or not procedure.offers(Person.PIECES):
        return None
    return button(say("key.at_once", pieces=pieces), Person.PIECES, pieces)


def _advised_pieces(procedure: CountSamples) -> int | None:
    advice = _advice(procedure)
    if advice is not None:
        return advice.step.pieces if isinstance(advice.step, CountMoreAtOnce) else None
    if procedure.kept.samples:
        return None
    first = procedure.kept.first_advice()
    return (first.pieces if first else None) or _other_pieces(procedure.kept.pieces)


def _other_pieces(pieces: int) -> int:
    larger = [rung for rung in PIECES_RUNGS if rung > pieces]
    return larger[0] if larger else PIECES_RUNGS[0]


def _advice(procedure: CountSamples) -> Advice | None:
    on_pan = procedure.on_tray if procedure.state in ON_PAN else None
    more = (on_pan,) if on_pan is not None and on_pan > 0 else ()
    return procedure.kept.advice(*more)
