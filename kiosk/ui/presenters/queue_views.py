"""The presenter of the cup table: who is next, what is to be done, nothing of any mass."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from enum import Enum

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person
from kiosk.procedures.queue_list import QueueList
from kiosk.procedures.queue_steps import QueueState
from kiosk.procedures.weigh_empty import LIGHTEST_CUP_G
from kiosk.rounds.contents import CupTurn
from kiosk.rounds.cups import CupStand, Pass, TeamCup
from kiosk.texts import plural, say
from kiosk.texts.numbers import mass_number
from kiosk.ui.presenters.cup_views import back_button
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.trouble_views import zero_text
from kiosk.ui.presenters.views import (
    ButtonView,
    CupMark,
    HandInView,
    MessageView,
    PanView,
    QuestionView,
    SheetView,
    TroubleView,
    button,
)
from kiosk.weighing.pan_state import PanPhase, PanState

S = QueueState
LETTERS_OF_TWO = 18  # of two names that fit into a line


@dataclass(frozen=True, slots=True, kw_only=True)
class QueueStep:
    """One of two things to do: `look` is now, done or then."""

    number: int
    text: str
    look: str


@dataclass(frozen=True, slots=True, kw_only=True)
class QueueProgress:
    """How far the list is; `dots` are its cups: done, without (a mass), aside, now, to come."""

    done: str = ""
    done_words: str = ""
    aside: str = ""
    dots: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class QueueView(SheetView):
    """The cup table: the cup that is waited for, or `kept` there until it is lifted.

    `signal` changes with each mass that is written down. `other` says that another cup is meant.
    """

    screen: str = "queue"
    progress: QueueProgress = QueueProgress()
    number: int = 0
    look: str = "yours"
    kept: bool = False
    when: str = ""
    team: str = ""
    then: str = ""
    other_text: str = ""
    other: ButtonView | None = None
    pair: tuple[QueueStep, ...] = ()
    else_text: str = ""
    outcomes: tuple[ButtonView, ...] = ()
    signal: str = ""


def queue_view(procedure: CupQueue, facts: TableFacts) -> SheetView:
    """The view of each state."""
    match procedure.state:
        case S.ALL_DONE:
            return _all_done(procedure, facts)
        case S.CHOOSING:
            return _choosing(procedure)
        case S.ODD:
            return _odd(procedure)
    return _table(procedure, facts)


# The table -----------------------------------------------------------------------------------


def _table(procedure: CupQueue, facts: TableFacts) -> SheetView:
    cup, state = procedure.cup, procedure.state
    assert cup is not None
    number, recorded = cup.team.cup, state is S.RECORDED
    main = _main(procedure)
    asking = state is S.MISHAP
    other = None if asking or procedure.list.again else button(say("queue.other"), Person.MORE)
    outcomes = _outcomes(procedure)
    return _with_undo(
        QueueView(
            title=say(procedure.ask.title, number=number),
            progress=_progress(procedure.list, cup),
            number=number,
            look="in" if recorded else "yours",
            kept=recorded,
            when=_when(procedure, cup),
            team=cup.team.label,
            then=_then(procedure.list, recorded=recorded),
            other_text=other.text if other else "",
            other=other,
            pair=() if asking else _pair(procedure),
            else_text=say("queue.mishap", number=number)
            if asking
            else say("queue.else")
            if outcomes
            else "",
            outcomes=outcomes,
            signal=procedure.signal,
            main=main,
            home=back_button(),
        ),
        procedure,
        facts,
    )


def _progress(cups: QueueList, current: TeamCup) -> QueueProgress:
    pending = {cup.team.team for cup in cups.pending}
    there = len(cups.cups) - len(pending)
    aside = sum(1 for cup in cups.pending if cup.later is CupTurn.SET_ASIDE)
    return QueueProgress(
        done=say("queue.done", there=there, wanted=len(cups.cups)),
        done_words=plural("queue.done.words", len(cups.cups)),
        aside=plural("queue.aside", aside) if aside else "",
        dots=tuple(_dot(cup, pending, current) for cup in cups.cups),
    )


def _dot(cup: TeamCup, pending: set[str], current: TeamCup) -> str:
    if cup.team.team == current.team.team:
        return "now"
    if cup.team.team not in pending:
        return "without" if cup.stand is CupStand.NO_MASS else "done"
    return "aside" if cup.later else "to come"


def _when(procedure: CupQueue, cup: TeamCup) -> str:
    if procedure.state is S.RECORDED:
        return say("queue.now")
    if procedure.state is S.WEIGHING:
        return say("queue.on_pan")
    return say("queue.again" if cup.later else "queue.next")


def _then(cups: QueueList, *, recorded: bool) -> str:
    names = [cup.team.label for cup in (cups.pending if recorded else cups.following)]
    if not names:
        return say("queue.last")
    if len(names) == 1 or len(names[0]) + len(names[1]) > LETTERS_OF_TWO:
        return say("queue.then", first=names[0])
    return say("queue.then_two", first=names[0], second=names[1])


def _pair(procedure: CupQueue) -> tuple[QueueStep, QueueStep]:
    cup = procedure.cup
    assert cup is not None
    number, state = cup.team.cup, procedure.state
    put_on = say(_put_on(procedure), number=number)
    match state:
        case S.NO_EMPTY:
            return _steps(say("queue.no_empty.first"), say("queue.no_empty.then"), now=1)
        case S.RECORDED:
            return _steps(say("queue.is_on", number=number), say("queue.take_off"), now=2)
        case S.WEIGHING:
            weighing = say("queue.weighing", number=number)
            return _steps(say("queue.is_on", number=number), weighing, now=2)
        case S.PUT_ON:
            return _steps(say("queue.pan_clean"), put_on, now=2)
        case _:
            return _steps(say(procedure.ask.title, number=number), put_on, now=1)


def _put_on(procedure: CupQueue) -> str:
    if procedure.early:
        return "queue.put_on.early"
    return "queue.put_on.empty" if procedure.list.weighs_empty else "queue.put_on"


def _steps(first: str, second: str, *, now: int) -> tuple[QueueStep, QueueStep]:
    looks = ("now", "then") if now == 1 else ("done", "now")
    return (
        QueueStep(number=1, text=first, look=looks[0]),
        QueueStep(number=2, text=second, look=looks[1]),
    )


_WAITS: dict[Enum, str] = {
    S.RECORDED: "queue.wait.off",
    S.WEIGHING: "queue.wait.rest",
    S.PUT_ON: "queue.wait.cup",
}


def _main(procedure: CupQueue) -> ButtonView:
    state, values = procedure.state, procedure.values()
    if state is S.MISHAP:
        return button(say("queue.nothing"), Person.NO, sign="arrow")
    if state is S.NO_EMPTY:
        return button(say("queue.no_empty.main"), Person.GO_ON, sign="arrow")
    words = say(_WAITS.get(state, "queue.wait.pan"), number=values["number"])
    return button(words, sign="wait", state="waiting")


def _outcomes(procedure: CupQueue) -> tuple[ButtonView, ...]:
    if procedure.state is S.RECORDED:
        return ()
    if procedure.state is S.MISHAP:
        return tuple(_outcome(turn) for turn in procedure.list.mishaps)
    buttons = [_outcome(turn) for turn in procedure.list.outcomes]
    if procedure.list.pass_ is Pass.FILLED and procedure.list.mishaps:
        buttons = [button(say("queue.mishaps"), Person.MISHAP), *buttons]
    return tuple(buttons)


def _outcome(turn: CupTurn) -> ButtonView:
    return button(say(f"queue.{turn.name.lower()}"), Person.CHOOSE, turn)


def _with_undo(view: SheetView, procedure: CupQueue, facts: TableFacts) -> SheetView:
    """Beside Home; where the things of the simulated scale have their key there, on the sheet."""
    last = procedure.list.last
    if last is None or not procedure.offers(Person.UNDO):
        return view
    undo = button(say("queue.undo", number=last.team.cup), Person.UNDO)
    if facts.simulated:
        return replace(view, second=undo)
    return replace(view, beside_home=undo)


# Other sheets --------------------------------------------------------------------------------


def _all_done(procedure: CupQueue, facts: TableFacts) -> SheetView:
    empty = procedure.list.pass_ is Pass.EMPTY
    begun = procedure.list.round.begun(procedure.list.sitting)
    take = "queue.all_done.take" if begun else "queue.all_done.take_later"
    without = sum(cup.stand is CupStand.NO_MASS for cup in procedure.list.cups)
    lines = [say(take if empty else "queue.all_done.keep")]
    if without and not empty:
        lines.insert(0, plural("queue.all_done.without", without))
    another = button(say("queue.another"), Person.MORE) if procedure.list.ended else None
    view = MessageView(
        title=say("queue.all_done"), lines=tuple(lines), home=back_button(), main=another
    )
    return _with_undo(view, procedure, facts)


def _choosing(procedure: CupQueue) -> HandInView:
    lies = procedure.recorded is not None or procedure.pan.loaded
    return HandInView(
        title=say("queue.choosing" if lies else "queue.choosing.next"),
        body=say("queue.choosing.body"),
        cups=tuple(
            CupMark(number=cup.team.cup, name=ended_words(cup) or cup.team.label)
            for cups in (procedure.list.pending, procedure.list.ended)
            for cup in sorted(cups, key=lambda cup: cup.team.cup)
        ),
        chosen=procedure.cup.team.cup if procedure.cup else None,
        main=button(say("queue.choosing.wait"), sign="wait", state="waiting"),
        home=button(say("button.back"), Person.NO, sign="back"),
    )


def _odd(procedure: CupQueue) -> QuestionView:
    which = "queue.odd.empty" if procedure.list.weighs_empty else "queue.odd.filled"
    values = procedure.values()
    return QuestionView(
        title=say(f"{which}.title", **values),
        body=say(f"{which}.body"),
        art="cup",
        number=procedure.cup.team.cup if procedure.cup else None,
        main=button(say(f"{which}.yes", **values), Person.YES, sign="tick"),
        second=button(say(f"{which}.no"), Person.NO),
        home=back_button(),
    )


def ended_words(cup: TeamCup) -> str:
    """What ended a cup without a mass, "" for one that did not end so."""
    return say(f"queue.ended.{cup.ended.name.lower()}") if cup.ended else ""


def set_aside_view(trouble: TroubleView, procedure: CupQueue) -> TroubleView:
    """A cup that will not rest may be set aside: then the others do not wait for it."""
    if CupTurn.SET_ASIDE not in procedure.list.outcomes:
        return trouble
    words = say("queue.aside_main", **procedure.values())
    return replace(trouble, main=button(words, Person.CHOOSE, CupTurn.SET_ASIDE, sign="arrow"))


# The pan -------------------------------------------------------------------------------------

_COVERED = frozenset({S.WEIGHING, S.RECORDED, S.ODD})
_DIRTY = frozenset({S.DIRTY})
_WORDS = {
    PanPhase.EMPTY: "empty",
    PanPhase.SETTLING: "settling",
}


def queue_pan(
    procedure: CupQueue, facts: TableFacts, state: PanState, shown: Decimal | None
) -> PanView:
    """The pan: open while it is empty, so that a dirty one is seen, and covered otherwise."""
    open_ = procedure.state not in _COVERED and (
        procedure.state in _DIRTY or not procedure.pan.loaded
    )
    if not open_ or shown is None or shown >= LIGHTEST_CUP_G:
        return PanView(phase="hidden", word=say("pan.hidden"), hidden_text=say("pan.covered"))
    dirty = procedure.state in _DIRTY
    phase = "not zero" if dirty else _WORDS.get(state.phase, "moving")
    word = say("queue.pan.not_zero" if dirty else f"pan.{phase}")
    return PanView(
        phase=phase,
        word=word,
        label=say("queue.pan"),
        number=mass_number(shown, facts.readability),
        unit="g",
        line1=say("queue.pan.should", zero=zero_text(facts)) if dirty else "",
        progress=state.progress,
    )
