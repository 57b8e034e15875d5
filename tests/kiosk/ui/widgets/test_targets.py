"""Whatever can be tapped is large enough, and no target covers another."""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations
from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.action_button import ChoiceCard, MainButton, SecondButton
from kiosk.ui.widgets.bench_tile import BenchTile
from kiosk.ui.widgets.cup import CupRow, CupTable
from kiosk.ui.widgets.jar_letters import JarLetters
from kiosk.ui.widgets.sample_rows import SampleRows
from kiosk.ui.widgets.tappable import Tappable
from tests.helpers.offscreen import frames

SMALL = (800, 480)  # where targets stand at their floors
TIGHTEST = pytest.mark.parametrize("window", [SMALL], indirect=True)


def cups(count: int) -> list[tuple[int, str]]:
    return [(number, f"Pair {number}") for number in range(1, count + 1)]


def kept(count: int) -> list[dict[str, Any]]:
    return [{"name": "first", "bricks": 35, "mass_text": "3.5 g", "state": "kept"}] * count


PARTS: dict[str, tuple[Callable[[], Any], tuple[float, float]]] = {
    "main button": (lambda: MainButton(text="Next try"), (276, 88)),
    "second button": (lambda: SecondButton(text="Home", sign="home"), (140, 70)),
    "name card": (lambda: ChoiceCard(text="Heron"), (182, 112)),
    "bench tile": (lambda: BenchTile(text="jar", art="jar"), (128, 150)),
    "cup row": (lambda: CupRow(numbers=[7, 8, 9, 10, 11], more="more"), (542, 66)),
    "cup table": (lambda: CupTable(cups=cups(9)), (542, 282)),
    "many cups": (lambda: CupTable(cups=cups(40)), (542, 282)),
    "jar letters": (lambda: JarLetters(letters=list("ABCDEFGHIJKLMNOPQRSTUVWXYZ")), (458, 88)),
    "three samples": (lambda: SampleRows(rows=kept(3), undo_text="Undo"), (542, 232)),
    "ten samples": (lambda: SampleRows(rows=kept(10), undo_text="Undo"), (542, 232)),
}


@pytest.fixture(params=PARTS)
def part(request: pytest.FixtureRequest, window: Any) -> Any:
    make, (wide, high) = PARTS[request.param]
    widget = make()
    widget.size_hint = (None, None)
    widget.width = wide * theme.u
    if high:
        widget.height = max(high * theme.u, theme.action if high == 88 else 0)
    widget.pos = (0, 100)
    window.add_widget(widget)
    frames(2)
    return widget


def targets(widget: Any) -> list[Tappable]:
    return [each for each in widget.walk() if isinstance(each, Tappable)]


@TIGHTEST
def test_every_target_is_large_enough(part: Any) -> None:
    sizes = [thing.target()[2:] for thing in targets(part)]
    assert sizes
    assert min(min(size) for size in sizes) >= theme.tap


@TIGHTEST
def test_no_target_covers_another(part: Any) -> None:
    for one, other in combinations(targets(part), 2):
        ax, ay, aw, ah = one.target()
        bx, by, bw, bh = other.target()
        apart = (
            ax + aw <= bx + 0.5 or bx + bw <= ax + 0.5 or ay + ah <= by + 0.5 or by + bh <= ay + 0.5
        )
        assert apart, (one, other)
