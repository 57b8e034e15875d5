"""Presenters of the two halves of making a count key: each state as a finished view."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from kiosk.estimating.scatter import CLASS_CV_PERCENT, ScatterClass
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.texts.numbers import grams, together
from kiosk.ui.presenters.begin_views import (
    STEPS,
    bits_view,
    old_samples_view,
    same_bag_view,
    say_of_bits,
)
from kiosk.ui.presenters.cup_views import back_button, home_button, picture_of
from kiosk.ui.presenters.sample_advice import ON_PAN, advice_text, pieces_button
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.tens_views import IN_TENS, tens_button
from kiosk.ui.presenters.views import (
    ButtonView,
    Choice,
    ChoicesView,
    LeaveView,
    PutOnView,
    QuestionView,
    SampleRow,
    SamplesView,
    SheetView,
    button,
)
from kiosk.ui.widgets.bricks import grouping

CLASS_NAMES = {
    ScatterClass.BEADS: "key.class.beads",
    ScatterClass.PASTA: "key.class.pasta",
    ScatterClass.GRAINS: "key.class.grains",
    ScatterClass.MIXED: "key.class.mixed",
    ScatterClass.UNKNOWN: "key.class.unknown",
}
# What stands in jars, with the class that its pieces belong to.
JAR_MATERIALS = (
    ("rice", ScatterClass.GRAINS),
    ("lentils", ScatterClass.GRAINS),
    ("beans", ScatterClass.GRAINS),
    ("pasta", ScatterClass.PASTA),
    ("beads", ScatterClass.BEADS),
    ("hex nuts", ScatterClass.BEADS),
    ("buttons", ScatterClass.MIXED),
    ("something else", ScatterClass.UNKNOWN),
)


def samples_view(procedure: CountSamples, facts: TableFacts) -> SheetView:
    """The view of steps 1 and 2."""
    match procedure.state:
        case SamplesState.RESUME:
            return _resume(procedure)
        case SamplesState.MATERIAL:
            return _materials()
        case SamplesState.OLD_SAMPLES:
            return old_samples_view(procedure)
        case SamplesState.SAME_BAG:
            return same_bag_view()
        case SamplesState.BITS:
            return bits_view()
        case SamplesState.TRAY_CLEAR | SamplesState.TRAY_ON:
            return _tray(procedure, facts)
        case SamplesState.LEAVING:
            return leave_key_view(procedure)
    return _samples(procedure)


def _tray(procedure: CountSamples, facts: TableFacts) -> PutOnView:
    down = procedure.state is SamplesState.TRAY_ON
    view = put_on_view(procedure, facts, arrows_down=down)
    if not down:
        return view
    return replace(view, body=say_of_bits("key.tray_on.body", procedure.kept.bits))


def _resume(procedure: CountSamples) -> QuestionView:
    return QuestionView(
        title=say("key.resume.title", material=jar_material(procedure.kept.material)),
        body=say("key.resume.body"),
        step=1,
        steps=STEPS,
        step_text=say("key.step.1"),
        art="tray",
        main=button(say("key.resume.yes"), Person.YES, sign="arrow"),
        second=button(say("key.resume.no"), Person.NO),
        home=home_button(),
        beside_home=button(say("jars.open"), Person.JARS),
    )


def jar_material(name: str) -> str:
    """The word for what is in a jar."""
    return say(f"key.material.{name.replace(' ', '_')}")


def _materials() -> ChoicesView:
    return ChoicesView(
        screen="choices",
        title=say("key.material.title"),
        note=say("key.caution"),
        choices=tuple(
            Choice(
                text=jar_material(name),
                note=say(CLASS_NAMES[scatter]),
                value=(name, scatter.value, CLASS_CV_PERCENT[scatter]),
            )
            for name, scatter in JAR_MATERIALS
        ),
        second=button(say("jars.open"), Person.JARS),
        home=back_button(),
    )


def put_on_view(procedure: KeyProcedure, facts: TableFacts, *, arrows_down: bool) -> PutOnView:
    """Put a thing on, or take everything off first."""
    ask = procedure.ask
    ring = arrows_down and not facts.typed
    then = "cup.put_on.typed_then" if facts.typed else "cup.put_on.ring_then"
    return PutOnView(
        title=say(ask.title),
        body=say(ask.body or ""),
        step=ask.step,
        steps=STEPS,
        step_text=say(f"key.step.{ask.step}"),
        art=picture_of(ask),
        arrows="down" if arrows_down else "up",
        sign="ring" if ring else "",
        sign_text=say("cup.put_on.ring") if ring else "",
        side_text=say(then) if arrows_down else "",
        home=home_button(),
    )


def leave_key_view(procedure: KeyProcedure) -> LeaveView:
    """Keep going, or leave the key half made."""
    step = procedure.ask.step
    return LeaveView(
        title=say("key.leave.title"),
        body=say("key.leave.body"),
        step=step,
        steps=STEPS,
        step_text=say(f"key.step.{step}"),
        art="tray",
        main=button(say("cup.leave.stay"), Person.STAY, sign="arrow"),
        second=button(say("cup.leave.leave"), Person.LEAVE, sign="home"),
    )


# The samples ---------------------------------------------------------------------------------


def _samples(procedure: CountSamples) -> SamplesView:
    draft = procedure.kept
    step = draft.readability
    nets = list(draft.sample_nets)
    on_pan = procedure.on_tray if procedure.state in ON_PAN else None
    shown = [*nets, on_pan] if on_pan is not None else nets
    group = grouping(max((_steps(mass, step) for mass in shown), default=0))
    return SamplesView(
        title=_samples_title(procedure),
        step=2,
        steps=STEPS,
        step_text=say("key.step.2"),
        rows=_rows(procedure, shown),
        undo_text=say("button.undo"),
        brick_text=_brick_text(step, group) if shown and step else "",
        differ_text=_differ_text(shown, step),
        advice=advice_text(procedure),
        change=tens_button(procedure),
        main=_samples_main(procedure),
        second=_samples_second(procedure),
        home=home_button(),
    )


def _samples_title(procedure: CountSamples) -> str:
    draft, title = procedure.kept, procedure.ask.title
    if title in ("key.count.title", "key.add.title"):
        return say_of_bits(title, draft.bits, pieces=draft.pieces)
    return say(title, pieces=draft.pieces)


def _steps(mass: Decimal, step: Decimal | None) -> int:
    return int(max(Decimal(0), mass) / step + Decimal("0.5")) if step else 0


def _rows(procedure: CountSamples, shown: list[Decimal]) -> tuple[SampleRow, ...]:
    draft = procedure.kept
    step = draft.readability
    bricks = [_steps(mass, step) for mass in shown]
    fewest = min(bricks, default=0)
    rows = []
    for place in range(max(draft.wanted, len(shown))):
        name = say(f"key.sample.{place + 1}")
        if place >= len(shown):
            rows.append(SampleRow(name=name, note=say("key.sample.to_come")))
            continue
        kept = place < len(draft.samples)
        rows.append(
            SampleRow(
                name=name,
                mass_text=grams(shown[place], step),
                bricks=bricks[place],
                differing=bricks[place] - fewest,
                state="kept" if kept else "on the pan",
                note="" if kept else say("key.sample.on_pan"),
            )
        )
    return tuple(rows)


def _brick_text(step: Decimal, group: int) -> str:
    if group == 1:
        return say("key.brick", mass=grams(step, step))
    return say("key.bricks", count=group, mass=grams(step, step))


def _differ_text(shown: list[Decimal], step: Decimal | None) -> str:
    if len(shown) < 2:
        return ""
    spread = max(shown) - min(shown)
    return say("key.differ_by", mass=grams(spread, step)) if spread else say("key.no_difference")


def _samples_main(procedure: CountSamples) -> ButtonView:
    state, draft = procedure.state, procedure.kept
    if state is SamplesState.READY and procedure.on_tray is not None:
        mass = together(grams(procedure.on_tray, draft.readability))
        words = say("key.keep", mass=mass)
        return button(words, Person.KEEP, sign="tick")
    if state is SamplesState.SPREAD:
        return button(say("key.go_on"), Person.GO_ON, sign="arrow")
    empty = state in (SamplesState.EMPTY_TRAY, SamplesState.SAME)
    if state in IN_TENS:
        return button(say("key.tens.waiting"), sign="wait", state="waiting")
    waits = "key.waiting_empty" if empty else "key.waiting"
    return button(say(waits), sign="wait", state="waiting")


def _samples_second(procedure: CountSamples) -> ButtonView | None:
    if procedure.state is SamplesState.SPREAD:
        more = procedure.offers(Person.MORE)
        return button(say("key.one_more"), Person.MORE) if more else None
    if procedure.state in IN_TENS:
        return button(say("key.tens.stop"), Person.NO)
    if pieces := pieces_button(procedure):
        return pieces
    return button(say("key.enough"), Person.GO_ON) if procedure.offers(Person.GO_ON) else None
