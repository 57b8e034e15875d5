"""What is drawn of a container and its volume: lit edges, tags apart, nothing under the cover."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest

from kiosk.ui.theme import theme
from kiosk.ui.widgets.container_art import TAG_HIGH, ContainerArt
from kiosk.ui.widgets.container_shape import USUAL
from kiosk.ui.widgets.volume_card import VolumeCard
from tests.helpers.offscreen import frames


class Notes:
    """A pencil that only remembers what it was told."""

    unit = 1.0

    def __init__(self) -> None:
        self.told: list[tuple[str, tuple[Any, ...]]] = []

    def __getattr__(self, name: str) -> Any:
        def tell(*what: Any, **_more: Any) -> float:
            self.told.append((name, what))
            return 0.0

        return tell

    def of(self, name: str) -> list[tuple[Any, ...]]:
        return [what for told, what in self.told if told == name]

    @property
    def words(self) -> list[str]:
        return [what[0] for what in self.of("text")]


def art(window: Any, shape: str, sizes: tuple[float, ...], states: list[str]) -> Notes:
    tags = [f"{size:.2f}" if size else "" for size in sizes]
    widget = ContainerArt(shape=shape, sizes=list(sizes), states=states, tags=tags,
                          size_hint=(None, None), size=(368, 270))  # fmt: skip
    window.add_widget(widget)
    frames(1)
    widget.lit = 1.0
    notes = Notes()
    widget.paint(notes)  # type: ignore[arg-type]  # as much of a pencil as it needs
    return notes


def lit(notes: Notes, colour: object) -> int:
    """Whole edges in that colour; dashes are drawn thinner."""
    return sum(1 for what in notes.of("stroke") if what[2] == colour and what[1] > 3)


def test_the_present_edge_is_lit_with_its_places_and_done_ones_are_filled(window: Any) -> None:
    notes = art(window, "box", (18.4, 12.6, 9.2), ["done", "done", "now"])
    assert (lit(notes, theme.act), lit(notes, theme.lamp)) == (1, 2)
    dashed = [what for what in notes.of("stroke") if what[2] == theme.act and what[1] == 3]
    assert len(dashed) > 4


def test_edges_to_come_are_plain(window: Any) -> None:
    notes = art(window, "cylinder", (0.0, 0.0), ["now", "to come"])
    assert (lit(notes, theme.act), lit(notes, theme.lamp)) == (1, 0)
    assert notes.words == []


@pytest.mark.parametrize(
    ("shape", "sizes"),
    [
        *USUAL.items(),
        ("box", (60.0, 40.0, 1.5)),
        ("box", (5.0, 5.0, 90.0)),
        ("tapered box", (60.0, 40.0, 50.0, 30.0, 2.0)),
        ("tapered", (30.0, 28.0, 2.0)),
    ],
)
def test_tags_are_apart_and_inside(window: Any, shape: str, sizes: tuple[float, ...]) -> None:
    notes = art(window, shape, sizes, ["done"] * (len(sizes) - 1) + ["now"])
    tags = [what[:4] for what in notes.of("box") if what[3] == TAG_HIGH]
    assert len(tags) == len(sizes)
    for (ax, ay, aw, ah), (bx, by, bw, bh) in combinations(tags, 2):
        assert ax + aw <= bx or bx + bw <= ax or ay + ah <= by or by + bh <= ay
    assert all(x >= 0 and y >= 0 and x + w <= 368 and y + h <= 270 for x, y, w, h in tags)


def test_the_light_runs_along_an_edge_that_is_next(
    window: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(theme, "less_motion", False)
    widget = ContainerArt(states=["now", "to come", "to come"])
    widget.lit = 1.0
    widget.states = ["now", "to come", "to come"]
    assert widget.lit == 1.0  # the same edge stays alight
    widget.states = ["done", "now", "to come"]
    assert widget.lit == 0.0
    monkeypatch.setattr(theme, "less_motion", True)
    widget.states = ["done", "done", "now"]
    assert widget.lit == 1.0


def card(window: Any, **shown: Any) -> Notes:
    widget = VolumeCard(number="2\u2009150", unit="cubic cm", between="between", zero_text="0",
                        limit_text="limit", covered_text="covered", size_hint=(None, None),
                        size=(368, 132), **shown)  # fmt: skip
    window.add_widget(widget)
    frames(1)
    notes = Notes()
    widget.paint(notes)  # type: ignore[arg-type]
    return notes


def test_the_card_tells_the_volume_and_how_near_the_limit_is(window: Any) -> None:
    notes = card(window, share=0.5, low_share=0.49, high_share=0.51)
    assert "2\u2009150" in notes.words
    assert len(notes.of("stroke")) == 2
    full = [what for what in notes.of("box") if what[5] == theme.lamp]
    assert [what[2] for what in full] == [pytest.approx(0.5 * (368 - 40))]


def test_over_the_limit_the_trough_is_full_and_no_fuller(window: Any) -> None:
    notes = card(window, share=8.8, low_share=8.7, high_share=8.9)
    (full,) = [what for what in notes.of("box") if what[5] == theme.lamp]
    assert full[2] == 368 - 40
    assert notes.of("stroke") == []


def test_a_covered_card_tells_nothing(window: Any) -> None:
    notes = card(window, share=0.5, low_share=0.49, high_share=0.51, covered=True)
    assert notes.words == ["covered"]
    assert [what[2] for what in notes.of("box")] == [368]
