"""The presenter of measuring a container with water: each state as a finished view."""

from __future__ import annotations

from dataclasses import replace
from decimal import ROUND_CEILING, ROUND_FLOOR

from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.procedure import Person
from kiosk.records.water_entries import WaterRole
from kiosk.texts import plural, say
from kiosk.texts.numbers import at_most, grams, number, together
from kiosk.ui.presenters.cup_views import home_button, picture_of
from kiosk.ui.presenters.measure_views import BOX_NUMBERS, cover_button, cubic, free_number, limits
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    ButtonView,
    GuessView,
    KeyView,
    MessageView,
    PanView,
    PutOnView,
    QuestionView,
    SheetView,
    button,
)

STEPS = 4
_BEFORE = (WaterState.RESUME, WaterState.CAUTION, WaterState.LEAVING)  # without a trail
_VOLUME_SHOWN = (WaterState.RESULT, WaterState.SAVED)


def water_view(procedure: MeasureWater, facts: TableFacts) -> SheetView:
    """The view of any state."""
    match procedure.state:
        case WaterState.RESUME:
            view: SheetView = _resume()
        case WaterState.CAUTION:
            view = _caution()
        case WaterState.WARMTH:
            view = _warmth(procedure)
        case WaterState.SURE:
            view = _sure(procedure)
        case WaterState.CLEAR | WaterState.EMPTY:
            view = _put_on(procedure, facts)
        case WaterState.LIFT | WaterState.FILLED | WaterState.NOT_FULL:
            view = _fill(procedure)
        case WaterState.TOO_HEAVY:
            view = _too_heavy()
        case WaterState.RESULT:
            view = _result(procedure, facts)
        case WaterState.SAVED:
            view = _saved(procedure, facts)
        case _:
            view = _leave()
    return view if procedure.state in _BEFORE else _on_the_way(view, procedure)


def captured_water(procedure: MeasureWater, facts: TableFacts) -> PanView | None:
    """The pan while the volume is shown: the water that was weighed last."""
    draft = procedure.kept if procedure.state in _VOLUME_SHOWN else None
    if draft is None or draft.celsius is None:
        return None
    if facts.covered:
        return PanView(phase="hidden", word=say("pan.hidden"), hidden_text=say("pan.covered"))
    mass = grams(draft.nets[-1], draft.readability).removesuffix(" g")
    return PanView(
        phase="captured", word=say("pan.captured"), label=say("water.pan.label"), number=mass,
        unit="g", line1=say("water.pan.line", celsius=_celsius(procedure)),
    )  # fmt: skip


def _on_the_way(view: SheetView, procedure: MeasureWater) -> SheetView:
    step = procedure.ask.step
    words = say("water.step", step=step, steps=STEPS, what=say(f"water.step.{step}"))
    return replace(view, step=step, steps=STEPS, step_text=words)


# The water -----------------------------------------------------------------------------------


def _resume() -> MessageView:
    return MessageView(
        title=say("water.resume.title"),
        lines=(say("water.resume.body"),),
        main=button(say("measure.resume.yes"), Person.YES, sign="arrow"),
        second=button(say("measure.resume.no"), Person.NO),
        home=home_button(),
    )


def _caution() -> MessageView:
    lines = ("water.caution.fill", "water.caution.wipe", "water.caution.local")
    return MessageView(
        title=say("water.caution.title"),
        lines=tuple(map(say, lines)),
        main=button(say("water.caution.ready"), Person.GO_ON, sign="tick"),
        second=button(say("water.caution.other"), Person.NO),
        home=home_button(),
    )


def _warmth(procedure: MeasureWater) -> GuessView:
    typed = procedure.text
    over = procedure.offers(Person.GO_ON)
    return GuessView(
        title=say("water.warmth.title"),
        label=say("water.warmth.label"),
        typed=typed,
        unit=say("water.warmth.unit"),
        hint=procedure.note or say("water.warmth.hint"),
        main=button(together(say("water.warmth.keep", celsius=typed)), Person.KEEP, sign="tick")
        if typed
        else button(say("water.warmth.type"), sign="wait", state="waiting"),
        second=button(say("water.to_result"), Person.GO_ON) if over else None,
        home=home_button(),
    )


def _sure(procedure: MeasureWater) -> MessageView:
    return MessageView(
        title=say("water.sure.title", celsius=procedure.text),
        lines=(say("water.sure.body"),),
        main=button(say("water.sure.no"), Person.NO, sign="again"),
        second=button(say("water.sure.yes"), Person.YES),
        home=home_button(),
    )


# On the pan ----------------------------------------------------------------------------------


def _put_on(procedure: MeasureWater, facts: TableFacts) -> PutOnView:
    ask = procedure.ask
    down = procedure.state is WaterState.EMPTY
    ring = down and not facts.typed
    then = "cup.put_on.typed_then" if facts.typed else "cup.put_on.ring_then"
    return PutOnView(
        title=say(ask.title),
        body=say(ask.body or ""),
        art=picture_of(ask),
        arrows="down" if down else "up",
        sign="ring" if ring else "",
        sign_text=say("cup.put_on.ring") if ring else "",
        side_text=say(then) if down else "",
        home=home_button(),
    )


def _fill(procedure: MeasureWater) -> QuestionView:
    ask, filled = procedure.ask, procedure.state is WaterState.FILLED
    body = say(ask.body or "")
    if procedure.state is WaterState.LIFT:
        body = f"{_last_mass(procedure)} {body}"
    water_on_pan = procedure.state is WaterState.LIFT and bool(procedure.kept.fillings)
    waits = "water.filled.wait" if filled else "water.lift.wait"
    return QuestionView(
        title=say(ask.title),
        body=body,
        art="full vase" if water_on_pan else picture_of(ask),
        main=button(say(waits), sign="wait", state="waiting"),
        second=_undo(procedure),
        home=home_button(),
    )


def _last_mass(procedure: MeasureWater) -> str:
    last = procedure.kept.masses[-1]
    told = "water.lift.kept" if last.role == WaterRole.EMPTY else "water.lift.full"
    return say(told, mass=together(grams(last.weighing.grams, last.weighing.readability)))


def _undo(procedure: MeasureWater) -> ButtonView:
    last = procedure.kept.masses[-1]
    if last.role == WaterRole.EMPTY:
        return button(say("water.undo.empty"), Person.UNDO)
    mass = together(grams(last.weighing.grams, last.weighing.readability))
    return button(say("water.undo.filled", mass=mass), Person.UNDO)


def _too_heavy() -> MessageView:
    return MessageView(
        title=say("water.too_heavy.title"),
        lines=(say("water.too_heavy.off"), say("water.too_heavy.then")),
        main=button(say("water.too_heavy.sizes"), Person.NO, sign="arrow"),
        second=button(say("water.too_heavy.again"), Person.YES),
        home=home_button(),
    )


# The volume ----------------------------------------------------------------------------------


def _celsius(procedure: MeasureWater) -> str:
    celsius = procedure.kept.celsius
    assert celsius is not None
    return number(celsius, 0)


def _result(procedure: MeasureWater, facts: TableFacts) -> KeyView:
    draft = procedure.kept
    volume = draft.volume()
    assert volume is not None
    covered, label = facts.covered, free_number(facts)
    low, high = cubic(volume.low, ROUND_FLOOR), cubic(volume.high, ROUND_CEILING)
    once = "" if len(draft.fillings) > 1 else say("water.one_filling")
    return KeyView(
        title=say("measure.shape.water")
        if covered
        else say("measure.result.volume", volume=cubic(volume.cm3)),
        count=volume.cm3,
        chip=plural("water.fillings", len(draft.fillings), celsius=_celsius(procedure)),
        sure="" if covered else say("key.sure", low=low, high=high),
        cost=say("key.cost", points=at_most(procedure.score_effect(volume), 1)),
        cost_where=say("key.cost.where"),
        real=say("measure.real"),
        real_where=say("key.real.where"),
        band=float((volume.high - volume.low) / 2 / volume.cm3),
        left=number(0),
        peak="" if covered else cubic(volume.cm3),
        right="" if covered else say("measure.cubic_at", volume=cubic(2 * volume.cm3)),
        which=say("measure.which"),
        labels=BOX_NUMBERS,
        lids=False,
        used_text=say("key.used"),
        used=facts.used_boxes,
        chosen=label,
        covered=covered,
        note=limits(volume, facts) or once,
        main=button(say("measure.save", number=label), Person.KEEP, int(label), sign="tick")
        if label
        else button(say("measure.all_used"), sign="off", state="off"),
        second=button(say("water.more"), Person.MORE)
        if procedure.offers(Person.MORE)
        else button(say("water.last_again"), Person.UNDO),
        home=home_button(),
        beside_home=cover_button(facts),
    )


def _saved(procedure: MeasureWater, facts: TableFacts) -> MessageView:
    label = number(procedure.number or 0)
    return MessageView(
        title=say("measure.saved.title", number=label),
        body=say("measure.saved.body", number=label),
        lines=facts.printed,
        main=button(say("measure.saved.done"), Person.HOME, sign="tick"),
        second=button(say("paper.print"), Person.PRINT),
        home=home_button(),
        beside_home=cover_button(facts),
    )


def _leave() -> MessageView:
    return MessageView(
        title=say("measure.leave.title"),
        lines=(say("water.leave.body"),),
        main=button(say("cup.leave.stay"), Person.STAY, sign="arrow"),
        second=button(say("cup.leave.leave"), Person.LEAVE, sign="home"),
    )
