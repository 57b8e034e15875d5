"""What every drawn part has in common: it follows its size, and it leaves nothing behind."""

from __future__ import annotations

import gc
import weakref
from collections.abc import Callable
from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.action_button import Chip, ChoiceCard, MainButton, SecondButton
from kiosk.ui.widgets.bench_tile import BenchTile
from kiosk.ui.widgets.cup import CupDrawing, CupRow, CupTable
from kiosk.ui.widgets.fit_label import FitLabel
from kiosk.ui.widgets.jar_letters import JarLetters
from kiosk.ui.widgets.mark import SIGNS, Mark
from kiosk.ui.widgets.pan import Pan
from kiosk.ui.widgets.pour_gauge import PourGauge
from kiosk.ui.widgets.sample_rows import SampleRows
from kiosk.ui.widgets.scale_art import JarArt, PlugArt, ScaleArt, TrayArt, WeightArt
from kiosk.ui.widgets.score_tent import ScoreTent
from kiosk.ui.widgets.sheet import Bench, BenchPanel, Panel, Sheet
from kiosk.ui.widgets.status_strip import StatusStrip
from kiosk.ui.widgets.step_trail import NumberBead, StepTrail
from kiosk.ui.widgets.tries_plot import TriesPlot
from tests.helpers.offscreen import frames, pixels

PARTS: dict[str, Callable[[], Any]] = {
    "pan": lambda: Pan(phase="captured", number="12.3", unit="g", simulated=True),
    "tent": lambda: ScoreTent(estimate=93.4, side="under", score_text="93.4"),
    "flat tent": lambda: ScoreTent(band=0.02, band_text="the real number"),
    "trail": lambda: StepTrail(step=2, text="Step 2 of 4: fill"),
    "bead": lambda: NumberBead(number=2, present=True),
    "main button": lambda: MainButton(text="Next try"),
    "waiting button": lambda: MainButton(text="Waiting", state_name="waiting"),
    "second button": lambda: SecondButton(text="Home", sign="home"),
    "name card": lambda: ChoiceCard(text="Heron", cup_number=7),
    "chip": lambda: Chip(text="in the jar"),
    "tile": lambda: BenchTile(text="jar", art="jar", placed=True),
    "cup": lambda: CupDrawing(number=7, filled=True),
    "cup row": lambda: CupRow(numbers=[7, 8], more="more", places=7),
    "cup table": lambda: CupTable(cups=[(number, "Heron") for number in range(20)]),
    "label": lambda: FitLabel(text="It will not count."),
    "letters": lambda: JarLetters(letters=list("ABCDEFGHI"), used=["A"], chosen="C"),
    "mark": lambda: Mark(sign="tick"),
    "gauge": lambda: PourGauge(count=10_730, goal="high", high_text="high"),
    "samples": lambda: SampleRows(
        rows=[{"name": "first", "bricks": 35, "state": "kept"}] * 5, undo_text="Undo"
    ),
    "scale": lambda: ScaleArt(load="filled cup", arrows="down"),
    "jar": lambda: JarArt(text="C"),
    "tray": lambda: TrayArt(pieces=True),
    "weight": WeightArt,
    "plug": PlugArt,
    "bench": Bench,
    "sheet": Sheet,
    "panel": lambda: Panel(edge=theme.ink),
    "bench panel": BenchPanel,
    "strip": lambda: StatusStrip(words=["Scale connected", "Team Heron"], clock_text="10:14"),
    "striped strip": lambda: StatusStrip(simulated=True, plate_text="SIMULATED SCALE"),
    "tries": lambda: TriesPlot(errors=[14, -7, 1], newest_text="newest"),
}


@pytest.fixture(params=PARTS)
def part(request: pytest.FixtureRequest, window: Any) -> Any:
    widget = PARTS[request.param]()
    widget.size_hint = (None, None)
    widget.size, widget.pos = (420, 240), (100, 100)
    window.add_widget(widget)
    frames(2)
    return widget


def test_it_can_be_seen(window: Any, part: Any) -> None:
    drawn = pixels(window)
    window.remove_widget(part)
    frames(1)
    assert pixels(window) != drawn


def test_it_follows_its_size(window: Any, part: Any) -> None:
    before = pixels(window)
    part.size = (300, 200)
    frames(2)
    assert pixels(window) != before


def test_it_bears_having_no_size(part: Any) -> None:
    part.size = (0, 0)
    frames(2)
    assert min(part.size) == 0


@pytest.mark.parametrize("part", ["cup table", "samples", "waiting button"], indirect=True)
def test_it_follows_the_window(window: Any, part: Any) -> None:
    before = pixels(window)
    theme.fit(1280, 800)
    frames(2)
    assert pixels(window) != before


def test_none_leaves_anything_behind(window: Any) -> None:
    gone = {}
    for name, make in PARTS.items():
        widget = make()
        window.add_widget(widget)
        frames(2)
        window.remove_widget(widget)
        frames(2)
        gone[name] = weakref.ref(widget)
        del widget
    gc.collect()  # once: it takes long in a process with many widgets
    assert [name for name, left in gone.items() if left() is not None] == []


def test_a_day_of_cards_does_not_lengthen_the_list_of_the_theme() -> None:
    before = len(theme.get_property_observers("u"))
    for _ in range(50):
        ChoiceCard(text="Heron")
    gc.collect()
    assert len(theme.get_property_observers("u")) == before


@pytest.mark.parametrize("sign", SIGNS)
def test_every_sign_stays_near_its_place(window: Any, sign: str) -> None:
    mark = Mark(sign=sign, colour=theme.hazard, size_hint=(None, None), size=(40, 40))
    mark.pos = (200, 200)
    window.add_widget(mark)
    frames(2)
    width = int(window.width)
    rows = [pixels(window)[4 * width * y : 4 * width * (y + 1)] for y in (200 - 8, 240 + 8)]
    assert all(set(row[0::4]) == {0} for row in rows)
