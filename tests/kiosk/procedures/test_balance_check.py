"""The check of the balance, event by event."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_plan import UNKNOWN, CheckThing, Place
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, Person
from kiosk.records.entries import BalanceChecked, CheckMass, CheckRole
from kiosk.weighing.pan_events import PanEvent
from tests.helpers.pan import (
    EMPTY,
    LOST,
    PLACED,
    REMOVED,
    TOO_HEAVY,
    feed,
    memory,
    press,
    settled,
    shown,
    surroundings,
)

S = CheckState


def emptied(zero: str = "0.0") -> PanEvent:
    """The pan is empty and rests at so many grams."""
    return replace(EMPTY, reading=shown(zero), readability=Decimal("0.1"))


def load(grams: int, weight_class: str = "M1") -> CheckThing:
    return CheckThing(kit=weight_class, count=grams)


def check(kit: str = "M1") -> BalanceCheck:
    procedure = BalanceCheck(surroundings(), pan=PanMemory())
    feed(procedure, press(Person.CHOOSE, kit))
    return procedure


def weigh(procedure: BalanceCheck, grams: str, zero: str = "0.0") -> list[Effect]:
    return feed(procedure, PLACED, settled(grams), emptied(zero))


def weigh_load(procedure: BalanceCheck, grams: int, as_shown: str) -> list[Effect]:
    feed(procedure, press(Person.CHOOSE, load(grams)))
    return weigh(procedure, as_shown)


def verdict_of(effects: list[Effect]) -> BalanceChecked:
    (checked,) = [effect for effect in effects if isinstance(effect, BalanceChecked)]
    return checked


def test_a_known_load_is_captured_by_itself_with_what_it_is() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(50)))
    (kept,) = feed(procedure, PLACED, settled("50.0"))
    assert isinstance(kept, CheckMass)
    assert (kept.role, kept.row, kept.name) == ("load", 1, "50 g M1")
    assert (kept.known, kept.tolerance) == (Decimal(50), Decimal("0.003"))
    assert kept.weighing.grams == Decimal("50.0")
    assert procedure.state is S.SHOWN


def test_the_zero_after_a_load_is_kept_too() -> None:
    procedure = check()
    effects = weigh_load(procedure, 50, "50.0")
    zero = effects[-1]
    assert isinstance(zero, CheckMass)
    assert (zero.role, zero.weighing.grams) == ("zero", Decimal("0.0"))
    assert procedure.state is S.LOADS
    assert not procedure.pan.used


def test_a_load_is_offered_once() -> None:
    procedure = check()
    weigh_load(procedure, 50, "50.0")
    assert [thing.count for thing in procedure.loads_left] == [20, 100, 200, 500]


def test_three_loads_then_the_heaviest_is_weighed_five_times_and_at_five_places() -> None:
    procedure = check()
    for grams in (50, 200, 100):
        weigh_load(procedure, grams, f"{grams}.0")
    seen = []
    while procedure.state is S.PUT_ON:
        assert procedure.task is not None
        seen.append((procedure.task.role, procedure.task.thing.count, procedure.task.place))
        weigh(procedure, "200.0")
    repeats = [(CheckRole.REPEAT, 200, Place.CENTRE)] * 5
    assert seen == repeats + [(CheckRole.POSITION, 200, place) for place in Place]
    assert procedure.state is S.RESULTS


def test_a_load_that_is_not_fine_is_asked_for_once_more_by_lifting_it() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(50)), PLACED, settled("50.3"))
    assert procedure.state is S.DOUBT
    feed(procedure, emptied())
    assert procedure.state is S.PUT_ON
    feed(procedure, PLACED, settled("50.3"))
    assert procedure.state is S.SHOWN
    feed(procedure, emptied())
    assert procedure.state is S.LOADS


def test_the_second_weighing_of_a_load_takes_the_row_of_the_first() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(50)), PLACED)
    (first,) = feed(procedure, settled("50.3"))
    (_zero, second) = feed(procedure, emptied(), PLACED, settled("50.0"))
    assert isinstance(first, CheckMass)
    assert isinstance(second, CheckMass)
    assert first.row == second.row
    (row, _zero) = procedure.log.rows()
    assert (row.shown, row.verdict) == (Decimal("50.0"), "fine")


def test_again_by_the_button_wants_the_pan_empty_first() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(50)), PLACED, settled("50.0"), press(Person.UNDO))
    assert procedure.state is S.CLEAR
    feed(procedure, emptied())
    assert procedure.state is S.PUT_ON


def test_another_thing_than_the_one_asked_for_bears_no_verdict() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(100)), PLACED, settled("50.0"))
    assert procedure.state is S.OTHER_THING
    assert procedure.log.rows() == ()
    feed(procedure, emptied(), PLACED, settled("100.0"))
    assert [row.verdict for row in procedure.log.rows()] == ["fine", "fine"]


def test_a_person_may_say_that_it_is_the_thing() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(100)), PLACED, settled("3.5"), press(Person.KEEP))
    assert procedure.state is S.SHOWN
    (row,) = procedure.log.rows()
    assert row.verdict == "not fine"


def test_with_nothing_known_the_other_tests_are_done_and_do_not_make_it_fine() -> None:
    procedure = check(UNKNOWN)
    for _ in range(10):
        weigh(procedure, "137.4")
    assert procedure.state is S.RESULTS
    checked = verdict_of(feed(procedure, press(Person.KEEP)))
    assert [row.test for row in checked.rows] == ["repeat", "position", "zero"]
    assert [row.verdict for row in checked.rows] == ["fine"] * 3
    assert checked.verdict == "cannot tell"
    assert procedure.state is S.CHECKED


def test_a_corner_that_weighs_less_is_found() -> None:
    procedure = check(UNKNOWN)
    for grams in ["137.4"] * 5 + ["137.4", "136.9", "137.4", "137.4", "137.4"]:
        weigh(procedure, grams)
    rows = {row.test: row.verdict for row in procedure.log.rows()}
    assert rows == {"repeat": "fine", "position": "not fine", "zero": "fine"}


def test_a_zero_that_does_not_come_back_is_found() -> None:
    procedure = check(UNKNOWN)
    weigh(procedure, "137.4", zero="0.3")
    (row,) = procedure.log.rows()
    assert (row.test, row.off, row.verdict) == ("zero", Decimal("0.3"), "not fine")


def test_a_balance_that_is_heavy_by_one_share_is_known_by_it() -> None:
    procedure = check()
    for grams, as_shown in ((50, "50.5"), (100, "101.0"), (200, "202.0")):
        feed(procedure, press(Person.CHOOSE, load(grams)))
        weigh(procedure, as_shown)
        weigh(procedure, as_shown)
    assert procedure.log.one_share is True
    assert procedure.log.verdict == "not fine"


def test_home_in_the_middle_keeps_what_was_done() -> None:
    procedure = check()
    weigh_load(procedure, 50, "50.0")
    checked = verdict_of(feed(procedure, press(Person.HOME)))
    assert procedure.state is S.LEFT
    assert checked.id == procedure.check_id
    assert (checked.balance, checked.readability) == ("test balance", Decimal("0.1"))
    assert [row.name for row in checked.rows] == ["50 g M1", ""]


def test_home_before_anything_was_weighed_leaves_nothing_behind() -> None:
    assert feed(check(), press(Person.HOME)) == []


@pytest.mark.parametrize("skips", [1, 2])
def test_a_test_can_be_skipped(skips: int) -> None:
    procedure = check(UNKNOWN)
    feed(procedure, *[press(Person.GO_ON)] * skips)
    expected = {1: S.PUT_ON, 2: S.RESULTS}
    assert procedure.state is expected[skips]


def test_a_skipped_load_leads_back_to_the_loads() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(500)), press(Person.GO_ON))
    assert procedure.state is S.LOADS


def test_at_the_end_the_load_that_was_not_fine_is_weighed_again_and_leads_back() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(50)))
    weigh(procedure, "50.3")
    weigh(procedure, "50.3")
    feed(procedure, press(Person.CHOOSE), *[press(Person.GO_ON)] * 2)
    assert procedure.state is S.RESULTS
    assert procedure.offers(Person.UNDO)
    feed(procedure, press(Person.UNDO))
    weigh(procedure, "50.0")
    assert procedure.state is S.RESULTS
    assert not procedure.offers(Person.UNDO)


def test_a_loaded_pan_is_cleared_before_the_first_load() -> None:
    procedure = BalanceCheck(surroundings(), pan=memory(PLACED))
    feed(procedure, press(Person.CHOOSE, UNKNOWN))
    assert procedure.state is S.CLEAR


def test_a_zero_after_silence_says_nothing_about_the_balance() -> None:
    procedure = check(UNKNOWN)
    feed(procedure, PLACED, settled("137.4"), LOST, emptied("0.0"))
    assert procedure.log.zeros == []
    assert procedure.state is S.PUT_ON


def test_a_load_lifted_too_early_is_simply_put_on_again() -> None:
    procedure = check(UNKNOWN)
    feed(procedure, PLACED, REMOVED)
    assert procedure.state is S.PUT_ON


def test_too_heavy_a_load_is_taken_off_first() -> None:
    procedure = check(UNKNOWN)
    feed(procedure, PLACED, TOO_HEAVY)
    assert procedure.state is S.CLEAR


def test_leaving_after_another_thing_was_weighed_leads_out() -> None:
    procedure = check()
    feed(procedure, press(Person.CHOOSE, load(100)), PLACED, settled("50.0"), emptied())
    assert procedure.state is S.PUT_ON
    (zero,) = verdict_of(feed(procedure, press(Person.HOME))).rows
    assert zero.test == "zero"
    assert procedure.state is S.LEFT
