"""Presenters of the second half of a count key: container, pour, key."""

from __future__ import annotations

from decimal import Decimal
from string import ascii_uppercase

from kiosk.estimating.count_key import CountKey, Refused
from kiosk.estimating.live_count import LiveCount
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.texts.numbers import grams, number, percent
from kiosk.ui.presenters.cup_views import home_button
from kiosk.ui.presenters.key_views import STEPS, jar_material, leave_key_view, put_on_view
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    KeyView,
    MessageView,
    PourView,
    QuestionView,
    SheetView,
    button,
)

# (name of the band, from, below): what the event calls hundreds, thousands and high
BANDS = (("low", 100, 1_000), ("middle", 1_000, 10_000), ("high", 12_000, 20_001))


def container_view(procedure: FillContainer, facts: TableFacts, gross: Decimal | None) -> SheetView:
    """The view of steps 3 to 5; `gross` is what the pan shows at this moment, in grams."""
    match procedure.state:
        case ContainerState.BACK_IN:
            return _back_in(procedure)
        case ContainerState.PAN_CLEAR | ContainerState.EMPTY_ON:
            down = procedure.state is ContainerState.EMPTY_ON
            return put_on_view(procedure, facts, arrows_down=down)
        case ContainerState.LEAVING:
            return leave_key_view(procedure)
        case ContainerState.KEY:
            return _key(procedure, facts)
        case ContainerState.REFUSED:
            return _refused(procedure)
        case ContainerState.SAVED:
            return _saved(procedure, facts)
    return _pour(procedure, facts, gross)


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


def band_of(count: int) -> str | None:
    """The name of the band in which a count lies."""
    return next((name for name, start, end in BANDS if start <= count < end), None)


def live_count_of(procedure: FillContainer, gross: Decimal | None) -> LiveCount | None:
    """The count for the moment, None while nothing countable is inside."""
    return None if gross is None else procedure.kept.live(gross)


def _pour(procedure: FillContainer, facts: TableFacts, gross: Decimal | None) -> PourView:
    ask = procedure.ask
    live = live_count_of(procedure, gross)
    empty = procedure.kept.empty
    assert empty is not None
    limit = facts.settings.rules.count_limit
    stopping = procedure.state is ContainerState.STOPPING
    return PourView(
        title=say(ask.title),
        step=4,
        steps=STEPS,
        step_text=say("key.step.4"),
        count=live.count if live else 0,
        band=band_of(live.count) if live else None,
        bands=(say("key.band.low"), say("key.band.middle"), say("key.band.high")),
        now_text=say("key.now"),
        between=_between(live),
        good_to=_good_to(live, limit),
        jar_text=say("key.pour.jar", mass=grams(empty.weighing.grams, empty.weighing.readability)),
        main=button(say("key.stopping.title"), sign="wait", state="waiting")
        if stopping
        else button(say("key.stop"), Person.STOP, sign="square", state="ready" if live else "off"),
        second=None if stopping else button(say("key.pour.again"), Person.UNDO),
        home=home_button(),
    )


def _between(live: LiveCount | None) -> str:
    if live is None:
        return say("key.pour.empty")
    return say("key.pour.between", low=number(live.low), high=number(live.high))


def _good_to(live: LiveCount | None, limit: int) -> str:
    if live is None:
        return ""
    if live.count > limit:
        return say("key.pour.over", limit=number(limit))
    return say("key.pour.good_to", percent=percent(live.half_width_percent))


def _key(procedure: FillContainer, facts: TableFacts) -> KeyView:
    key = procedure.key
    assert isinstance(key, CountKey)
    covered = facts.covered
    letter = _letter(facts)
    back_in = procedure.kept.back_in
    return KeyView(
        title=jar_material(procedure.kept.material)
        if covered
        else say("key.done.title", count=number(key.count)),
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
        note=key.warnings[0] if key.warnings else "",
        main=button(say("key.save", letter=letter), Person.KEEP, letter, sign="tick")
        if letter
        else button(say("key.all_used"), sign="off", state="off"),
        second=button(say("key.refused.more"), Person.MORE),
        home=home_button(),
        beside_home=button(
            say("key.uncover" if covered else "key.cover"), Person.COVER, sign="cover"
        ),
    )


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
        main=button(say("key.saved.done"), Person.HOME, sign="tick"),
        second=button(say("paper.print"), Person.PRINT),
        home=home_button(),
    )
