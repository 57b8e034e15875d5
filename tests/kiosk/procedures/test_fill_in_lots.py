"""How full it shall be, and a fill that is weighed in lots."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from itertools import count

import pytest

from kiosk.estimating.count_key import CountKey
from kiosk.estimating.pour_goal import AS_IT_COMES, Stand
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.fill_goal import IN_LOTS, NUMBER
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, NotOfferedError, Person, WeighAgain
from kiosk.records import kept
from kiosk.records.entries import KeyChanged, KeyMass, MassRole, MassVoided, new_id
from tests.helpers.pan import (
    EMPTY,
    PLACED,
    STARTED,
    TOO_HEAVY,
    feed,
    memory,
    press,
    settled,
    surroundings,
)
from tests.helpers.weighings import weighed

S = ContainerState
KEY_ID = new_id()
SECONDS = count()


def mass(role: str, grams: str) -> KeyMass:
    at = STARTED + timedelta(seconds=next(SECONDS))
    return KeyMass(id=new_id(), key_id=KEY_ID, role=role, weighing=weighed(grams), at=at)


def sampled(**changes: object) -> KeyDraft:
    """Three samples of 100 pieces of 52 mg, which were counted from another bag."""
    made = KeyDraft(
        id=KEY_ID,
        material="lentils",
        scatter_class="pulses and grains",
        piece_cv_percent=Decimal(20),
        pieces=100,
        tray=mass("tray", "20.0"),
        samples=(mass("sample", "25.2"), mass("sample", "25.3"), mass("sample", "25.1")),
        back_in=False,
    )
    return replace(made, **changes)  # type: ignore[arg-type]


def filling(pan: PanMemory | None = None, **changes: object) -> FillContainer:
    return FillContainer(surroundings(), pan=pan or PanMemory(), draft=sampled(**changes))


def lot(procedure: FillContainer, empty: str, full: str) -> list[Effect]:
    """One lot from the empty container to the stop."""
    return feed(procedure, EMPTY, PLACED, settled(empty), PLACED, settled(full), press(Person.STOP))


def two_lots(goal: str = "high") -> FillContainer:
    procedure = filling(goal=goal, in_lots=True)
    lot(procedure, "90.0", "350.0")
    feed(procedure, EMPTY, press(Person.GO_ON))
    lot(procedure, "90.1", "350.1")
    return procedure


# The goal ------------------------------------------------------------------------------------


def test_the_goal_is_asked_once_and_written_down() -> None:
    procedure = filling()
    assert procedure.state is S.GOAL
    (changed,) = feed(procedure, press(Person.CHOOSE, "high"))
    assert isinstance(changed, KeyChanged)
    assert (changed.goal, changed.back_in, changed.pieces) == ("high", None, None)
    assert procedure.state is S.EMPTY_ON
    assert filling(goal="high").state is S.EMPTY_ON


def test_a_number_is_typed() -> None:
    procedure = filling()
    keys = [press(Person.TYPE, digit) for digit in "01507"]
    feed(procedure, press(Person.CHOOSE, NUMBER), *keys, press(Person.RUB_OUT))
    assert procedure.wanted == 150
    feed(procedure, press(Person.ENTER))
    assert procedure.kept.goal == "150"


@pytest.mark.parametrize("digits", ["", "0", "20001", "999999"])
def test_no_number_and_too_large_a_number_are_not_taken(digits: str) -> None:
    procedure = filling()
    feed(procedure, press(Person.CHOOSE, NUMBER), *(press(Person.TYPE, each) for each in digits))
    assert not procedure.offers(Person.ENTER)


def test_another_goal_than_those_on_the_cards_is_none() -> None:
    with pytest.raises(NotOfferedError):
        feed(filling(), press(Person.CHOOSE, "huge"))


def test_the_goal_can_be_changed_while_pouring() -> None:
    procedure = filling(goal="low", empty=mass("empty", "90.0"))
    feed(procedure, PLACED, press(Person.CHOOSE))
    assert procedure.state is S.GOAL
    effects = feed(procedure, press(Person.CHOOSE, "middle"))
    assert [type(effect) for effect in effects] == [KeyChanged, WeighAgain]
    assert procedure.state is S.POUR


def test_the_goal_is_not_asked_again_after_more_samples() -> None:
    procedure = filling(goal="high", back_in=None)
    feed(procedure, press(Person.NO))
    assert procedure.state is S.EMPTY_ON


def test_as_it_comes_there_is_no_way_to_go() -> None:
    assert sampled(goal=AS_IT_COMES, empty=mass("empty", "90.0")).way(Decimal(300)) is None


# Lots ----------------------------------------------------------------------------------------


def test_lots_are_chosen_and_left_on_the_same_card() -> None:
    procedure = filling()
    (changed,) = feed(procedure, press(Person.CHOOSE, IN_LOTS))
    assert isinstance(changed, KeyChanged)
    assert changed.in_lots is True
    assert procedure.state is S.GOAL
    (changed,) = feed(procedure, press(Person.CHOOSE, IN_LOTS))
    assert isinstance(changed, KeyChanged)
    assert changed.in_lots is False


def test_each_lot_is_kept_with_its_own_container() -> None:
    procedure = two_lots()
    assert procedure.state is S.LOT
    assert [each.net for each in procedure.kept.lots] == [Decimal(260), Decimal(260)]
    assert (procedure.kept.empty, procedure.kept.filled) == (None, None)


def test_the_sum_of_the_lots_is_the_key() -> None:
    procedure = two_lots()
    feed(procedure, press(Person.STOP))
    assert procedure.state is S.KEY
    assert isinstance(procedure.key, CountKey)
    assert procedure.key.count == 10_000
    whole = sampled(empty=mass("empty", "90.0"), filled=mass("filled", "610.0"))
    alone = whole.key(procedure.world.rules)
    assert isinstance(alone, CountKey)
    assert procedure.key.budget.pieces == alone.budget.pieces
    assert procedure.key.budget.fill_rounding > 1.7 * alone.budget.fill_rounding


def test_the_live_count_runs_on_from_lot_to_lot() -> None:
    procedure = two_lots()
    feed(procedure, EMPTY, press(Person.GO_ON), PLACED, settled("90.0"))
    live = procedure.kept.live(Decimal("142.0"))
    assert live is not None
    assert live.count == 11_000
    lifted = procedure.kept.live(Decimal("0.0"))
    assert lifted is not None
    assert lifted.count == 10_000


def test_the_way_to_go_counts_what_is_kept() -> None:
    way = two_lots().kept.way(None)
    assert way is not None
    assert way.stand is Stand.BEFORE
    assert Decimal(104) <= way.grams <= Decimal(120)


def test_a_full_container_is_not_taken_for_an_empty_one() -> None:
    procedure = filling(goal="high", in_lots=True)
    lot(procedure, "90.0", "350.0")
    assert feed(procedure, press(Person.GO_ON)) == [WeighAgain()]
    assert feed(procedure, settled("350.0")) == []
    assert procedure.state is S.EMPTIED


def test_the_container_may_be_back_before_anybody_pressed() -> None:
    procedure = filling(goal="high", in_lots=True)
    lot(procedure, "90.0", "350.0")
    feed(procedure, EMPTY, PLACED, press(Person.GO_ON))
    (kept_mass,) = feed(procedure, settled("90.2"))
    assert isinstance(kept_mass, KeyMass)
    assert kept_mass.role == "empty"
    assert procedure.state is S.POUR


def test_a_lot_is_undone_with_both_its_masses() -> None:
    procedure = two_lots()
    first = procedure.kept.lots[0]
    effects = feed(procedure, press(Person.UNDO, 0))
    assert [effect.mass_id for effect in effects if isinstance(effect, MassVoided)] == [
        first.empty.id,
        first.filled.id,
    ]
    assert len(procedure.kept.lots) == 1
    assert procedure.state is S.LOT


def test_after_the_only_lot_is_undone_the_container_comes_again() -> None:
    procedure = filling(goal="high", in_lots=True)
    lot(procedure, "90.0", "350.0")
    feed(procedure, EMPTY, press(Person.UNDO, 0))
    assert procedure.state is S.EMPTY_ON


def test_nothing_in_the_container_is_no_lot() -> None:
    procedure = filling(goal="high", in_lots=True)
    feed(procedure, EMPTY, PLACED, settled("90.0"), PLACED, press(Person.STOP), settled("90.1"))
    assert procedure.state is S.POUR
    assert procedure.kept.lots == ()


def test_too_heavy_while_pouring_is_remembered_and_leads_to_lots() -> None:
    procedure = filling(goal="high", empty=mass("empty", "90.0"))
    feed(procedure, PLACED, TOO_HEAVY)
    assert procedure.too_heavy
    effects = feed(procedure, press(Person.MORE))
    assert [type(effect) for effect in effects] == [KeyChanged, WeighAgain]
    feed(procedure, settled("480.0"), press(Person.STOP))
    assert procedure.state is S.LOT


def test_lots_stay_when_more_samples_are_counted() -> None:
    procedure = two_lots()
    assert feed(procedure, press(Person.STOP), press(Person.MORE)) == []
    assert procedure.state is S.SAMPLES
    again = FillContainer(surroundings(), pan=PanMemory(), draft=procedure.kept)
    feed(again, press(Person.NO))
    assert again.state is S.LOT


def test_from_a_refused_key_one_comes_back_to_the_lots() -> None:
    procedure = filling(goal="low", in_lots=True)
    lot(procedure, "90.0", "91.0")
    feed(procedure, press(Person.STOP))
    assert procedure.state is S.REFUSED
    assert feed(procedure, press(Person.UNDO)) == []
    assert procedure.state is S.LOT


def stored(procedure: FillContainer) -> KeyDraft:
    """What the records give back of it."""
    draft = procedure.kept
    tray = [draft.tray] if draft.tray else []
    fills = [each for one in draft.lots for each in (one.empty, one.filled)]
    half = [draft.empty] if draft.empty else []
    again = KeyDraft.from_records(
        kept.KeyDraft(
            id=draft.id, material=draft.material, scatter_class=draft.scatter_class,
            piece_cv_percent=draft.piece_cv_percent, pieces=draft.pieces, back_in=draft.back_in,
            goal=draft.goal, in_lots=draft.in_lots, simulated=False, since=STARTED,
            masses=(*tray, *draft.samples, *fills, *half),
        )
    )  # fmt: skip
    assert again is not None
    return again


@pytest.mark.parametrize("half", [False, True])
def test_what_was_left_in_the_middle_goes_on_there(half: bool) -> None:
    procedure = two_lots("20000")
    if half:
        feed(procedure, EMPTY, press(Person.GO_ON), PLACED, settled("90.0"))
    again = stored(procedure)
    assert again == procedure.kept
    state = FillContainer(surroundings(), pan=memory(), draft=again).state
    assert state is (S.POUR if half else S.LOT)


def test_every_role_of_a_lot_is_known_to_the_records() -> None:
    lots = two_lots().kept.lots
    assert {each.empty.role for each in lots} == {MassRole.EMPTY}
    assert {each.filled.role for each in lots} == {MassRole.FILLED}


def test_leaving_and_staying_comes_back_to_each_place() -> None:
    for procedure in (filling(), two_lots()):
        state = procedure.state
        feed(procedure, press(Person.HOME), press(Person.STAY))
        assert procedure.state is state
