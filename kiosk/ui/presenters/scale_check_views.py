"""Presenter of the check of the scale: each state as a finished view."""

from __future__ import annotations

from dataclasses import replace

from kiosk.estimating.known_masses import COINS, WEIGHT_TOLERANCES
from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_plan import ANY_COINS, REPEATS, UNKNOWN, Place, Task
from kiosk.procedures.procedure import Person
from kiosk.records.entries import CheckRole
from kiosk.texts import say
from kiosk.texts.numbers import mass_number, together
from kiosk.ui.presenters.check_meanings import meanings
from kiosk.ui.presenters.check_rows import head, known_text, row_view, thing_name
from kiosk.ui.presenters.cup_views import home_button
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.trace_views import plug_text, scale_facts, trace_view
from kiosk.ui.presenters.views import (
    ButtonView,
    CheckedView,
    CheckRowView,
    CheckView,
    Choice,
    ChoicesView,
    SheetView,
    button,
)

S = CheckState
ROWS_SHOWN = 3


def balance_check_view(procedure: BalanceCheck, facts: TableFacts) -> SheetView:
    """The view of the present state."""
    match procedure.state:
        case S.KIT:
            return _kits()
        case S.COINS:
            return _coins()
        case S.LOADS:
            return _loads(procedure, facts)
        case S.RESULTS:
            return _results(procedure, facts)
    return _weighing(procedure, facts)


# What is at hand -----------------------------------------------------------------------------


def _kits() -> ChoicesView:
    weights = [
        Choice(text=say(f"check.kit.{kit.lower()}"), note=say("check.kit.weights.note"), value=kit)
        for kit in WEIGHT_TOLERANCES
    ]
    coins = Choice(text=say("check.kit.coins"), note=say("check.kit.coins.note"), value=ANY_COINS)
    nothing = Choice(
        text=say("check.kit.nothing"), note=say("check.kit.nothing.note"), value=UNKNOWN
    )
    return ChoicesView(
        screen="choices",
        title=say("check.kit.title"),
        choices=(*weights, coins, nothing),
        note=say("check.kit.note"),
        home=home_button(),
    )


def _coins() -> ChoicesView:
    return ChoicesView(
        screen="choices",
        title=say("check.coins.title"),
        choices=tuple(
            Choice(
                text=say(f"check.coin.{kind}"),
                note=say("check.coin.each", mass=f"{mass} g"),
                value=kind,
            )
            for kind, (mass, _) in COINS.items()
        ),
        note=say("check.coins.note"),
        home=home_button(),
    )


def _loads(procedure: BalanceCheck, facts: TableFacts) -> ChoicesView:
    most = facts.scale.capacity
    offered = [
        thing
        for thing in procedure.loads_left
        if most is None or thing.known is None or thing.known.grams <= most
    ]
    return ChoicesView(
        screen="choices",
        title=say("check.loads.title"),
        choices=tuple(
            Choice(text=thing_name(thing), note=known_text(thing), value=thing) for thing in offered
        ),
        note=say("check.loads.note"),
        main=button(
            say("check.loads.enough" if procedure.log.done else "check.loads.skip"), Person.CHOOSE
        ),
        home=home_button(),
    )


# A weighing ----------------------------------------------------------------------------------


def _weighing(procedure: BalanceCheck, facts: TableFacts) -> CheckView:
    return CheckView(
        title=_title(procedure),
        facts=scale_facts(facts),
        plug=plug_text(facts),
        trace=trace_view(facts.past, facts.readability),
        head=head(),
        rows=_rows(procedure),
        main=_main(procedure),
        second=_second(procedure),
        home=home_button(),
    )


def _title(procedure: BalanceCheck) -> str:
    task, state = procedure.task, procedure.state
    assert task is not None
    if state is S.PUT_ON:
        return _put_on(task)
    if state is S.OTHER_THING:
        return say(f"check.other.{_manner(task)}", thing=_named(task))
    return say(procedure.ask.title)


def _put_on(task: Task) -> str:
    if task.role is CheckRole.POSITION:
        return say(f"check.place.{task.place}")
    if task.role is CheckRole.REPEAT and task.number > 1:
        return say("check.repeat.title")
    return say(f"check.put_on.{_manner(task)}", thing=_named(task))


def _manner(task: Task) -> str:
    kit = task.thing.kit
    return "title" if kit in WEIGHT_TOLERANCES else "coins" if kit in COINS else "something"


def _named(task: Task) -> str:
    return together(thing_name(task.thing))


def _main(procedure: BalanceCheck) -> ButtonView:
    match procedure.state:
        case S.DOUBT | S.OTHER_THING:
            return button(say("check.again"), Person.UNDO, sign="again")
        case S.SHOWN | S.CLEAR:
            return button(say("check.wait.empty"), sign="wait", state="waiting")
        case S.SETTLING:
            return button(say("check.wait.rest"), sign="wait", state="waiting")
    return button(say("check.wait.load"), sign="wait", state="waiting")


def _second(procedure: BalanceCheck) -> ButtonView:
    match procedure.state:
        case S.DOUBT:
            return button(say("check.so"), Person.KEEP)
        case S.OTHER_THING:
            return button(say("check.yes"), Person.KEEP)
        case S.SHOWN:
            return button(say("check.again.short"), Person.UNDO)
    return button(say("check.skip"), Person.GO_ON)


def _rows(procedure: BalanceCheck) -> tuple[CheckRowView, ...]:
    """The row of the present task, after what was found before it."""
    task, log = procedure.task, procedure.log
    assert task is not None
    rows, present = [], None
    for row in log.rows() if log.readability is not None else ():
        if row.test == CheckRole.ZERO:
            continue
        mine = row.test == task.role and (
            task.role is not CheckRole.LOAD or row.name == task.thing.name
        )
        view = row_view(row, log)
        if mine:
            present = view
        else:
            rows.append(view)
    return (*rows[1 - ROWS_SHOWN :], _present_row(task, present))


def _present_row(task: Task, found: CheckRowView | None) -> CheckRowView:
    return replace(
        found or CheckRowView(name=""),
        name=_row_name(task),
        note=known_text(task.thing) if task.thing.kit in COINS else "",
        now=True,
    )


def _row_name(task: Task) -> str:
    if task.role is CheckRole.LOAD:
        return thing_name(task.thing)
    every = REPEATS if task.role is CheckRole.REPEAT else len(Place)
    return say(f"check.row.{task.role}.now", done=task.number, all=every)


def pan_words(procedure: BalanceCheck, facts: TableFacts) -> tuple[str, str]:
    """What stands over and under the number on the pan: the thing, and the zero before it."""
    task = procedure.task
    if task is None:
        return say("pan.on_pan"), ""
    zeros = procedure.log.zeros
    if not zeros:
        return thing_name(task.thing), ""
    zero = f"{mass_number(zeros[-1], facts.readability)} g"
    return thing_name(task.thing), say("check.zero", mass=zero)


# The results ---------------------------------------------------------------------------------


def _results(procedure: BalanceCheck, facts: TableFacts) -> CheckedView:
    log = procedure.log
    again = procedure.offers(Person.UNDO)
    home = home_button()
    if log.readability is None or not log.rows():
        return CheckedView(
            title=say(procedure.ask.title), head=head(),
            main=button(say("button.home"), Person.HOME, sign="arrow"), home=home,
        )  # fmt: skip
    verdict = log.verdict.replace(" ", "_")
    return CheckedView(
        title=say(f"check.results.{verdict}"),
        head=head(),
        rows=tuple(row_view(row, log) for row in log.rows()),
        lines=meanings(log, facts.settings.rules),
        main=button(say("check.results.keep"), Person.KEEP, sign="tick"),
        second=button(say("check.again.short"), Person.UNDO) if again else None,
        home=home,
    )
