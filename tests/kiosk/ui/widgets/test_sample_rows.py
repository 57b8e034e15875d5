"""The samples of a key: three rows at a time, each kept one can be taken back."""

from __future__ import annotations

from typing import Any

from kiosk.ui.widgets.sample_rows import SampleRows, TurnKey, UndoButton
from tests.helpers.offscreen import frames, tap_at


def row(state: str, bricks: int = 35) -> dict[str, Any]:
    return {"name": "first", "bricks": bricks, "mass_text": "3.5 g", "state": state}


def shown(window: Any, *rows: dict[str, Any]) -> SampleRows:
    widget = SampleRows(rows=list(rows), undo_text="Undo", size_hint_x=None, width=542)
    window.add_widget(widget)
    frames(2)
    return widget


def undo_buttons(widget: SampleRows) -> list[UndoButton]:
    buttons = [child for child in widget.children if isinstance(child, UndoButton)]
    return sorted(buttons, key=lambda button: -button.y)


def turn_key(widget: SampleRows, way: str) -> TurnKey:
    return next(
        child for child in widget.children if isinstance(child, TurnKey) and child.way == way
    )


def undone(widget: SampleRows) -> list[int]:
    heard: list[int] = []
    widget.bind(on_undo=lambda _widget, index: heard.append(index))
    return heard


def test_only_kept_samples_can_be_taken_back(window: Any) -> None:
    widget = shown(window, row("kept"), row("on the pan"), row("to come"))
    assert len(undo_buttons(widget)) == 1


def test_undo_names_the_sample(window: Any) -> None:
    widget = shown(window, row("kept"), row("kept"), row("on the pan"))
    heard = undone(widget)
    tap_at(*undo_buttons(widget)[1].center)
    assert heard == [1]


def test_the_row_on_the_pan_is_in_view(window: Any) -> None:
    widget = shown(window, *[row("kept")] * 6, row("on the pan"), *[row("to come")] * 3)
    assert [index for index, _ in widget.shown()] == [5, 6, 7]


def test_undo_after_turning_names_the_right_sample(window: Any) -> None:
    widget = shown(window, *[row("kept")] * 6, row("on the pan"))
    heard = undone(widget)
    tap_at(*turn_key(widget, "up").center)
    frames(2)
    tap_at(*undo_buttons(widget)[0].center)
    assert heard == [widget.first]
    assert widget.first == 3


def test_the_end_cannot_be_passed(window: Any) -> None:
    widget = shown(window, *[row("kept")] * 3, row("on the pan"))
    widget.first = 1
    frames(2)
    assert turn_key(widget, "down").disabled
    assert not turn_key(widget, "up").disabled


def test_three_rows_need_no_turning(window: Any) -> None:
    widget = shown(window, row("kept"), row("on the pan"), row("to come"))
    assert not [child for child in widget.children if isinstance(child, TurnKey)]


def test_heavy_samples_are_grouped(window: Any) -> None:
    assert shown(window, row("kept", bricks=360)).group == 10
