"""The samples of a count key, one row each, as bars of bricks."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.properties import ListProperty, NumericProperty, OptionProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.action_button import SecondButton
from kiosk.ui.widgets.bricks import grouped, grouping
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.sample_row import UNDO_WIDE, paint_legend, paint_row
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

SHOWN = 3  # rows at a time; more turn by two keys at the right
ROW_GAP, TURN_GAP = 5, 8  # units
LEGEND_HIGH = 30


class TurnKey(Tappable, Drawing):
    """Moves the shown rows ``up`` or ``down`` by one."""

    follows: ClassVar[tuple[str, ...]] = ("way", "pressed", "disabled")
    way = OptionProperty("up", options=["up", "down"])

    def paint(self, pencil: Pencil) -> None:
        """Draw the key and its arrow."""
        edge = theme.line if self.disabled else theme.ink
        pencil.box(0, 0, self.wide, self.high, 14, theme.hair if self.pressed else theme.sheet)
        pencil.frame(0, 0, self.wide, self.high, 14, 2, edge)
        mark.SIGNS[self.way](pencil, self.wide / 2, self.high / 2, 15, edge)


class UndoButton(SecondButton):
    """Takes a kept sample back."""


class SampleRows(Drawing):
    """``rows`` are dicts: name, bricks, differing_bricks, mass_text, state, note.

    ``bricks`` are steps of the balance; ``group`` tells how many of them one drawn brick stands
    for. ``state`` is "kept", "on the pan" or "to come". Three rows show at a time: those around
    the first one that is not kept. Dispatches ``on_undo(index)`` of a kept row.
    """

    follows: ClassVar[tuple[str, ...]] = ("rows", "first", "group", "brick_text", "differ_text")
    __events__ = ("on_undo",)

    rows = ListProperty([])
    undo_text = StringProperty("")
    brick_text = StringProperty("")
    differ_text = StringProperty("")
    first = NumericProperty(0)  # the uppermost row shown
    group = NumericProperty(1)

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._undo = [UndoButton() for _ in range(SHOWN)]
        self._turn = [TurnKey(way="up"), TurnKey(way="down")]
        for button in self._undo:
            button.bind(on_release=self._undo_pressed)
        for key in self._turn:
            key.bind(on_release=self._turn_pressed)
        for name in ("pos", "size", "first", "undo_text", "brick_text"):
            self.fbind(name, self._arrange)
        theme.bind(u=self._arrange)
        self.fbind("rows", self._take_rows)
        self._take_rows()

    def on_undo(self, index: int) -> None:
        """Nothing by itself."""

    def _take_rows(self, *_: Any) -> None:
        """Show the row that is being weighed, and group the bricks anew."""
        self.group = grouping(max((row.get("bricks", 0) for row in self.rows), default=0))
        kept = sum(row.get("state") == "kept" for row in self.rows)
        self.first = max(0, min(kept - 1, len(self.rows) - SHOWN))
        self._arrange()

    def row_pixels(self) -> float:
        """Height of one row in pixels."""
        gaps = (SHOWN - 1) * ROW_GAP + (LEGEND_HIGH if self.brick_text else 0)
        return float(max((self.height - gaps * theme.u) / SHOWN, 1))

    def row_top(self, place: int) -> float:
        """Distance of a shown row from the upper edge, in pixels."""
        return place * (self.row_pixels() + ROW_GAP * theme.u)

    def _rows_wide(self) -> float:
        """Width of the rows in pixels, less where the turn keys stand."""
        turned = len(self.rows) > SHOWN
        return float(self.width - (theme.tap + TURN_GAP * theme.u if turned else 0))

    def shown(self) -> list[tuple[int, dict[str, Any]]]:
        """The rows now shown with their index."""
        first = int(self.first)
        return list(enumerate(self.rows))[first : first + SHOWN]

    def _undo_pressed(self, button: SecondButton) -> None:
        self.dispatch("on_undo", int(self.first) + self._undo.index(button))

    def _turn_pressed(self, key: TurnKey) -> None:
        step = -1 if key.way == "up" else 1
        self.first = max(0, min(self.first + step, len(self.rows) - SHOWN))

    def _arrange(self, *_: Any) -> None:
        kept = {place for place, (_, row) in enumerate(self.shown()) if row.get("state") == "kept"}
        wide = UNDO_WIDE * theme.u
        for place, button in enumerate(self._undo):
            button.text = self.undo_text
            button.size = (max(wide, theme.tap), self.row_pixels())
            button.right = self.x + self._rows_wide()
            button.top = self.top - self.row_top(place)
            self._present(button, place in kept and bool(self.undo_text))
        high = (self.row_top(SHOWN) - (ROW_GAP + TURN_GAP) * theme.u) / 2
        for place, key in enumerate(self._turn):
            key.size = (theme.tap, max(high, 1))
            key.right, key.top = self.right, self.top - place * (high + TURN_GAP * theme.u)
            key.disabled = self.first <= 0 if place == 0 else self.first >= len(self.rows) - SHOWN
            self._present(key, len(self.rows) > SHOWN)

    def _present(self, widget: Tappable, wanted: bool) -> None:
        if wanted and widget.parent is None:
            self.add_widget(widget)
        elif not wanted and widget.parent is not None:
            self.remove_widget(widget)

    def paint(self, pencil: Pencil) -> None:
        """Draw the rows shown."""
        drawn = [
            grouped(row.get("bricks", 0), row.get("differing_bricks", 0), int(self.group))
            for row in self.rows
        ]
        widest, unit = max((bricks for bricks, _ in drawn), default=0), pencil.unit
        for place, (index, row) in enumerate(self.shown()):
            box = (self.row_top(place) / unit, self._rows_wide() / unit, self.row_pixels() / unit)
            paint_row(pencil, box, row, (*drawn[index], widest))
        if self.brick_text:
            middle = self.row_top(SHOWN) / unit + LEGEND_HIGH / 2 - 3
            differing = any(differing for _, differing in drawn)
            paint_legend(pencil, middle, self.wide, self.brick_text, self.differ_text, differing)
