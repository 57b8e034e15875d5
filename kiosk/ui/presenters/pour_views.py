"""Presenters of the pour: how full it shall be, the gauge with the goal, the lots."""

from __future__ import annotations

from decimal import Decimal

from kiosk.estimating.live_count import LiveCount
from kiosk.estimating.pour_goal import AS_IT_COMES, BANDS, Stand, Way
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.fill_goal import IN_LOTS, NUMBER
from kiosk.procedures.procedure import Person
from kiosk.texts import plural, say
from kiosk.texts.numbers import grams, number, percent
from kiosk.ui.presenters.begin_views import STEPS
from kiosk.ui.presenters.cup_views import home_button
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    ButtonView,
    Choice,
    ChoicesView,
    GuessView,
    PourView,
    SampleRow,
    SamplesView,
    button,
)


def goals_view(procedure: FillContainer) -> ChoicesView:
    """The bands, another number, as it comes; and whether it is weighed in lots."""
    draft = procedure.kept
    bands = [
        Choice(
            text=say(f"key.goal.{band.name}", low=number(band.low), high=number(band.high)),
            note=say("key.goal.from", mass=grams(_rough(procedure.mass_of(band)))),
            value=band.name,
            chosen=draft.goal == band.name,
        )
        for band in BANDS
    ]
    goal = procedure.goal
    typed = goal is not None and not goal.is_band
    return ChoicesView(
        screen="choices",
        title=say("key.goal.title"),
        choices=(
            *bands,
            Choice(
                text=say("key.goal.number"),
                note=say("key.goal.pieces", count=number(int(goal.name))) if goal and typed else "",
                value=NUMBER,
                chosen=typed,
            ),
            Choice(text=say("key.goal.any"), value=AS_IT_COMES, chosen=draft.goal == AS_IT_COMES),
            Choice(
                text=say("key.goal.lots"),
                note=say("key.goal.lots.on" if draft.in_lots else "key.goal.lots.off"),
                value=IN_LOTS,
                chosen=draft.in_lots,
            ),
        ),
        note=say("key.goal.note"),
        home=home_button(),
    )


def _rough(mass: Decimal) -> Decimal:
    """To two digits: what a person reads off as about so much."""
    return mass.quantize(Decimal(1).scaleb(mass.adjusted() - 1)).normalize()


def number_view(procedure: FillContainer) -> GuessView:
    """The number wanted, on the number pad."""
    wanted = procedure.wanted
    limit = number(procedure.world.rules.count_limit)
    ready = procedure.offers(Person.ENTER)
    return GuessView(
        title=say("key.goal.number.title"),
        step=3,
        steps=STEPS,
        step_text=say("key.step.3"),
        label=say("key.goal.number.label"),
        typed="" if wanted is None else number(wanted),
        unit=say("pan.pieces"),
        hint=say("key.goal.too_many", limit=limit) if procedure.too_many else "",
        main=button(say("key.goal.number.enter"), Person.ENTER, sign="tick")
        if ready
        else button(say("key.goal.number.enter"), sign="off", state="off"),
        home=home_button(),
        beside_home=button(say("key.goal.other"), Person.MORE),
    )


# On the pan ----------------------------------------------------------------------------------


def live_count_of(procedure: FillContainer, gross: Decimal | None) -> LiveCount | None:
    """The count for the moment, None while nothing countable is inside."""
    return procedure.kept.live(gross)


def pour_view(procedure: FillContainer, facts: TableFacts, gross: Decimal | None) -> PourView:
    """The gauge with the goal, and how far it is to there."""
    draft = procedure.kept
    live = live_count_of(procedure, gross)
    goal, way = procedure.goal, draft.way(gross)
    stopping = procedure.state is ContainerState.STOPPING
    too_heavy = not draft.in_lots and is_too_heavy(procedure, facts)
    warning = _warning(live, facts, too_heavy=too_heavy)
    return PourView(
        title=say(procedure.ask.title) if stopping else _title(procedure, facts, way, gross),
        step=4,
        steps=STEPS,
        step_text=say("key.step.4"),
        count=live.count if live else 0,
        band=goal.name if goal and goal.is_band else None,
        target=(goal.low, goal.high) if goal and not goal.is_band else None,
        bands=(say("key.band.low"), say("key.band.middle"), say("key.band.high")),
        now_text=say("key.now"),
        to_go=_to_go(way),
        goal_text=_goal_text(procedure),
        warning=warning,
        between="" if warning else _between(live),
        good_to="" if warning or goal else _good_to(live),
        jar_text="" if warning and goal else _jar_text(procedure),
        change=None
        if stopping
        else button(say("key.goal.change" if goal else "key.goal.set"), Person.CHOOSE),
        main=button(say("key.stopping.wait"), sign="wait", state="waiting")
        if stopping
        else button(say("key.stop"), Person.STOP, sign="square", state="ready" if live else "off"),
        second=_second(too_heavy=too_heavy, stopping=stopping),
        home=home_button(),
    )


def is_too_heavy(procedure: FillContainer, facts: TableFacts) -> bool:
    """Whether the fill was seen to be, or will be, more than the balance can weigh."""
    draft, most = procedure.kept, facts.scale.capacity
    goal = procedure.goal
    if procedure.too_heavy or goal is None or most is None or draft.empty is None:
        return procedure.too_heavy
    return draft.empty.weighing.grams + procedure.mass_of(goal) > most


ENOUGH = Decimal("0.9")  # of what the balance can weigh; then a lot is better ended


def _title(
    procedure: FillContainer, facts: TableFacts, way: Way | None, gross: Decimal | None
) -> str:
    if way is not None and way.stand is Stand.INSIDE:
        return say("key.pour.inside")
    if way is not None and way.stand is Stand.PAST:
        return say("key.pour.past")
    most = facts.scale.capacity
    full = gross is not None and most is not None and gross >= ENOUGH * most
    if procedure.kept.in_lots and full:
        return say("key.pour.lot_full")
    return say("key.pour.title" if way is None else "key.pour.until")


def _to_go(way: Way | None) -> str:
    if way is None or way.stand is Stand.INSIDE:
        return ""
    words = "key.pour.to_go" if way.stand is Stand.BEFORE else "key.pour.too_much"
    return say(words, mass=grams(way.grams.normalize()))


def _goal_text(procedure: FillContainer) -> str:
    goal = procedure.goal
    if goal is None:
        return ""
    if goal.is_band:
        return say("key.pour.goal", low=number(goal.low), high=number(goal.high))
    return say("key.pour.goal.number", count=number(int(goal.name)))


def _between(live: LiveCount | None) -> str:
    if live is None:
        return say("key.pour.empty")
    return say("key.pour.between", low=number(live.low), high=number(live.high))


def _warning(live: LiveCount | None, facts: TableFacts, *, too_heavy: bool) -> str:
    limit = facts.settings.rules.count_limit
    if live is not None and live.count > limit:
        return say("key.pour.over", limit=number(limit))
    return say("key.pour.too_heavy") if too_heavy else ""


def _good_to(live: LiveCount | None) -> str:
    if live is None:
        return ""
    return say("key.pour.good_to", percent=percent(live.half_width_percent))


def _jar_text(procedure: FillContainer) -> str:
    """Which lot it is; without lots, and where there is room, what the empty jar weighs."""
    draft = procedure.kept
    if draft.in_lots:
        kept, lot = draft.inside(None), number(len(draft.lots) + 1)
        if not draft.lots:
            return say("key.pour.first_lot")
        step = draft.lots[-1].filled.weighing.readability
        return say("key.pour.lot", number=lot, mass=grams(kept, step))
    if draft.empty is None or procedure.goal:
        return ""
    weighing = draft.empty.weighing
    return say("key.pour.jar", mass=grams(weighing.grams, weighing.readability))


def _second(*, too_heavy: bool, stopping: bool) -> ButtonView | None:
    if stopping:
        return None
    if too_heavy:
        return button(say("key.pour.in_lots"), Person.MORE)
    return button(say("key.pour.again"), Person.UNDO)


# The lots ------------------------------------------------------------------------------------


def lots_view(procedure: FillContainer) -> SamplesView:
    """Each lot kept, what they come to, and whether another is needed."""
    draft = procedure.kept
    way = draft.way(None)
    again = way is not None and way.stand is Stand.BEFORE
    following = button(
        say("key.lot.next" if again else "key.lot.next.small"),
        Person.GO_ON,
        sign="arrow" if again else "",
    )
    done = button(
        say("key.lot.all.small" if again else "key.lot.all"),
        Person.STOP,
        sign="" if again else "tick",
    )
    return SamplesView(
        title=say("key.lot.title", number=number(len(draft.lots))),
        step=4,
        steps=STEPS,
        step_text=say("key.step.4"),
        rows=tuple(
            SampleRow(
                name=say("key.lot.name", number=number(place)),
                mass_text=grams(lot.net, lot.filled.weighing.readability),
                state="kept",
            )
            for place, lot in enumerate(draft.lots, start=1)
        ),
        undo_text=say("button.undo"),
        advice=_together(procedure, way),
        main=following if again else done,
        second=done if again else following,
        home=home_button(),
    )


def _together(procedure: FillContainer, way: Way | None) -> str:
    draft = procedure.kept
    live = draft.live(None)
    if live is None:
        return ""
    told = plural(
        "key.lot.together",
        len(draft.lots),
        pieces=number(live.count),
        low=number(live.low),
        high=number(live.high),
    )
    stands = {
        Stand.BEFORE: "key.lot.to_go", Stand.INSIDE: "key.lot.inside", Stand.PAST: "key.lot.past",
    }  # fmt: skip
    if way is None:
        return told
    return f"{told} {say(stands[way.stand], mass=grams(way.grams.normalize()))}"
