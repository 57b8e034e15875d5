"""The bench of the simulated scale: which things lie there, and what a tap on one does."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from drivers.simulated.table import simulated_table
from drivers.simulated.things import Cup, Jar, Thing, Tray
from kiosk.procedures.check_plan import UNKNOWN
from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.measure_water import WaterState
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.bench import LEAST_SCOOP_G, MOST_SCOOP_G, BenchModel, TileView
from tests.helpers.check_scenes import check
from tests.helpers.pan import PLACED, feed, press, settled
from tests.helpers.scenes import (
    CHOSEN,
    cups,
    facts,
    in_container,
    in_samples,
    sampled,
    started,
    weigh_empty,
)
from tests.helpers.simulated_desk import ManualClock
from tests.helpers.water_scenes import in_water
from tests.helpers.weighings import weighed

ABOUT = 1.0  # grams by which whole pieces may miss a scoop


@pytest.fixture
def clock() -> ManualClock:
    return ManualClock()


@pytest.fixture
def bench(clock: ManualClock) -> Iterator[BenchModel]:
    """A bench beside a pan on which nothing lies, with no cup out."""
    with simulated_table(clock=clock, seed=7) as table:
        yield BenchModel(table, facts(), lambda: None)


def tiles(bench: BenchModel) -> dict[str, TileView]:
    return {tile.key: tile for tile in bench.view().tiles}


def on_pan(bench: BenchModel) -> list[Thing]:
    return list(bench.table.bench.on_pan)


def the_thing(bench: BenchModel) -> Thing:
    (thing,) = on_pan(bench)
    return thing


def two_cups_out(bench: BenchModel) -> None:
    """Cups 98 and 99 are out; 99 weighs 112.3 g empty and is out longest."""
    bench.facts.cups = cups(2)


# Cups ----------------------------------------------------------------------------------------


def test_a_tap_puts_an_empty_cup_on_and_another_takes_it_off(bench: BenchModel) -> None:
    bench.tap("empty")
    assert isinstance(the_thing(bench), Cup)
    assert tiles(bench)["empty"].on_pan
    bench.tap("empty")
    assert on_pan(bench) == []


def test_a_solid_cup_is_heavier_than_a_thin_one(bench: BenchModel) -> None:
    bench.tap("empty")
    thin = the_thing(bench).grams
    bench.tap("clear")
    bench.tap("solid")
    assert thin < 40 < the_thing(bench).grams
    assert (tiles(bench)["empty"].on_pan, tiles(bench)["solid"].on_pan) == (False, True)


def test_each_empty_cup_is_another_one(bench: BenchModel) -> None:
    bench.tap("empty")
    first = the_thing(bench)
    bench.tap("empty")
    bench.tap("empty")
    assert the_thing(bench).mass != first.mass


def test_a_weighed_cup_gets_its_number_and_comes_back_filled_with_its_own_mass(
    bench: BenchModel,
) -> None:
    bench.procedure = weigh_empty()
    bench.tap("empty")
    empty = the_thing(bench)
    feed(bench.procedure, PLACED, settled("12.3"))
    bench.follow()
    bench.tap("empty")
    bench.facts.cups = [replace(cups(1)[0], empty=weighed("12.3"))]
    bench.tap("filled")
    assert the_thing(bench) is empty
    assert the_thing(bench).filling == pytest.approx(bench.scoop, abs=ABOUT)


def test_a_cup_of_an_earlier_start_weighs_what_the_records_say(bench: BenchModel) -> None:
    two_cups_out(bench)
    bench.tap("filled")
    assert the_thing(bench).mass == pytest.approx(112.3)


def test_with_no_cup_out_none_can_be_filled(bench: BenchModel) -> None:
    assert tiles(bench)["filled"].off
    bench.tap("filled")
    assert on_pan(bench) == []


def test_the_cup_that_is_out_longest_would_be_the_filled_one(bench: BenchModel) -> None:
    two_cups_out(bench)
    assert tiles(bench)["filled"].text == f"filled cup {CHOSEN}"


def test_a_second_tap_takes_the_filled_cup_off(bench: BenchModel) -> None:
    two_cups_out(bench)
    bench.tap("filled")
    bench.tap("filled")
    assert on_pan(bench) == []


def test_a_cup_is_filled_anew_each_time_it_is_put_on(bench: BenchModel) -> None:
    two_cups_out(bench)
    bench.tap("filled")
    first = the_thing(bench).filling
    bench.tap("filled")
    bench.tap("less")
    bench.tap("filled")
    assert the_thing(bench).filling == pytest.approx(first - 5, abs=ABOUT)


def test_another_thing_takes_the_place_of_the_one_before(bench: BenchModel) -> None:
    two_cups_out(bench)
    bench.tap("empty")
    bench.tap("filled")
    assert the_thing(bench).filling > 0


@pytest.mark.parametrize(("key", "end"), [("less", LEAST_SCOOP_G), ("more", MOST_SCOOP_G)])
def test_the_scoop_has_its_ends(bench: BenchModel, key: str, end: int) -> None:
    for _ in range(60):
        bench.tap(key)
    assert bench.scoop == end
    assert f"scoop {end} g" in tiles(bench)[key].text


# Keys ----------------------------------------------------------------------------------------


def test_for_a_key_other_things_lie_there(bench: BenchModel) -> None:
    bench.procedure = started()
    assert list(tiles(bench)) == ["tray", "count", "jar", "pour", "weight", "clear"]


def test_the_same_tray_is_used_empty_and_full(bench: BenchModel) -> None:
    bench.procedure = started()
    bench.tap("tray")
    tray = the_thing(bench)
    assert isinstance(tray, Tray)
    bench.tap("count")
    assert the_thing(bench) is tray
    assert tray.pieces == 100
    assert tiles(bench)["count"].on_pan


def test_as_many_pieces_are_counted_as_the_key_wants(bench: BenchModel) -> None:
    procedure = started()
    feed(procedure, press(Person.PIECES, 300))
    bench.procedure = procedure
    assert tiles(bench)["count"].text == "tray of 300"
    bench.tap("count")
    assert the_thing(bench).pieces == 300


def test_a_second_tap_takes_the_full_tray_off_and_tips_it_out(bench: BenchModel) -> None:
    bench.procedure = started()
    bench.tap("count")
    tray = the_thing(bench)
    bench.tap("count")
    assert (on_pan(bench), tray.pieces) == ([], 0)


def test_a_full_tray_on_the_pan_is_emptied_where_it_stands(bench: BenchModel) -> None:
    bench.procedure = started()
    bench.tap("count")
    bench.tap("tray")
    assert the_thing(bench).pieces == 0
    assert tiles(bench)["tray"].on_pan


def test_nothing_is_poured_beside_the_jar(bench: BenchModel) -> None:
    bench.procedure = in_container(ContainerState.POUR)
    assert tiles(bench)["pour"].off
    bench.tap("pour")
    assert on_pan(bench) == []


def test_what_is_poured_runs_into_the_jar(bench: BenchModel, clock: ManualClock) -> None:
    bench.procedure = in_container(ContainerState.POUR)
    bench.tap("jar")
    bench.tap("pour")
    clock.wait(5.0)
    jar = the_thing(bench)
    assert isinstance(jar, Jar)
    assert jar.filling == pytest.approx(100, abs=ABOUT)


def test_for_the_next_empty_jar_there_is_a_new_one(bench: BenchModel) -> None:
    bench.procedure = in_container(ContainerState.EMPTY_ON)
    bench.tap("jar")
    first = the_thing(bench)
    bench.tap("clear")
    bench.tap("jar")
    assert the_thing(bench) is not first


def test_a_jar_that_was_weighed_comes_back_with_what_is_in_it(
    bench: BenchModel, clock: ManualClock
) -> None:
    bench.procedure = in_container(ContainerState.POUR)
    bench.tap("jar")
    bench.tap("pour")
    clock.wait(5.0)
    jar = the_thing(bench)
    bench.tap("jar")
    bench.tap("jar")
    assert the_thing(bench) is jar
    assert jar.pieces > 0


def test_before_a_material_is_chosen_there_are_trays_of_a_hundred(bench: BenchModel) -> None:
    bench.procedure = in_samples(SamplesState.MATERIAL)
    assert tiles(bench)["count"].text == "tray of 100"


# Keys of the scale, cable --------------------------------------------------------------------


def test_the_other_page_has_the_keys_and_the_cable(bench: BenchModel) -> None:
    bench.turn_page()
    assert list(tiles(bench)) == ["zero", "tare", "plug", "off", "weight", "clear"]
    assert bench.view().more == "Back to the things"
    bench.turn_page()
    assert "empty" in tiles(bench)


def test_the_cable_is_pulled_and_put_back(bench: BenchModel) -> None:
    bench.turn_page()
    bench.tap("plug")
    assert not bench.table.port.plugged
    assert tiles(bench)["plug"].text == "plug in"
    bench.tap("plug")
    assert bench.table.port.plugged
    assert tiles(bench)["plug"].text == "unplug"


def test_the_scale_is_switched_off_and_on(bench: BenchModel) -> None:
    bench.turn_page()
    bench.tap("off")
    assert (tiles(bench)["off"].text, tiles(bench)["off"].on_pan) == ("switch on", True)
    bench.tap("off")
    assert (tiles(bench)["off"].text, tiles(bench)["off"].on_pan) == ("switch off", False)


def test_a_check_weight_weighs_what_it_says(bench: BenchModel) -> None:
    bench.turn_page()
    bench.tap("weight")
    assert the_thing(bench).grams == 100
    assert tiles(bench)["weight"].on_pan


# Known masses --------------------------------------------------------------------------------


def test_a_check_lays_the_weights_out(bench: BenchModel) -> None:
    bench.procedure = check("M2")
    assert [tile.text for tile in bench.view().tiles] == [
        "20 g weight", "50 g weight", "100 g weight", "200 g weight", "500 g weight", "clear pan",
    ]  # fmt: skip


def test_with_nothing_known_there_are_firm_things_all_the_same(bench: BenchModel) -> None:
    bench.procedure = check(UNKNOWN)
    assert "known 100" in tiles(bench)


def test_a_weight_goes_on_and_off(bench: BenchModel) -> None:
    bench.procedure = check("M1")
    bench.tap("known 50")
    assert the_thing(bench).grams == 50
    assert tiles(bench)["known 50"].on_pan
    bench.tap("known 200")
    assert the_thing(bench).grams == 200
    bench.tap("known 200")
    assert on_pan(bench) == []


def test_coins_are_the_same_ones_each_time(bench: BenchModel) -> None:
    bench.procedure = check("us_5_cents")
    bench.tap("known 10")
    first = the_thing(bench)
    assert first.grams == pytest.approx(50, rel=0.02)
    bench.tap("clear")
    bench.tap("known 10")
    assert the_thing(bench) is first


def test_clear_takes_everything_off(bench: BenchModel) -> None:
    bench.tap("empty")
    bench.tap("clear")
    assert on_pan(bench) == []


def test_every_tile_can_be_tapped_at_any_time(bench: BenchModel) -> None:
    told = []
    for procedure in (None, sampled(1)):
        bench.procedure = procedure
        for _page in range(2):
            for key in tiles(bench):
                bench.tap(key)
                told.append(key)
            bench.turn_page()
    assert len(told) == 24


def test_whoever_shows_the_panel_is_told_of_each_tap() -> None:
    told: list[str] = []
    with simulated_table(clock=ManualClock(), seed=7) as table:
        bench = BenchModel(table, facts(), lambda: told.append("changed"))
        bench.tap("empty")
        bench.turn_page()
        bench.pull_out()
    assert len(told) == 3
    assert bench.out


# Water ---------------------------------------------------------------------------------------


def test_a_vase_is_filled_and_emptied_beside_the_pan_alone(bench: BenchModel) -> None:
    bench.procedure = in_water(WaterState.EMPTY)
    bench.tap("water")
    bench.tap("vase")
    full = the_thing(bench)
    assert (full.filling > 0, tiles(bench)["vase"].art) == (True, "full vase")
    assert (tiles(bench)["water"].off, tiles(bench)["no water"].off) == (True, True)
    bench.tap("no water")
    assert full.filling > 0
    bench.tap("vase")
    bench.tap("no water")
    assert (on_pan(bench), full.filling) == ([], 0.0)
