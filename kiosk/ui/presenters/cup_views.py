"""Presenters of the two cup procedures: each state as a finished view."""

from __future__ import annotations

from decimal import Decimal
from enum import Enum

from kiosk.estimating.score import Side
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.procedure import Art, Ask, Person
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.texts import plural, say
from kiosk.texts.numbers import grams, mass_number, number, together
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    ButtonView,
    HandInView,
    LeaveView,
    PutOnView,
    QuestionView,
    ScoreView,
    SheetView,
    TakeCupView,
    button,
)

STEPS = 4
ON_TARGET_PERCENT = 2  # within it an answer counts as on target in words and pictures
TRIES_SHOWN = 5
CUPS_BELOW, CUPS_BESIDE = 7, 5  # that fit in a row under a title, and beside one


def home_button() -> ButtonView:
    """The way home, which asks first where a try would be left."""
    return button(say("button.home"), Person.HOME, sign="home")


def back_button() -> ButtonView:
    """The way home where nothing is left behind."""
    return button(say("button.back"), Person.HOME, sign="back")


def picture_of(ask: Ask) -> str:
    """What lies on the drawn scale of an instruction."""
    return "none" if ask.art is Art.CLEAR_PAN else ask.art.value


def weigh_empty_view(procedure: WeighEmpty, facts: TableFacts) -> SheetView:
    """The view of steps 1 and 2."""
    state = procedure.state
    if state is WeighEmptyState.FILL:
        return _take_cup(procedure, facts)
    if state is WeighEmptyState.LEAVING:
        return leave_view(procedure.number, 2, facts)
    if state is WeighEmptyState.REALLY_EMPTY:
        return _question(procedure, "cup.really_empty.yes", "cup.really_empty.no")
    if state is WeighEmptyState.WEIGHED:
        return _weighed(procedure, facts)
    return _put_on(procedure, facts)


_SIGNS = {"typed": "", "covered": "eye", "ring": "ring"}  # how the cup is weighed


def _put_on(procedure: WeighEmpty, facts: TableFacts) -> PutOnView:
    ask = procedure.ask
    how = "typed" if facts.typed else "covered" if facts.cups else "ring"
    clear = ask.art is Art.CLEAR_PAN
    return PutOnView(
        title=say(ask.title),
        body=say(ask.body or ""),
        step=ask.step,
        steps=STEPS,
        step_text=say(f"cup.step.{ask.step}"),
        art=picture_of(ask),
        arrows="up" if clear else "down",
        cup_number=None if clear else procedure.number,
        cup_label=say("cup.put_on.number"),
        sign="" if clear else _SIGNS[how],
        sign_text="" if clear or facts.typed else say(f"cup.put_on.{how}"),
        side_text="" if clear else say(f"cup.put_on.{how}_then"),
        home=back_button(),
    )


def _weighed(procedure: WeighEmpty, facts: TableFacts) -> PutOnView:
    cup = procedure.cup
    assert cup is not None
    mass = together(grams(cup.empty.grams, cup.empty.readability))
    title = "cup.weighed.title_covered" if procedure.others_out else "cup.weighed.title"
    return PutOnView(
        title=say(title, number=cup.number, mass=mass),
        body=say("cup.weighed.body"),
        step=1,
        steps=STEPS,
        step_text=say("cup.step.1"),
        art=Art.EMPTY_CUP.value,
        arrows="up",
        big=True,
        cup_number=cup.number,
        cup_label=say("cup.weighed.remember"),
        sign_text=say("cup.weighed.cup", number=cup.number),
        side_text="\n\n".join([*_after_lifting(procedure, facts), say("cup.weighed.next")]),
        home=home_button(),
    )


def _after_lifting(procedure: WeighEmpty, facts: TableFacts) -> list[str]:
    if facts.typed:
        return [say("cup.weighed.typed")]
    return [] if procedure.others_out else [say("cup.weighed.cover")]


def _take_cup(procedure: WeighEmpty, facts: TableFacts) -> TakeCupView:
    return TakeCupView(
        title=say("cup.fill.title"),
        step=2,
        steps=STEPS,
        step_text=say("cup.step.2"),
        number=procedure.number,
        goal_label=say("cup.fill.goal"),
        goal=number(facts.settings.rules.cup_target_g),
        goal_unit="g",
        goal_note=say("cup.fill.body"),
        cups=facts.some_marks(CUPS_BELOW, mine=procedure.number),
        cups_title=say("cup.fill.out"),
        free_text=say("cup.fill.free"),
        main=button(say("cup.fill.next"), Person.GO_ON, sign="arrow"),
        home=home_button(),
    )


def _question(procedure: WeighEmpty | HandIn, yes: str, no: str) -> QuestionView:
    ask = procedure.ask
    values = procedure.values()
    return QuestionView(
        title=say(ask.title, **values),
        body=say(ask.body or "", **values),
        step=ask.step,
        steps=STEPS,
        step_text=say(f"cup.step.{ask.step}"),
        art="cup",
        number=procedure.number,
        main=button(say(yes, **values), Person.YES, sign="tick"),
        second=button(say(no), Person.NO),
        home=home_button(),
    )


def leave_view(number_: int | None, step: int, facts: TableFacts) -> LeaveView:
    """The question whether to keep going or to leave the try parked under its number."""
    return LeaveView(
        title=say("cup.leave.title", number=number_),
        body=say("cup.leave.body"),
        step=step,
        steps=STEPS,
        step_text=say(f"cup.step.{step}"),
        number=number_,
        art="cup",
        later=say("cup.leave.later"),
        ask=say("cup.leave.ask"),
        cups_title=say("cup.fill.out"),
        cups=facts.some_marks(CUPS_BESIDE, mine=number_),
        main=button(say("cup.leave.stay"), Person.STAY, sign="arrow"),
        second=button(say("cup.leave.leave"), Person.LEAVE, sign="home"),
    )


# Step 3: which words the waiting button has, by state
_WAITS: dict[Enum, str] = {
    HandInState.CHOOSE: "hand_in.choose.wait",
    HandInState.WHOSE: "hand_in.choose.wait",
    HandInState.WEIGHING: "hand_in.weighing.wait",
    HandInState.LIGHTER: "hand_in.lighter.wait",
}


def hand_in_view(procedure: HandIn, facts: TableFacts) -> SheetView:
    """The view of steps 3 and 4."""
    state = procedure.state
    if state in (HandInState.SCORED, HandInState.LIFTED):
        return _score(procedure, facts)
    if state is HandInState.LEAVING:
        return leave_view(procedure.number, 3, facts)
    if state is HandInState.OTHER_CUP:
        return _question(procedure, "hand_in.other.yes", "hand_in.other.no")
    ask = procedure.ask
    values = procedure.values()
    wait = _WAITS.get(state, "hand_in.put_on.wait")
    if state is HandInState.CLEAR and procedure.number is None:
        wait = "hand_in.choose.wait"
    return HandInView(
        title=say(ask.title, **values),
        body=say(ask.body or "", **values),
        step=3,
        steps=STEPS,
        step_text=say("cup.step.3"),
        cups=facts.marks(chosen=procedure.number),
        chosen=procedure.number,
        main=button(say(wait, **values), sign="wait", state="waiting"),
        home=home_button() if procedure.number else back_button(),
    )


def side_of(error_percent: float) -> str:
    """The word for a signed error: under, over, or on target when close enough."""
    if abs(error_percent) <= ON_TARGET_PERCENT:
        return "on target"
    return Side.UNDER.value if error_percent < 0 else Side.OVER.value


def error_percent(net: Decimal, target: Decimal) -> float:
    """Signed per cent by which `net` misses `target`."""
    return float((net - target) / target * 100)


def _score(procedure: HandIn, facts: TableFacts) -> ScoreView:
    result, cup = procedure.result, procedure.cup
    assert result is not None
    assert cup is not None
    step = result.filled.readability
    target = result.target
    side = side_of(error_percent(result.net, target))
    side_word = {"under": "score.under", "over": "score.over", "on target": "score.on_target"}[side]
    tries = facts.errors[-TRIES_SHOWN:]
    return ScoreView(
        step=4,
        steps=STEPS,
        step_text=say("cup.step.4"),
        title=say("hand_in.scored.title", number=cup.number),
        sum_text=say(
            "score.cup_and_inside",
            cup=mass_number(cup.empty.grams, step),
            inside=mass_number(result.net, step),
        ),
        points=number(result.points),
        points_of=say("score.points"),
        error=grams(abs(result.net - target), step),
        side=side,
        side_text=say("score.double") if procedure.double_or_more else say(side_word),
        true_value=float(target),
        estimate=float(result.net),
        left=grams(Decimal(0)),
        peak=grams(target),
        right=grams(2 * target),
        yours=say("score.yours", mass=grams(result.net, step)),
        errors=tries,
        tries_text=plural("score.tries", len(tries)),
        cup_key=result.id,
        main=button(say("score.next_try"), Person.GO_ON, sign="arrow"),
        home=home_button(),
    )
