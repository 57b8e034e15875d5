"""Every state of every procedure, and everything else that can come, fits every window."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum
from functools import cache

import pytest

from drivers.simulated.table import simulated_table
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.ui.presenters.bench import BenchModel, BenchView
from kiosk.ui.screens.frame import SHEETS, WIDE
from kiosk.ui.theme import theme
from tests.helpers.offscreen import HEIGHT, WIDTH
from tests.helpers.scenes import MANY, SCENES, STATES, facts, named, sampled
from tests.helpers.survey import Surveyor

SIZES = [(800, 480), (1024, 600), (1280, 800), (1920, 1080)]
EVERY_SIZE = pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
BESIDE_THINGS = [name for name in SCENES if SCENES[name]().sheet.screen not in WIDE]
PROCEDURES: list[tuple[type[Procedure], type[Enum]]] = [
    (WeighEmpty, WeighEmptyState),
    (HandIn, HandInState),
    (CountSamples, SamplesState),
    (FillContainer, ContainerState),
]


@pytest.fixture(autouse=True, scope="module")
def _usual_look_afterwards() -> Iterator[None]:
    yield
    theme.less_motion = False
    theme.fit(WIDTH, HEIGHT)


@cache
def faults_of_sheets(size: tuple[int, int]) -> dict[str, list[str]]:
    """What does not fit, by scene: all laid out one after the other, as in a kiosk."""
    surveyor = Surveyor(size)
    found = {name: surveyor.faults_of(make()) for name, make in SCENES.items()}
    surveyor.close()
    return found


@cache
def faults_beside_things(size: tuple[int, int]) -> dict[str, list[str]]:
    """The same with the bench panel over the right half of the sheet."""
    surveyor = Surveyor(size, bench_views()["cups"])
    found = {name: surveyor.faults_of(SCENES[name](), things_out=True) for name in BESIDE_THINGS}
    surveyor.close()
    return found


@cache
def bench_views() -> dict[str, BenchView]:
    """The three pages of tiles."""
    with simulated_table(clock=lambda: 0.0) as table:
        bench = BenchModel(table, facts(MANY), lambda: None)
        views = {"cups": bench.view()}
        bench.procedure = sampled(1)
        views["key"] = bench.view()
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


@EVERY_SIZE
@pytest.mark.parametrize("name", SCENES)
def test_every_screen_fits(name: str, size: tuple[int, int]) -> None:
    assert faults_of_sheets(size)[name] == []


@EVERY_SIZE
@pytest.mark.parametrize("name", BESIDE_THINGS)
def test_every_screen_fits_beside_the_things(name: str, size: tuple[int, int]) -> None:
    assert faults_beside_things(size)[name] == []


@EVERY_SIZE
@pytest.mark.parametrize("page", ["cups", "key", "keys and cable"])
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
