"""Presenters of the two halves of making a count key: each state as a finished view."""

from __future__ import annotations

from dataclasses import replace

from kiosk.estimating.scatter import CLASS_CV_PERCENT, ScatterClass
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.ui.presenters.begin_views import (
    STEPS,
    bits_view,
    old_samples_view,
    same_bag_view,
    say_of_bits,
)
from kiosk.ui.presenters.cup_views import back_button, home_button, picture_of
from kiosk.ui.presenters.sample_rows_view import rows_view
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    Choice,
    ChoicesView,
    LeaveView,
    PutOnView,
    QuestionView,
    SheetView,
    button,
)

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
    return rows_view(procedure)


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
