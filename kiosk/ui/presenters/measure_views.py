"""The presenter of measuring a container: each state as a finished view."""

from __future__ import annotations

from dataclasses import replace
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal

from kiosk.estimating.volume import Volume
from kiosk.procedures.measure import LONGEST, Measure, MeasureState
from kiosk.procedures.procedure import Person
from kiosk.procedures.volume_draft import USUAL_PLACES
from kiosk.records.volume_entries import LAST_BOX, LengthUnit, Shape
from kiosk.texts import say
from kiosk.texts.numbers import at_most, number, together
from kiosk.ui.presenters.cup_views import back_button, home_button
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    ButtonView,
    Choice,
    ChoicesView,
    ContainerView,
    EdgeRow,
    KeyView,
    MeasureView,
    MessageView,
    SheetView,
    button,
)

WHOLE_FROM = 100  # cm³
_DECIMALS = 2  # of a centimetre, at most: a ruler shows no more


def measure_view(procedure: Measure, facts: TableFacts) -> SheetView:
    """The view of any state."""
    match procedure.state:
        case MeasureState.SHAPE:
            return _shapes()
        case MeasureState.UNIT:
            return _units()
        case MeasureState.SIZE:
            view: SheetView = _size(procedure, facts)
        case MeasureState.RESUME:
            view = _resume(procedure)
        case MeasureState.SURE:
            view = _sure(procedure)
        case MeasureState.RESULT:
            view = _result(procedure, facts)
        case MeasureState.SAVED:
            view = _saved(procedure, facts)
        case _:
            view = _leave()
    if procedure.state is not MeasureState.RESUME:
        view = _on_the_way(view, procedure)
    container = _container(procedure, facts)
    return replace(view, container=container, beside_home=cover_button(facts))


def shape_name(shape: Shape | None) -> str:
    """How a shape is called, "" while none is chosen."""
    return "" if shape is None else say(f"measure.shape.{_key(shape)}")


def _key(name: str) -> str:
    return name.replace(" ", "_")


def _edge(edge: str) -> str:
    return say(f"measure.edge.{_key(edge)}")


def centimetres(cm: Decimal) -> str:
    """A size without its unit: no more decimals than it has, and no more than a ruler shows."""
    return number(cm, min(_DECIMALS, max(1, -int(cm.as_tuple().exponent))))


def cubic(cm3: Decimal, rounding: str = ROUND_HALF_UP) -> str:
    """A volume without its unit, in whole cm³ from WHOLE_FROM on; bounds are rounded outward."""
    step = Decimal(1) if cm3 >= WHOLE_FROM else Decimal("0.1")
    return number(cm3.quantize(step, rounding=rounding))


# Before measuring ----------------------------------------------------------------------------


def _shapes() -> ChoicesView:
    return ChoicesView(
        screen="choices",
        title=say("measure.shape.title"),
        note=say("measure.shape.note"),
        choices=tuple(
            Choice(
                text=shape_name(shape), note=say(f"measure.shape.{_key(shape)}.note"), value=shape
            )
            for shape in Shape
        ),
        home=back_button(),
    )


def _units() -> ChoicesView:
    return ChoicesView(
        screen="choices",
        title=say("measure.unit.title"),
        note=say("measure.unit.note"),
        choices=tuple(
            Choice(
                text=say(f"measure.unit.{unit}"), note=say(f"measure.unit.{unit}.note"), value=unit
            )
            for unit in LengthUnit
        ),
        home=back_button(),
    )


def _resume(procedure: Measure) -> MessageView:
    return MessageView(
        title=say("measure.resume.title", shape=shape_name(procedure.shape)),
        lines=(say("measure.resume.body"),),
        main=button(say("measure.resume.yes"), Person.YES, sign="arrow"),
        second=button(say("measure.resume.no"), Person.NO),
        home=home_button(),
    )


# Measuring -----------------------------------------------------------------------------------


def _on_the_way(view: SheetView, procedure: Measure) -> SheetView:
    """The view with its trail: a step for each edge, and one for the volume."""
    edges = procedure.kept.edges
    steps = len(edges) + 1
    over = procedure.state in (MeasureState.RESULT, MeasureState.SAVED)
    step = steps if over else edges.index(procedure.edge) + 1
    what = say("measure.step.volume") if over else _edge(procedure.edge)
    words = say("measure.step", step=step, steps=steps, what=what)
    return replace(view, step=step, steps=steps, step_text=words)


def _size(procedure: Measure, facts: TableFacts) -> MeasureView:
    straight = procedure.edge == "tall" and procedure.kept.shape in (
        Shape.TAPERED,
        Shape.TAPERED_BOX,
    )
    return MeasureView(
        title=_title(procedure),
        rows=tuple(_row(procedure, edge) for edge in procedure.kept.edges),
        hint=procedure.note or say("measure.straight_up" if straight else "measure.cover"),
        warns=bool(procedure.note),
        main=_main(procedure),
        second=_undo(procedure),
        home=home_button(),
    )


def _title(procedure: Measure) -> str:
    places = len(procedure.kept.at(procedure.edge))
    if places == 0:
        return say(f"measure.first.{_key(procedure.edge)}")
    if procedure.full:
        return say("measure.full.title")
    if places < USUAL_PLACES:
        return say("measure.second.title")
    uneven = procedure.kept.uneven(procedure.edge)
    return say("measure.third.title" if uneven else "measure.again.title")


def _row(procedure: Measure, edge: str) -> EdgeRow:
    draft = procedure.kept
    places, now = draft.places(edge), edge == procedure.edge
    mean = sum(places, Decimal(0)) / len(places) if places else None
    return EdgeRow(
        edge=edge,
        name=_edge(edge),
        state="now" if now else "done" if places else "to come",
        cells=tuple(map(centimetres, places)),
        typing=procedure.text if now and not procedure.full else None,
        note=_note(procedure, edge, places),
        mean="" if mean is None else f"{centimetres(mean)} cm",
    )


def _note(procedure: Measure, edge: str, places: tuple[Decimal, ...]) -> str:
    cm, unit = procedure.typed_cm, procedure.kept.unit
    if edge == procedure.edge and cm is not None and unit is not LengthUnit.CM:
        return say("measure.means", cm=centimetres(cm))
    if len(places) > 1:
        return say("measure.differ", cm=centimetres(procedure.kept.spread(edge)))
    return say("measure.one_place") if places else ""


def _main(procedure: Measure) -> ButtonView:
    if procedure.offers(Person.KEEP):
        cm = procedure.typed_cm
        words = (
            say("measure.keep_typed")
            if cm is None
            else together(say("measure.keep", cm=centimetres(cm)))
        )
        return button(words, Person.KEEP, sign="tick")
    if not procedure.offers(Person.GO_ON):
        return button(say("measure.type"), sign="wait", state="waiting")
    following = [
        edge for edge in procedure.kept.edges if edge != procedure.edge and procedure.wants(edge)
    ]
    words = say("measure.next", edge=_edge(following[0])) if following else say("measure.to_result")
    return button(words, Person.GO_ON, sign="arrow")


def _undo(procedure: Measure) -> ButtonView | None:
    size = procedure.last
    if size is None:
        return None
    places = procedure.kept.places(size.edge)
    return button(say("measure.undo", cm=centimetres(places[-1])), Person.UNDO)


def cover_button(facts: TableFacts) -> ButtonView:
    """What hides the volume, or shows it again."""
    words = say("key.uncover" if facts.covered else "key.cover")
    return button(words, Person.COVER, sign="cover")


def _sure(procedure: Measure) -> MessageView:
    cm = procedure.typed_cm
    assert cm is not None
    too_long = cm > LONGEST or procedure.other is None
    doubt = (
        say("measure.sure.long")
        if too_long
        else say("measure.sure.unlike", other=centimetres(procedure.other or cm))
    )
    return MessageView(
        title=say("measure.sure.title", cm=centimetres(cm)),
        lines=(doubt,),
        main=button(say("measure.sure.no"), Person.NO, sign="again"),
        second=button(say("measure.sure.yes"), Person.YES),
        home=home_button(),
    )


def _leave() -> MessageView:
    return MessageView(
        title=say("measure.leave.title"),
        lines=(say("measure.leave.body"),),
        main=button(say("cup.leave.stay"), Person.STAY, sign="arrow"),
        second=button(say("cup.leave.leave"), Person.LEAVE, sign="home"),
    )


# The volume ----------------------------------------------------------------------------------


def _container(procedure: Measure, facts: TableFacts) -> ContainerView:
    draft, covered = procedure.kept, facts.covered
    means = []
    for edge in draft.edges:
        places = draft.places(edge)
        means.append(sum(places, Decimal(0)) / len(places) if places else Decimal(0))
    measuring = procedure.state in (MeasureState.SIZE, MeasureState.SURE)
    view = ContainerView(
        name=shape_name(draft.shape),
        shape=draft.shape,
        sizes=tuple(map(float, means)),
        states=tuple(
            "now" if measuring and edge == procedure.edge else "done" if mean else "to come"
            for edge, mean in zip(draft.edges, means, strict=True)
        ),
        tags=tuple("" if covered or not mean else centimetres(mean) for mean in means),
        unit=say("measure.volume.to_come"),
        limit=say("measure.volume.limit", limit=number(facts.settings.rules.volume_limit_cm3)),
        zero=say("measure.volume.zero"),
        covered=covered,
        covered_text=say("pan.covered"),
    )
    volume = draft.volume()
    return view if volume is None else _with_volume(view, volume, facts)


def _with_volume(view: ContainerView, volume: Volume, facts: TableFacts) -> ContainerView:
    limit = facts.settings.rules.volume_limit_cm3
    return replace(
        view,
        number=cubic(volume.cm3),
        unit=say("measure.volume.unit"),
        between=say(
            "measure.volume.between",
            low=cubic(volume.low, ROUND_FLOOR),
            high=cubic(volume.high, ROUND_CEILING),
        ),
        share=float(volume.cm3) / limit,
        low_share=float(volume.low) / limit,
        high_share=float(volume.high) / limit,
    )


def _result(procedure: Measure, facts: TableFacts) -> KeyView:
    volume = procedure.kept.volume()
    assert volume is not None
    covered, label = facts.covered, free_number(facts)
    half = (volume.high - volume.low) / 2 / volume.cm3
    double = cubic(2 * volume.cm3)
    return KeyView(
        title=shape_name(procedure.shape)
        if covered
        else say("measure.result.volume", volume=cubic(volume.cm3)),
        count=volume.cm3,
        chip=say(
            "measure.places",
            places=len(procedure.kept.sizes),
            unit=say(f"measure.unit.{procedure.kept.unit}"),
        ),
        sure=""
        if covered
        else say(
            "key.sure", low=cubic(volume.low, ROUND_FLOOR), high=cubic(volume.high, ROUND_CEILING)
        ),
        cost=say("key.cost", points=at_most(procedure.score_effect(volume), 1)),
        cost_where=say("key.cost.where"),
        real=say("measure.real"),
        real_where=say("key.real.where"),
        band=float(half),
        left=number(0),
        peak="" if covered else cubic(volume.cm3),
        right="" if covered else say("measure.cubic_at", volume=double),
        which=say("measure.which"),
        labels=BOX_NUMBERS,
        lids=False,
        used_text=say("key.used"),
        used=facts.used_boxes,
        chosen=label,
        covered=covered,
        note=_warning(procedure, volume, facts),
        main=button(say("measure.save", number=label), Person.KEEP, int(label), sign="tick")
        if label
        else button(say("measure.all_used"), sign="off", state="off"),
        second=button(say("measure.more"), Person.MORE),
        home=home_button(),
    )


BOX_NUMBERS = tuple(str(box) for box in range(1, LAST_BOX + 1))


def free_number(facts: TableFacts) -> str:
    """The number that the coach chose, or else the first free one; "" when all are used."""
    free = [label for label in BOX_NUMBERS if label not in facts.used_boxes]
    return facts.letter if facts.letter in free else free[0] if free else ""


def limits(volume: Volume, facts: TableFacts) -> str:
    """What to say of a volume that is too large for the event, or may be; "" for any other."""
    limit = facts.settings.rules.volume_limit_cm3
    if volume.cm3 > limit:
        return say("measure.over", limit=number(limit))
    return say("measure.near", limit=number(limit)) if volume.high > limit else ""


def _warning(procedure: Measure, volume: Volume, facts: TableFacts) -> str:
    large = limits(volume, facts)
    if large:
        return large
    once = any(len(procedure.kept.at(edge)) == 1 for edge in procedure.kept.edges)
    return say("measure.one_place.note") if once else ""


def _saved(procedure: Measure, facts: TableFacts) -> MessageView:
    label = number(procedure.number or 0)
    return MessageView(
        title=say("measure.saved.title", number=label),
        body=say("measure.saved.body", number=label),
        lines=facts.printed,
        main=button(say("measure.saved.done"), Person.HOME, sign="tick"),
        second=button(say("paper.print"), Person.PRINT),
        home=home_button(),
    )
