"""The check of the scale in every state, as procedures: the longest texts and numbers."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_plan import ANY_COINS, UNKNOWN, CheckThing
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person
from kiosk.weighing.pan_events import PanEvent
from kiosk.weighing.pan_history import PanPast
from tests.helpers.pan import EMPTY, PLACED, STEP, feed, memory, press, settled, shown, surroundings

S = CheckState


def emptied(zero: str = "0.0", step: Decimal = STEP) -> PanEvent:
    """The pan is empty and rests at so many grams."""
    return replace(EMPTY, reading=shown(zero), readability=step)


def check(kit: str | None = "M1", *, loaded: bool = False) -> BalanceCheck:
    """A check with that kit, on an empty pan or a loaded one."""
    procedure = BalanceCheck(surroundings(), pan=memory(PLACED) if loaded else PanMemory())
    if kit is not None:
        feed(procedure, press(Person.CHOOSE, kit))
    return procedure


def choose(procedure: BalanceCheck, count: int) -> None:
    feed(procedure, press(Person.CHOOSE, CheckThing(kit=procedure.kit, count=count)))


def weigh(procedure: BalanceCheck, grams: str, zero: str = "0.0", step: Decimal = STEP) -> None:
    """One load after the other; a load that is asked for again is weighed again."""
    task = procedure.task
    feed(procedure, PLACED, settled(grams, step), emptied(zero, step))
    if procedure.task == task and procedure.state is S.PUT_ON:
        feed(procedure, PLACED, settled(grams, step), emptied(zero, step))


def finished(
    loads: dict[int, str],
    kit: str = "M1",
    *,
    repeats: tuple[str, ...] = (),
    places: tuple[str, ...] = (),
    zero: str = "0.0",
    step: Decimal = STEP,
) -> BalanceCheck:
    """A whole check, at its results."""
    procedure = check(kit)
    for count, grams in loads.items():
        choose(procedure, count)
        weigh(procedure, grams, zero, step)
    if procedure.state is S.LOADS:
        feed(procedure, press(Person.CHOOSE))
    usual = list(loads.values())[-1] if loads else "137.4"
    for grams in (*(repeats or [usual] * 5), *(places or [usual] * 5)):
        weigh(procedure, grams, zero, step)
    assert procedure.state is S.RESULTS, procedure.state
    return procedure


def in_check(state: CheckState) -> BalanceCheck:
    """A check in that state."""
    if state is S.RESULTS:
        return worst_check()
    procedure = check(None if state is S.KIT else "M1", loaded=state is S.CLEAR)
    if state in (S.KIT, S.LOADS):
        return procedure
    if state is S.COINS:
        return check(ANY_COINS)
    if state is not S.CLEAR:
        for count, grams in ((20, "20.0"), (50, "50.2")):
            choose(procedure, count)
            weigh(procedure, grams)
    choose(procedure, 500)
    happens = {
        S.SETTLING: (PLACED,),
        S.SHOWN: (PLACED, settled("500.0")),
        S.DOUBT: (PLACED, settled("500.9")),
        S.OTHER_THING: (PLACED, settled("20.0")),
    }
    feed(procedure, *happens.get(state, ()))
    assert procedure.state is state
    return procedure


def worst_check() -> BalanceCheck:
    """Everything is off, each in another way."""
    return finished(
        {50: "50.4", 200: "200.2", 500: "509.9"},
        repeats=("509.9", "509.9", "508.9", "509.9", "509.9"),
        places=("509.9", "505.9", "509.9", "509.9", "509.9"),
        zero="-0.3",
    )


def right_check() -> BalanceCheck:
    return finished({50: "50.0", 200: "200.0", 500: "500.0"})


def heavy_by_a_share() -> BalanceCheck:
    return finished({50: "50.5", 200: "202.0", 500: "505.0"})


def coarse_check() -> BalanceCheck:
    """A balance that steps by 1 g."""
    return finished({100: "100", 200: "200", 500: "500"}, step=Decimal(1))


def coin_check() -> BalanceCheck:
    return finished({5: "25.2", 10: "50.1", 20: "101.0"}, "us_5_cents")


def with_nothing_known() -> BalanceCheck:
    return finished({}, UNKNOWN)


def with_coins_on_the_pan() -> BalanceCheck:
    procedure = check("canada_2_dollars")
    choose(procedure, 20)
    feed(procedure, PLACED, settled("138.5"))
    return procedure


def at_the_edge() -> BalanceCheck:
    """The fourth of five places."""
    procedure = check(UNKNOWN)
    for _ in range(8):
        weigh(procedure, "137.4")
    return procedure


def skipped_all() -> BalanceCheck:
    procedure = check(UNKNOWN)
    feed(procedure, press(Person.GO_ON), press(Person.GO_ON))
    return procedure


PAST = PanPast(
    points=tuple(
        (age / 10, Decimal("1999.9") if age < 60 else Decimal("-0.3")) for age in range(100, -1, -1)
    ),
    rest=4.5,
    pace=10.0,
)
