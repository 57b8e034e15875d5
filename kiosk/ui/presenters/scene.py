"""The whole picture of one moment: sheet, pan and strip, from the desk and the pan's state."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

from drivers.errors import Reason
from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_jars import CheckJars, JarState
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.guess import Guess
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.measure import Measure
from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.pan_memory import Hindrance
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.queue_steps import QueueState
from kiosk.procedures.show_answer import ShowAnswer
from kiosk.procedures.throw_away import ThrowAway
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.texts import plural, say
from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import COACHS_PLACES, Place
from kiosk.ui.pages.page import Role
from kiosk.ui.presenters.answer_views import answer_view
from kiosk.ui.presenters.code_views import code_view
from kiosk.ui.presenters.container_views import container_view
from kiosk.ui.presenters.cup_views import hand_in_view, home_button, weigh_empty_view
from kiosk.ui.presenters.guess_views import guess_view
from kiosk.ui.presenters.jar_views import jars_view
from kiosk.ui.presenters.key_views import jar_material, samples_view
from kiosk.ui.presenters.last_check import warning
from kiosk.ui.presenters.measure_views import measure_view, shape_name
from kiosk.ui.presenters.pad_views import PadView, pad_view, zero_view
from kiosk.ui.presenters.pan_views import closed_pan, locked_pan, pan_view, round_pan
from kiosk.ui.presenters.queue_views import queue_view, set_aside_view
from kiosk.ui.presenters.scale_check_views import balance_check_view
from kiosk.ui.presenters.scale_views import scale_view, scales_view
from kiosk.ui.presenters.surroundings import TableFacts, team_name
from kiosk.ui.presenters.table_views import home_view, materials_view, round_runs_view, teams_view
from kiosk.ui.presenters.throw_views import throw_view
from kiosk.ui.presenters.trouble_views import (
    creeping_view,
    failure_view,
    hindrance_view,
    noted,
    refusal_view,
    restless_view,
)
from kiosk.ui.presenters.views import PanView, SheetView, StripView
from kiosk.ui.presenters.wall_views import clock_words
from kiosk.ui.presenters.water_views import water_view
from kiosk.ui.reading_off import ReadingOff
from kiosk.weighing.pan_watch import PanState

RESTLESS_AFTER_S = 6.0  # then the causes are named


_STRIP_WORDS = {
    Hindrance.ASLEEP: "strip.asleep",
    Hindrance.LATE: "strip.silent",
    Hindrance.GARBLED: "strip.garbled",
}

# Where a person has nothing to do but to let the pan come to rest.
_WAITS_FOR_REST = frozenset(
    {
        WeighEmptyState.SETTLING,
        HandInState.WEIGHING,
        SamplesState.TRAY_ON,
        ContainerState.EMPTY_ON,
        ContainerState.EMPTIED,
        ContainerState.STOPPING,
        CheckState.SETTLING,
        JarState.WEIGHING,
        QueueState.WEIGHING,
        WaterState.EMPTY,
        WaterState.FILLED,
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """What is to be seen; a `pad` stands in the pan's place."""

    sheet: SheetView
    pan: PanView
    strip: StripView
    pad: PadView | None = None


def scene_of(
    desk: Desk,
    pan: PanState,
    *,
    connected: bool,
    shown: Decimal | None,
    lost: Reason | None = None,
    typing: ReadingOff | None = None,
) -> Scene:
    """The scene; `shown` is the mass to be read on the pan in grams, `lost` why no port is open.

    `typing` is given where an adult types what the scale shows.
    """
    facts = desk.facts
    procedure = desk.procedure
    teaching = desk.teaching
    hindrance = desk.memory.hindrance if teaching is None else None
    if teaching is not None:
        connected = teaching.connected
    sheet = _sheet(desk, pan, shown, lost, connected=connected)
    pad = None if typing is None else _pad(desk, typing)
    if typing is not None and not typing.pan.zeroed and pad is not None and procedure is not None:
        sheet = zero_view(sheet)
    return Scene(
        sheet=sheet,
        pan=closed_pan(facts)
        if desk.failure is not None
        else locked_pan(facts, desk.drawer_label)
        if desk.locked
        else teaching.pan()
        if teaching is not None
        else round_pan(facts)
        if desk.in_room or desk.pan_closed
        else pan_view(procedure, facts, pan, hindrance, shown, coach=desk.place in COACHS_PLACES),
        strip=_warned(_strip(desk, hindrance, connected=connected), desk),
        pad=pad,
    )


def _pad(desk: Desk, typing: ReadingOff) -> PadView | None:
    if desk.failure is not None or desk.locked or isinstance(desk.procedure, Guess):
        return None
    return pad_view(desk.procedure, typing, scale_open=desk.place is Place.SCALE)


def _sheet(
    desk: Desk, pan: PanState, shown: Decimal | None, lost: Reason | None, *, connected: bool
) -> SheetView:
    facts, procedure = desk.facts, desk.procedure
    if desk.locked and desk.failure is None:
        return code_view(desk.lock, desk.drawer_label, desk.world.now())
    if desk.failure is not None and desk.notebook.failure is None:
        return refusal_view(desk.failure)
    if desk.failure is not None:
        home = home_button() if desk.may_leave else None
        return failure_view(desk.failure, at_stake=not desk.notebook.droppable, home=home)
    if procedure is None:
        return _place_view(desk, connected=connected)
    view = _procedure_view(procedure, facts, shown)
    if not procedure.ask.needs_pan:
        return view
    hindrance = desk.memory.hindrance
    home = view.home or home_button()
    if hindrance is not None:
        trouble: SheetView = hindrance_view(
            hindrance,
            facts,
            pan,
            lost=lost,
            masses_kept=_masses_kept(procedure),
            home=home,
        )
    elif pan.restless_for >= RESTLESS_AFTER_S and procedure.state in _WAITS_FOR_REST:
        trouble = creeping_view(home=home) if pan.creeping else restless_view(facts, home=home)
        if isinstance(procedure, CupQueue):
            trouble = set_aside_view(trouble, procedure)
    else:
        return noted(view, pan)
    # The trail stays where it is: the trouble is a stop on the same way.
    return replace(trouble, step=view.step, steps=view.steps, step_text=view.step_text)


def _place_view(desk: Desk, *, connected: bool) -> SheetView:
    facts = desk.facts
    if desk.teaching is not None:
        return desk.teaching.view()
    match desk.place:
        case Place.TEAMS:
            return teams_view(facts, guessing=bool(desk.guessing))
        case Place.MATERIALS:
            return materials_view(facts)
        case Place.SCALE:
            return scale_view(facts, connected=connected, now=desk.world.utc(desk.world.now()))
        case Place.SCALES:
            return scales_view(facts)
        case Place.ROUND:
            return desk.room.view()
        case Place.ROUND_RUNS:
            return round_runs_view()
    return home_view(facts, ready=desk.ready, unlocked=desk.lock.open and bool(desk.lock.digest))


def _masses_kept(procedure: Procedure) -> int:
    if isinstance(procedure, MeasureWater) and procedure.draft:
        return len(procedure.draft.masses)
    draft = procedure.draft if isinstance(procedure, KeyProcedure) else None
    return draft.masses_kept if draft else 0


def _procedure_view(procedure: Procedure, facts: TableFacts, shown: Decimal | None) -> SheetView:
    match procedure:
        case WeighEmpty():
            return weigh_empty_view(procedure, facts)
        case HandIn():
            return hand_in_view(procedure, facts)
        case CountSamples():
            return samples_view(procedure, facts)
        case FillContainer():
            return container_view(procedure, facts, shown)
        case Measure():
            return measure_view(procedure, facts)
        case MeasureWater():
            return water_view(procedure, facts)
        case ThrowAway():
            return throw_view(procedure)
        case Guess():
            return guess_view(procedure)
        case CheckJars():
            return jars_view(procedure, facts)
        case ShowAnswer():
            return answer_view(procedure, facts)
        case BalanceCheck():
            return balance_check_view(procedure, facts)
        case CupQueue():
            return queue_view(procedure, facts)
    raise TypeError(f"no presenter for {procedure!r}")


def _strip(desk: Desk, hindrance: Hindrance | None, *, connected: bool) -> StripView:
    facts = desk.facts
    if facts.typed:
        state = say("strip.typed")
    elif hindrance in _STRIP_WORDS:
        state = say(_STRIP_WORDS[hindrance])
    else:
        state = say("strip.connected" if connected else "strip.unplugged")
    who = _who(desk)
    return StripView(
        connected=connected and hindrance not in _STRIP_WORDS,
        words=(state, *_not_stored(facts), *_job(desk)),
        simulated=facts.simulated,
        typed=facts.typed,
        plate=say("strip.simulated"),
        lock="coach" if who else "",
        lock_text=who,
    )


def _not_stored(facts: TableFacts) -> tuple[str, ...]:
    return (plural("strip.not_stored", facts.not_stored),) if facts.not_stored else ()


def _who(desk: Desk) -> str:
    """Whose side of the table this is, "" for that of the students."""
    if desk.coach_side:
        return say("strip.coach") if desk.lock.open else ""
    helper = desk.place is Place.ROUND and desk.room.role is Role.HELPER
    return say("strip.helper") if helper else ""


def _warned(strip: StripView, desk: Desk) -> StripView:
    """With what the last check says against the scale, where nobody is busy."""
    if desk.procedure is not None or desk.place not in (Place.HOME, *COACHS_PLACES):
        return strip
    told = warning(desk.facts.last_check, desk.world.utc(desk.world.now()))
    return replace(strip, words=(*strip.words, told)) if told else strip


def _job(desk: Desk) -> tuple[str, ...]:
    procedure, place, facts = desk.procedure, desk.place, desk.facts
    if desk.locked:
        return (say("strip.coachs_drawer"),)
    match procedure:
        case WeighEmpty():
            return (team_name(procedure.team), say("strip.cup", number=procedure.number))
        case HandIn():
            cup = procedure.cup
            if cup is None:
                return (say("strip.hand_in"),)
            return (team_name(cup.team), say("strip.cup", number=cup.number))
        case KeyProcedure():
            draft = procedure.draft
            return (say("strip.key"), *((jar_material(draft.material),) if draft else ()))
        case Measure():
            name = shape_name(procedure.shape)
            return (say("strip.measure"), *((name,) if name else ()))
        case MeasureWater():
            return (say("strip.measure"), say("measure.shape.water"))
        case ThrowAway():
            return (say("strip.throw"),)
        case Guess():
            return (team_name(procedure.team), say(f"strip.guess.{procedure.kind}"))
        case CheckJars():
            return (say("strip.jars"),)
        case ShowAnswer():
            return (say("strip.answer"),)
        case BalanceCheck():
            return (say("strip.check"),)
        case CupQueue():
            words = clock_words(desk.room.state, desk.room.now_utc()) if desk.room.is_open else ()
            return (say("strip.round"), say("strip.cup_table"), *words)
    if place is Place.ROUND:
        return desk.room.strip()
    if place is Place.ROUND_RUNS:
        return (say("strip.round"),)
    if place is Place.TEACH:
        return (say("strip.scale"), say("teach.strip"))
    if place in COACHS_PLACES:
        return (say("strip.scale"),)
    if place is Place.HOME:
        return (facts.settings.place,)
    return (say(f"strip.guess.{desk.guessing}" if desk.guessing else "strip.fill_cup"),)
