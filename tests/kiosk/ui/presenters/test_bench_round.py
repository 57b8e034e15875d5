"""The numbered cups of a round on the bench of the simulated scale."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from drivers.simulated.table import simulated_table
from drivers.simulated.things import Thing
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person
from kiosk.rounds.contents import CupTurn
from kiosk.rounds.cups import Pass
from kiosk.ui.presenters.bench import BenchModel
from kiosk.ui.presenters.bench_tiles import TileView
from kiosk.ui.presenters.surroundings import TableFacts
from tests.helpers.pan import feed, press
from tests.helpers.queue_hands import CLEAN, handing_in, off, on, table, weighed_empty

FILLED, OTHER, CRUMBS, CLEAR = range(4)


@pytest.fixture
def bench() -> Iterator[BenchModel]:
    with simulated_table(clock=lambda: 0.0) as made:
        yield BenchModel(made, TableFacts(material="rice"), lambda: None)


def tiles(bench: BenchModel, procedure: CupQueue) -> tuple[TileView, ...]:
    bench.procedure = procedure
    return bench.view().tiles


def tap(bench: BenchModel, place: int) -> tuple[Thing, ...]:
    """Tap the tile at that place; what lies on the pan then."""
    bench.tap(bench.view().tiles[place].key)
    return bench.table.bench.on_pan


def test_the_next_cup_and_another_one_are_at_hand(bench: BenchModel) -> None:
    texts = [tile.text for tile in tiles(bench, handing_in())[:3]]
    assert texts == ["cup 1 filled", "another cup: 2", "crumbs"]


def test_a_cup_that_was_weighed_before_weighs_the_same_when_it_is_filled(
    bench: BenchModel,
) -> None:
    tiles(bench, handing_in())
    (cup,) = tap(bench, FILLED)
    assert cup.mass == pytest.approx(12.3)
    assert cup.filling == pytest.approx(95, abs=1)


def test_the_empty_pass_has_empty_cups_that_stay_the_same_when_they_come_filled(
    bench: BenchModel,
) -> None:
    empty = table(weighed_empty(), Pass.EMPTY)
    assert tiles(bench, empty)[FILLED].text == "cup 1 empty"
    (cup,) = tap(bench, FILLED)
    assert cup.filling == 0
    tap(bench, FILLED)
    tiles(bench, handing_in())
    assert tap(bench, FILLED) == (cup,)
    assert cup.filling > 0


def test_a_second_tap_takes_the_recorded_cup_off(bench: BenchModel) -> None:
    procedure = handing_in()
    tiles(bench, procedure)
    tap(bench, FILLED)
    feed(procedure, *on("107.3"))
    assert bench.view().tiles[FILLED].on_pan
    assert tap(bench, FILLED) == ()
    feed(procedure, *off())
    assert bench.view().tiles[FILLED].text == "cup 2 filled"


def test_crumbs_stay_when_a_cup_is_taken_off(bench: BenchModel) -> None:
    tiles(bench, handing_in())
    tap(bench, FILLED)
    tap(bench, CRUMBS)
    (crumbs,) = tap(bench, FILLED)
    assert crumbs.grams < 1
    assert bench.view().tiles[CRUMBS].on_pan
    assert tap(bench, CLEAR) == ()


def test_a_cracked_cup_is_replaced_by_another_one(bench: BenchModel) -> None:
    procedure = table(weighed_empty("12.3"))
    tiles(bench, procedure)
    (first,) = tap(bench, FILLED)
    tap(bench, FILLED)
    feed(procedure, CLEAN, press(Person.MISHAP), press(Person.CHOOSE, CupTurn.CRACKED))
    assert bench.view().tiles[FILLED].text == "cup 1 empty"
    (second,) = tap(bench, FILLED)
    assert second is not first


def test_when_all_cups_are_done_there_is_none_to_put_on(bench: BenchModel) -> None:
    procedure = handing_in(*(press(Person.CHOOSE, CupTurn.LATE) for _ in range(3)))
    assert [tile.off for tile in tiles(bench, procedure)[:2]] == [True, True]
