from __future__ import annotations

import dataclasses
from contextlib import closing

import pytest

from kiosk.evidence import Source
from kiosk.records.entries import CupTaken, TryThrownAway
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store
from tests.helpers.both_stores import BOTH_STORES
from tests.helpers.recorded import AT, cup_taken, handed_in, refused

pytestmark = BOTH_STORES


def numbers_out(store: Store, *, simulated: bool = False) -> list[int]:
    return [cup.number for cup in store.cups_out(simulated)]


def thrown_away(cup: CupTaken) -> TryThrownAway:
    return TryThrownAway(try_id=cup.id, reason="spilled", at=AT)


# Out and back ---------------------------------------------------------------------------------


def test_a_cup_taken_is_out_with_what_was_known(store: Store) -> None:
    cup = cup_taken(7)
    store.save(cup)
    (out,) = store.cups_out(simulated=False)
    assert (out.id, out.number, out.team, out.material) == (cup.id, 7, "Heron", "rice")
    assert (out.empty, out.since) == (cup.empty, cup.at)


def test_cups_out_survive_a_restart(store: Store, where: str) -> None:
    store.save(cup_taken(7), cup_taken(8))
    store.close()
    with closing(Store(where)) as restarted:
        assert numbers_out(restarted) == [7, 8]


def test_a_cup_handed_in_is_no_longer_out(store: Store) -> None:
    seven, eight = cup_taken(7), cup_taken(8)
    store.save(seven, eight)
    store.save(handed_in(seven))
    assert numbers_out(store) == [8]


def test_cups_may_come_back_in_any_order(store: Store) -> None:
    cups = [cup_taken(number) for number in (1, 2, 3)]
    store.save(*cups)
    for cup in (cups[2], cups[0], cups[1]):
        store.save(handed_in(cup))
    assert [kept.number for kept in store.last_tries("Heron", simulated=False)] == [3, 1, 2]


def test_a_try_is_handed_in_once(store: Store) -> None:
    cup = cup_taken()
    store.save(cup, handed_in(cup))
    assert refused(store, handed_in(cup, "99.9")) is Problem.NOT_OUT
    assert [str(kept.net) for kept in store.last_tries("Heron", simulated=False)] == ["93.4"]


def test_a_try_that_nobody_took_cannot_be_handed_in(store: Store) -> None:
    assert refused(store, handed_in(cup_taken())) is Problem.NO_TRY


def test_a_try_thrown_away_is_not_out_and_cannot_be_handed_in(store: Store) -> None:
    cup = cup_taken()
    store.save(cup, thrown_away(cup))
    assert numbers_out(store) == []
    assert refused(store, handed_in(cup)) is Problem.NOT_OUT


def test_a_try_handed_in_by_mistake_stops_counting_but_stays_on_record(store: Store) -> None:
    cup = cup_taken()
    store.save(cup, handed_in(cup))
    store.save(thrown_away(cup))
    assert store.last_tries("Heron", simulated=False) == []
    assert refused(store, handed_in(cup)) is Problem.NOT_OUT


def test_a_try_is_thrown_away_once(store: Store) -> None:
    cup = cup_taken()
    store.save(cup, thrown_away(cup))
    assert refused(store, thrown_away(cup)) is Problem.GONE_ALREADY


# Asked twice, kept once -----------------------------------------------------------------------


def test_the_same_entries_saved_again_are_kept_once(store: Store) -> None:
    cup = cup_taken()
    back = handed_in(cup)
    for _ in range(3):
        store.save(cup, back)
    assert len(store.last_tries("Heron", simulated=False)) == 1
    assert numbers_out(store) == []


def test_a_cup_saved_again_after_it_came_back_is_not_out_again(store: Store) -> None:
    cup = cup_taken()
    store.save(cup)
    store.save(handed_in(cup))
    store.save(cup)
    assert numbers_out(store) == []


def test_an_id_never_stands_for_two_things(store: Store) -> None:
    cup = cup_taken(7)
    store.save(cup)
    assert refused(store, dataclasses.replace(cup, team="Wren")) is Problem.OTHER_CONTENT
    assert store.cups_out(simulated=False)[0].team == "Heron"


def test_a_weighing_never_changes_under_its_id(store: Store) -> None:
    cup = cup_taken(7)
    store.save(cup)
    heavier = dataclasses.replace(cup.empty, grams=cup.empty.grams + 1)
    again = dataclasses.replace(cup_taken(8), empty=heavier)
    assert refused(store, again) is Problem.OTHER_CONTENT
    assert numbers_out(store) == [7]


def test_entries_saved_together_are_kept_together_or_not_at_all(store: Store) -> None:
    seven = cup_taken(7)
    assert refused(store, seven, cup_taken(7)) is Problem.NUMBER_TAKEN
    assert numbers_out(store) == []
    store.save(seven)
    assert numbers_out(store) == [7]


# Numbers --------------------------------------------------------------------------------------


def test_the_first_cup_is_number_1(store: Store) -> None:
    assert store.next_cup_number(simulated=False) == 1


def test_numbers_go_on_after_the_last_given_though_it_came_back(store: Store) -> None:
    cup = cup_taken(41)
    store.save(cup, handed_in(cup))
    assert store.next_cup_number(simulated=False) == 42


def test_after_99_comes_1_again(store: Store) -> None:
    store.save(cup_taken(99))
    assert store.next_cup_number(simulated=False) == 1


def test_a_number_that_is_out_is_passed_over(store: Store) -> None:
    store.save(cup_taken(1), cup_taken(2), cup_taken(98), cup_taken(99))
    assert store.next_cup_number(simulated=False) == 3


def test_a_number_that_is_out_is_not_given_twice(store: Store) -> None:
    store.save(cup_taken(7))
    assert refused(store, cup_taken(7)) is Problem.NUMBER_TAKEN
    with pytest.raises(RecordsError, match="Cup 7 is out already"):
        store.save(cup_taken(7))


def test_two_kiosks_on_one_file_cannot_give_one_number(store: Store, where: str) -> None:
    with closing(Store(where)) as other:
        first, second = store.next_cup_number(False), other.next_cup_number(False)
        assert first == second
        store.save(cup_taken(first))
        assert refused(other, cup_taken(second)) is Problem.NUMBER_TAKEN
        assert other.next_cup_number(False) == 2


def test_a_number_may_be_given_again_once_its_cup_came_back(store: Store) -> None:
    cup = cup_taken(7)
    store.save(cup, handed_in(cup), cup_taken(7, team="Wren"))
    assert [out.team for out in store.cups_out(simulated=False)] == ["Wren"]


def test_with_every_number_out_there_is_none_to_give(store: Store) -> None:
    store.save(*(cup_taken(number) for number in range(1, 100)))
    with pytest.raises(RecordsError, match="All 99 cup numbers are out") as caught:
        store.next_cup_number(simulated=False)
    assert caught.value.problem is Problem.ALL_OUT


def test_numbers_follow_the_order_of_keeping_when_the_clock_jumps_back(store: Store) -> None:
    late = dataclasses.replace(cup_taken(5), at=AT.replace(year=2030))
    store.save(late)
    store.save(cup_taken(6))
    assert store.next_cup_number(simulated=False) == 7


# Tries ----------------------------------------------------------------------------------------


def test_the_last_five_tries_come_oldest_first(store: Store) -> None:
    for number in range(1, 8):
        cup = cup_taken(number)
        store.save(cup, handed_in(cup, points=f"{number}.0"))
    points = [str(kept.points) for kept in store.last_tries("Heron", simulated=False)]
    assert points == ["3.0", "4.0", "5.0", "6.0", "7.0"]


def test_tries_of_other_teams_stay_with_them(store: Store) -> None:
    heron, wren = cup_taken(1), cup_taken(2, team="Wren")
    store.save(heron, wren, handed_in(heron), handed_in(wren))
    assert [kept.number for kept in store.last_tries("Wren", simulated=False)] == [2]


def test_a_try_carries_its_evidence(store: Store) -> None:
    cup = cup_taken()
    back = dataclasses.replace(handed_in(cup), confirmed=True)
    store.save(cup, back)
    (kept,) = store.last_tries("Heron", simulated=False)
    assert (kept.evidence.gross, kept.evidence.tare) == (back.filled, cup.empty)
    assert kept.evidence.net == kept.net
    assert kept.confirmed


# Simulated and real ---------------------------------------------------------------------------


def test_simulated_and_real_cups_are_told_apart(store: Store) -> None:
    real, simulated = cup_taken(7), cup_taken(7, source=Source.SIMULATED)
    store.save(real, simulated)
    assert [cup.id for cup in store.cups_out(simulated=False)] == [real.id]
    assert [cup.id for cup in store.cups_out(simulated=True)] == [simulated.id]


def test_simulated_and_real_numbers_run_apart(store: Store) -> None:
    store.save(cup_taken(40, source=Source.SIMULATED))
    assert store.next_cup_number(simulated=False) == 1
    assert store.next_cup_number(simulated=True) == 41


def test_simulated_tries_do_not_stand_among_real_ones(store: Store) -> None:
    cup = cup_taken(source=Source.SIMULATED)
    store.save(cup, handed_in(cup, source=Source.SIMULATED))
    assert store.last_tries("Heron", simulated=False) == []
    assert len(store.last_tries("Heron", simulated=True)) == 1


@pytest.mark.parametrize(
    ("empty", "filled"),
    [(Source.SIMULATED, Source.BALANCE), (Source.BALANCE, Source.SIMULATED)],
)
def test_one_try_never_mixes_simulated_and_real(
    store: Store, empty: Source, filled: Source
) -> None:
    cup = cup_taken(source=empty)
    store.save(cup)
    assert refused(store, handed_in(cup, source=filled)) is Problem.MIXED
    assert numbers_out(store, simulated=empty is Source.SIMULATED) == [7]


def test_a_typed_mass_is_a_real_one(store: Store) -> None:
    cup = cup_taken()
    store.save(cup, handed_in(cup, source=Source.TYPED))
    assert len(store.last_tries("Heron", simulated=False)) == 1
