"""The presenter of the pan: what the big circle shows, and when it is covered."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.check_jars import CheckJars
from kiosk.procedures.count_samples import CountSamples
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.measure_water import MeasureWater
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.texts import say
from kiosk.texts.numbers import grams, mass_number, number
from kiosk.ui.presenters.pour_views import live_count_of
from kiosk.ui.presenters.queue_views import queue_pan
from kiosk.ui.presenters.scale_check_views import pan_words
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.trouble_views import OVER_WITH_NUMBERS
from kiosk.ui.presenters.views import PanView
from kiosk.ui.presenters.water_views import captured_water
from kiosk.weighing.pan_watch import PanPhase, PanState

_WORDS = {
    PanPhase.EMPTY: ("empty", "pan.empty"),
    PanPhase.MOVING: ("moving", "pan.moving"),
    PanPhase.SETTLING: ("settling", "pan.settling"),
    PanPhase.STABLE: ("stable", "pan.stable"),
    PanPhase.TOO_HEAVY: ("too heavy", "pan.too_heavy"),
}
_HINDERED = {
    Hindrance.UNPLUGGED: ("unplugged", "pan.unplugged", "pan.no_scale"),
    Hindrance.ASLEEP: ("unplugged", "pan.asleep", "pan.no_scale"),
    Hindrance.NO_MASS: ("no mass", "pan.no_mass", "pan.no_number"),
    Hindrance.TOO_HEAVY: ("too heavy", "pan.too_heavy", "pan.take_off"),
    Hindrance.BELOW_ZERO: ("no mass", "pan.below_zero", "pan.press_zero"),
    Hindrance.TARED: ("no mass", "pan.tared", "pan.press_zero"),
    Hindrance.UNIT: ("no mass", "pan.no_grams", "pan.press_unit"),
    Hindrance.CALIBRATION: ("no mass", "pan.error", "pan.no_number"),
    Hindrance.NO_ZERO: ("no mass", "pan.no_zero", "pan.press_zero"),
    Hindrance.ERROR: ("no mass", "pan.error", "pan.no_number"),
    Hindrance.GARBLED: ("no mass", "pan.garbled", "pan.no_number"),
    Hindrance.LATE: ("unplugged", "pan.late", "pan.waiting"),
    Hindrance.QUIET: ("no mass", "pan.quiet", "pan.press_print"),
}


def pan_view(
    procedure: Procedure | None,
    facts: TableFacts,
    state: PanState,
    hindrance: Hindrance | None,
    shown: Decimal | None,
    *,
    coach: bool = False,
) -> PanView:
    """What the pan shows; `shown` is the mass in grams that is to be read at this moment.

    A `coach` who looks after the scale itself sees it open.
    """
    captured = _captured(procedure, facts)
    if captured is not None:
        return _with_rim(captured, facts)
    if hindrance is not None and not (hindrance in OVER_WITH_NUMBERS and state.readings_flow):
        phase, word, hint = _HINDERED[hindrance]
        return _with_rim(PanView(phase=phase, word=say(word), hidden_text=say(hint)), facts)
    if isinstance(procedure, CupQueue):
        return _with_rim(queue_pan(procedure, facts, state, shown), facts)
    if not coach and _covered(procedure, facts):
        words = "pan.covered" if isinstance(procedure, KeyProcedure) else "pan.cups_out"
        return _with_rim(
            PanView(phase="hidden", word=say("pan.hidden"), hidden_text=say(words)), facts
        )
    return _with_rim(_live(procedure, facts, state, shown), facts)


def closed_pan(facts: TableFacts) -> PanView:
    """The pan while something waits to be written down: nothing is captured or weighed."""
    view = PanView(phase="hidden", word=say("pan.waiting"), hidden_text=say("pan.not_kept"))
    return _with_rim(view, facts)


def round_pan(facts: TableFacts) -> PanView:
    """The pan beside any page of a round: nothing is weighed there, and a cup tells its mass."""
    view = PanView(phase="hidden", word=say("pan.hidden"), hidden_text=say("pan.round"))
    return _with_rim(view, facts)


def locked_pan(facts: TableFacts, label: str) -> PanView:
    """The pan while the coach's code is asked for; `label` is the text key of the drawer."""
    words = " ".join(say(label).split()) if label else say("pan.covered")
    return _with_rim(PanView(phase="hidden", word=say("pan.locked"), hidden_text=words), facts)


def _with_rim(view: PanView, facts: TableFacts) -> PanView:
    if not facts.simulated and not facts.typed:
        return view
    numbered = view.phase not in ("hidden", "unplugged", "no mass", "too heavy")
    note = say("pan.simulated" if facts.simulated else "pan.typed")
    view = replace(view, simulated=facts.simulated)
    if numbered and not view.line1:
        return replace(view, line1=note)
    if numbered and not view.line2:
        return replace(view, line2=note)
    return view


def _captured(procedure: Procedure | None, facts: TableFacts) -> PanView | None:
    """A still picture of what was written down, for as long as it lies there."""
    if isinstance(procedure, MeasureWater):
        return captured_water(procedure, facts)
    if isinstance(procedure, WeighEmpty) and procedure.state is WeighEmptyState.WEIGHED:
        cup = procedure.cup
        if cup is not None and not procedure.others_out:
            mass = mass_number(cup.empty.grams, cup.empty.readability)
            return PanView(
                phase="captured", word=say("pan.captured"), label=say("pan.empty_cup"),
                number=mass, unit="g",
            )  # fmt: skip
    if isinstance(procedure, HandIn) and procedure.state is HandInState.SCORED:
        result = procedure.result
        assert result is not None
        step = result.filled.readability
        return PanView(
            phase="captured", word=say("pan.captured"), label=say("score.inside"),
            number=mass_number(result.net, step), unit="g",
            line1=say("score.with_cup", mass=grams(result.filled.grams, step)),
        )  # fmt: skip
    return None


def _covered(procedure: Procedure | None, facts: TableFacts) -> bool:
    """On the student side the pan is covered while a cup is out; the coach covers a key."""
    if isinstance(procedure, CountSamples | BalanceCheck | CheckJars | MeasureWater):
        return False
    if isinstance(procedure, FillContainer):
        return facts.covered and procedure.state in (ContainerState.KEY, ContainerState.SAVED)
    return bool(facts.cups)


def _live(
    procedure: Procedure | None, facts: TableFacts, state: PanState, shown: Decimal | None
) -> PanView:
    if shown is None:
        return PanView(phase="moving", word=say("pan.waiting"))
    if isinstance(procedure, CountSamples) and procedure.draft and procedure.draft.tray:
        return _on_the_tray(procedure, state, shown, facts)
    if isinstance(procedure, FillContainer) and (procedure.kept.empty or _is_done(procedure)):
        return _in_the_jar(procedure, state, shown)
    label = say("pan.empty_cup") if isinstance(procedure, WeighEmpty) else say("pan.on_pan")
    line = _other_unit(state)
    if isinstance(procedure, BalanceCheck):
        label, line = pan_words(procedure, facts)
    phase, word = _phase(state)
    return PanView(
        phase=phase, word=word, label=label, number=mass_number(shown, facts.readability),
        unit="g", line1=line, progress=state.progress,
    )  # fmt: skip


def _other_unit(state: PanState) -> str:
    """Why the scale shows another number than the kiosk."""
    return "" if state.unit in (None, "g") else say("pan.other_unit", unit=state.unit)


def _phase(state: PanState) -> tuple[str, str]:
    phase, word = _WORDS.get(state.phase, ("moving", "pan.moving"))
    return phase, say(word)


def _on_the_tray(
    procedure: CountSamples, state: PanState, shown: Decimal, facts: TableFacts
) -> PanView:
    under = procedure.taken_off
    assert under is not None
    phase, word = _phase(state)
    mass = grams(under, facts.readability)
    tared = shown - under
    words = "key.samples_off" if procedure.adding else "pan.tray_off"
    off = phase == "empty"  # tray and all are off the pan: a negative mass would only confuse
    return PanView(
        phase=phase, word=word, label=say("pan.on_pan" if off else "pan.on_tray"),
        number=mass_number(shown if off else tared, facts.readability), unit="g",
        line1="" if off else say(words, mass=mass), progress=state.progress,
    )  # fmt: skip


def _is_done(procedure: FillContainer) -> bool:
    return procedure.state in (ContainerState.KEY, ContainerState.SAVED)


def _in_the_jar(procedure: FillContainer, state: PanState, shown: Decimal) -> PanView:
    draft = procedure.kept
    phase, word = _phase(state)
    gross: Decimal | None = shown
    if phase == "moving":
        phase, word = "pouring", say("pan.pouring")
    if _is_done(procedure):
        phase, word, gross = "captured", say("pan.captured"), None
    elif phase == "empty":  # the jar is off the pan: nothing is in it there
        return PanView(
            phase=phase, word=word, label=say("pan.on_pan"), unit="g",
            number=mass_number(shown, draft.readability), progress=state.progress,
        )  # fmt: skip
    live = live_count_of(procedure, gross)
    label = say("pan.in_lots" if draft.lots else "pan.in_jar")
    inside_text = say("pan.inside", mass=grams(draft.inside(gross), draft.readability))
    return PanView(
        phase=phase, word=word, label=label, number=number(live.count if live else 0),
        unit=say("pan.pieces"), unit_below=True,
        line1=say("pan.pieces_between", low=number(live.low), high=number(live.high))
        if live
        else inside_text,
        line2=inside_text if live else "", progress=state.progress,
    )  # fmt: skip
