"""Presenters of the second half of a count key: container, pour, key."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from string import ascii_uppercase

from kiosk.estimating.count_key import CountKey, Refused
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.presenters.begin_views import STEPS, say_of_bits
from kiosk.ui.presenters.cup_views import home_button
from kiosk.ui.presenters.key_views import jar_material, leave_key_view, put_on_view
from kiosk.ui.presenters.pour_views import goals_view, lots_view, number_view, pour_view
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    KeyView,
    MessageView,
    PutOnView,
    QuestionView,
    SheetView,
    button,
)


def container_view(procedure: FillContainer, facts: TableFacts, gross: Decimal | None) -> SheetView:
    """The view of steps 3 to 5; `gross` is what the pan shows at this moment, in grams."""
    match procedure.state:
        case ContainerState.BACK_IN:
            return _back_in(procedure)
        case ContainerState.GOAL:
            return goals_view(procedure)
        case ContainerState.NUMBER:
            return number_view(procedure)
        case ContainerState.PAN_CLEAR | ContainerState.EMPTY_ON | ContainerState.EMPTIED:
            return _put_on(procedure, facts)
        case ContainerState.LOT:
            return lots_view(procedure)
        case ContainerState.BAGS:
            return _bags()
        case ContainerState.LEAVING:
            return leave_key_view(procedure)
        case ContainerState.KEY:
            return _key(procedure, facts)
        case ContainerState.REFUSED:
            return _refused(procedure)
        case ContainerState.SAVED:
            return _saved(procedure, facts)
    return pour_view(procedure, facts, gross)


def _put_on(procedure: FillContainer, facts: TableFacts) -> PutOnView:
    view = put_on_view(
        procedure, facts, arrows_down=procedure.state is not ContainerState.PAN_CLEAR
    )
    draft = procedure.kept
    if procedure.state is ContainerState.EMPTY_ON and not draft.lots and draft.bits is False:
        return replace(view, body=say("key.empty_on.body.whole"))
    if not draft.lots:
        return view
    return replace(view, title=say("key.emptied.title"), body=say("key.emptied.body"))


def _back_in(procedure: FillContainer) -> QuestionView:
    return QuestionView(
        title=say("key.back_in.title"),
        body=say("key.back_in.body"),
        step=3,
        steps=STEPS,
        step_text=say("key.step.3"),
        art="jar",
        main=button(say("key.back_in.yes"), Person.YES, sign="tick"),
        second=button(say("key.back_in.no"), Person.NO),
        home=home_button(),
    )


def _bags() -> QuestionView:
    return QuestionView(
        title=say("key.bags.title"),
        body=say("key.bags.body"),
        step=4,
        steps=STEPS,
        step_text=say("key.step.4"),
        art="jar",
        main=button(say("key.bags.yes"), Person.YES, sign="tick"),
        second=button(say("key.bags.no"), Person.NO),
        home=home_button(),
    )


def _key(procedure: FillContainer, facts: TableFacts) -> KeyView:
    key = procedure.key
    assert isinstance(key, CountKey)
    covered = facts.covered
    letter = _letter(facts)
    back_in = procedure.kept.back_in
    return KeyView(
        title=jar_material(procedure.kept.material)
        if covered
        else say_of_bits("key.done.title", procedure.kept.bits, count=number(key.count)),
        step=5,
        steps=STEPS,
        step_text=say("key.step.5"),
        count=Decimal(key.count),
        chip=say("key.back_in.done" if back_in else "key.back_out.done"),
        sure="" if covered else say("key.sure", low=number(key.low), high=number(key.high)),
        cost=say("key.cost", points=number(key.score_effect, 1)),
        cost_where=say("key.cost.where"),
        real=say("key.real"),
        real_where=say("key.real.where"),
        band=float(key.half_width_percent) / 100,
        left=number(0),
        peak="" if covered else number(key.count),
        right="" if covered else say("key.pieces_at", count=number(2 * key.count)),
        which=say("key.which_jar"),
        used_text=say("key.used"),
        used=facts.used_letters,
        chosen=letter,
        covered=covered,
        note=_note(procedure, key),
        main=button(say("key.save", letter=letter), Person.KEEP, letter, sign="tick")
        if letter
        else button(say("key.all_used"), sign="off", state="off"),
        second=button(say("key.refused.more"), Person.MORE),
        home=home_button(),
        beside_home=button(
            say("key.uncover" if covered else "key.cover"), Person.COVER, sign="cover"
        ),
    )


def _note(procedure: FillContainer, key: CountKey) -> str:
    """What is doubtful; or else where most of the uncertainty comes from, and what would help."""
    doubts = [told for told in key.warnings if told != say("count.warning.bits")]
    if doubts:
        return doubts[0]
    advice = procedure.kept.key_advice()
    if advice.dominant is None:
        return advice.sentence
    most = say(f"key.most.{advice.dominant.name.lower()}")
    return say("key.most.help", most=most, help=advice.help) if advice.step else most


def _letter(facts: TableFacts) -> str:
    """The letter that the coach chose, or else the first free one; "" when all are used."""
    free = [letter for letter in ascii_uppercase if letter not in facts.used_letters]
    return facts.letter if facts.letter in free else free[0] if free else ""


def _refused(procedure: FillContainer) -> MessageView:
    refused = procedure.key
    assert isinstance(refused, Refused)
    return MessageView(
        title=say("key.refused.title"),
        step=5,
        steps=STEPS,
        step_text=say("key.step.5"),
        lines=(refused.sentence,),
        main=button(say("key.refused.more"), Person.MORE, sign="again"),
        second=button(say("key.refused.pour"), Person.UNDO),
        home=home_button(),
    )


def _saved(procedure: FillContainer, facts: TableFacts) -> MessageView:
    letter = procedure.letter or ""
    return MessageView(
        title=say("key.saved.title", letter=letter),
        body=say("key.saved.body", letter=letter),
        step=5,
        steps=STEPS,
        step_text=say("key.step.5"),
        letter="" if facts.printed else letter,
        lines=facts.printed,
        main=button(say("jars.close"), Person.GO_ON, sign="arrow"),
        second=button(say("paper.print"), Person.PRINT),
        home=home_button(),
    )
