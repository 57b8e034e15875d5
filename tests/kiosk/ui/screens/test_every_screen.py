"""Every state of every procedure, and everything else that can come, fits every window."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum
from functools import cache

import pytest

from drivers.simulated.table import simulated_table
from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.measure import Measure, MeasureState
from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.queue_steps import QueueState
from kiosk.procedures.throw_away import ThrowAway, ThrowState
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.ui.presenters.bench import BenchModel, BenchView
from kiosk.ui.presenters.scene import Scene
from kiosk.ui.screens.frame import SHEETS, WIDE
from kiosk.ui.theme import theme
from tests.helpers.check_scenes import check
from tests.helpers.offscreen import HEIGHT, WIDTH
from tests.helpers.queue_scenes import in_queue
from tests.helpers.sampled import sampled
from tests.helpers.scenes import MANY, SCENES, STATES, facts, named
from tests.helpers.survey import Surveyor
from tests.helpers.water_scenes import in_water

SIZES = [(800, 480), (1024, 600), (1280, 800)]
EVERY_SIZE = pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
PROCEDURES: list[tuple[type[Procedure], type[Enum]]] = [
    (WeighEmpty, WeighEmptyState),
    (HandIn, HandInState),
    (CountSamples, SamplesState),
    (FillContainer, ContainerState),
    (ThrowAway, ThrowState),
    (Measure, MeasureState),
    (MeasureWater, WaterState),
    (BalanceCheck, CheckState),
    (CupQueue, QueueState),
]


@pytest.fixture(autouse=True, scope="module")
def _usual_look_afterwards() -> Iterator[None]:
    yield
    theme.less_motion = False
    theme.fit(WIDTH, HEIGHT)


@cache
def bench_views() -> dict[str, BenchView]:
    """The pages of tiles."""
    with simulated_table(clock=lambda: 0.0) as table:
        bench = BenchModel(table, facts(MANY), lambda: None)
        views = {"cups": bench.view()}
        bench.procedure = sampled(1)
        views["key"] = bench.view()
        bench.procedure = in_water(WaterState.FILLED)
        views["water"] = bench.view()
        bench.procedure = check("M1")
        views["weights"] = bench.view()
        bench.procedure = check("us_5_cents")
        views["coins"] = bench.view()
        bench.procedure = in_queue(QueueState.WEIGHING)
        views["round"] = bench.view()
        bench.turn_page()
        views["keys and cable"] = bench.view()
    return views


@pytest.mark.parametrize(("procedure", "states"), PROCEDURES)
def test_every_state_has_its_scene(procedure: type[Procedure], states: type[Enum]) -> None:
    missing = {named(state) for state in set(states) - procedure.FINAL} - {
        name.partition(",")[0] for name in STATES
    }
    assert missing == set()


def test_every_kind_of_sheet_comes() -> None:
    assert {make().sheet.screen for make in SCENES.values()} == set(SHEETS)


def scenes_in(size: tuple[int, int]) -> dict[str, Scene]:
    """All of them in the tight sizes; in the largest, where everything only grows, some of each."""
    scenes = {name: make() for name, make in SCENES.items()}
    if size != SIZES[-1]:
        return scenes
    kinds: dict[str, list[str]] = {}
    for name, scene in scenes.items():
        kinds.setdefault(scene.sheet.screen, []).append(name)
    return {name: scenes[name] for names in kinds.values() for name in (names[0], names[-1])}


@EVERY_SIZE
def test_every_screen_fits(size: tuple[int, int]) -> None:
    surveyor = Surveyor(size)  # one for all, as the sheets of a kiosk follow one view after another
    faults = {name: surveyor.faults_of(scene) for name, scene in scenes_in(size).items()}
    surveyor.close()
    assert {name: found for name, found in faults.items() if found} == {}


@pytest.mark.parametrize("size", SIZES[::2])  # the one between has nearly the shape of the first
def test_every_screen_fits_beside_the_things(size: tuple[int, int]) -> None:
    surveyor = Surveyor(size, bench_views()["cups"])
    scenes = scenes_in(size)
    beside = {name: scene for name, scene in scenes.items() if scene.sheet.screen not in WIDE}
    faults = {name: surveyor.faults_of(scene, things_out=True) for name, scene in beside.items()}
    surveyor.close()
    assert {name: found for name, found in faults.items() if found} == {}


@pytest.mark.parametrize("size", SIZES[:2])  # the tightest: the panel only grows from there
@pytest.mark.parametrize(
    "page", ["cups", "key", "water", "weights", "coins", "round", "keys and cable"]
)
def test_every_page_of_things_fits(page: str, size: tuple[int, int]) -> None:
    surveyor = Surveyor(size, bench_views()[page])
    faults = surveyor.faults_of(SCENES["container: pour"](), things_out=True)
    surveyor.close()
    assert faults == []


# The survey itself ---------------------------------------------------------------------------


def test_a_text_that_is_too_large_is_noticed() -> None:
    surveyor = Surveyor((800, 480))
    surveyor.lay_out(SCENES["home"]())
    label = surveyor.labels()[0]
    label.height = 5
    assert [fault for fault in surveyor.texts_too_large() if label.text in fault]
    surveyor.close()


def test_a_target_on_another_one_is_noticed() -> None:
    surveyor = Surveyor((800, 480))
    surveyor.lay_out(SCENES["teams"]())
    one, other = surveyor.targets()[:2]
    other.pos = one.pos
    assert list(surveyor.overlapping_targets())
    surveyor.close()


def test_a_part_beside_its_sheet_is_noticed() -> None:
    surveyor = Surveyor((800, 480))
    surveyor.lay_out(SCENES["teams"]())
    surveyor.targets()[0].x = 790
    assert list(surveyor.out_of_the_sheet())
    surveyor.close()
