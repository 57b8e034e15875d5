"""The samples as rows of bricks, with what is said of them and what can be pressed."""

from __future__ import annotations

from decimal import Decimal

from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.texts.numbers import grams, together
from kiosk.ui.presenters.begin_views import STEPS, say_of_bits
from kiosk.ui.presenters.cup_views import home_button
from kiosk.ui.presenters.sample_advice import ON_PAN, advice_text, pieces_button
from kiosk.ui.presenters.tens_views import IN_TENS, tens_button
from kiosk.ui.presenters.views import ButtonView, SampleRow, SamplesView, button
from kiosk.ui.widgets.bricks import grouping


def rows_view(procedure: CountSamples) -> SamplesView:
    """The samples so far and the one on the pan."""
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
