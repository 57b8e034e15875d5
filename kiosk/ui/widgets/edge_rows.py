"""The edges of a container, a row each: the sizes at its places, and by how much they differ."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.input import MotionEvent
from kivy.properties import ListProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable

GAP, POINTER, INSET = 8, 14, 14  # units; the pointer leads from the present row to the keypad
OPEN_HIGH = 92  # units of a row with its places, where there is room
CLOSED_LEAST = 34
TYPED_SHARE = 1.5


class EdgeRows(Tappable, Drawing):
    """``rows`` of name, cells, typing (None or text), note, state (to come, now, done), edge.

    One target; a tap dispatches ``on_choose`` with the edge of the row that was touched. A row too
    low for its places tells only their mean.
    """

    __events__ = ("on_choose",)
    follows: ClassVar[tuple[str, ...]] = ("rows",)

    rows = ListProperty([])

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._touched = 0.0

    def on_choose(self, edge: str) -> None:
        """Nothing by itself."""

    def on_touch_down(self, touch: MotionEvent) -> bool:
        """Remember which row was meant."""
        self._touched = (self.top - touch.y) / theme.u
        return bool(super().on_touch_down(touch))

    def on_release(self) -> None:
        """The row under the finger is meant."""
        for row, (top, high) in zip(self.rows, self.boxes(), strict=True):
            if self._touched <= top + high + GAP / 2:
                self.dispatch("on_choose", row["edge"])
                return

    def boxes(self) -> list[tuple[float, float]]:
        """Top and height of each row in units."""
        count = len(self.rows)
        free = self.high - GAP * (count - 1)
        even = free / max(count, 1)
        opened = min(OPEN_HIGH, free - CLOSED_LEAST * (count - 1)) if even < OPEN_HIGH else even
        now = any(row["state"] == "now" for row in self.rows)
        closed = (free - opened) / (count - 1) if now and count > 1 else even
        boxes, top = [], 0.0
        for row in self.rows:
            high = opened if row["state"] == "now" else closed
            boxes.append((top, high))
            top += high + GAP
        return boxes

    def paint(self, pencil: Pencil) -> None:
        """Draw the rows."""
        for row, box in zip(self.rows, self.boxes(), strict=True):
            self._paint_row(pencil, row, box)

    def _paint_row(self, pencil: Pencil, row: dict[str, Any], box: tuple[float, float]) -> None:
        (top, high), wide = box, self.wide - POINTER
        now = row["state"] == "now"
        ground = {"now": theme.card, "done": theme.kraft}.get(row["state"], theme.sheet)
        pencil.box(0, top, wide, high, 14, ground)
        pencil.frame(0, top, wide, high, 14, 4 if now else 2, theme.act if now else theme.line)
        if now:
            middle = top + high / 2
            tip = [(wide - 1, middle - 14), (wide + POINTER - 1, middle), (wide - 1, middle + 14)]
            pencil.fill(tip, theme.act)
        words = theme.step_name / pencil.unit
        if high < 2.7 * words:
            self._paint_closed(pencil, row, top + high / 2, wide)
            return
        baseline = top + 6 + 0.92 * words
        self._paint_head(pencil, row, baseline, wide)
        self._paint_cells(pencil, row, (top + 1.28 * words + 8, top + high - 9), wide)

    def _paint_head(
        self, pencil: Pencil, row: dict[str, Any], baseline: float, wide: float
    ) -> None:
        ink = theme.act if row["state"] == "now" else theme.ink
        name = pencil.text(row["name"], INSET + 2, baseline, theme.step_name, ink, bold=True,
                           room=wide * 0.55)  # fmt: skip
        room = wide - 2 * INSET - name - 12
        pencil.text(row["note"], wide - INSET, baseline, theme.label, theme.ink, anchor="right",
                    room=room)  # fmt: skip

    def _paint_closed(
        self, pencil: Pencil, row: dict[str, Any], middle: float, wide: float
    ) -> None:
        baseline = middle + CAP / 2 * theme.step_name / pencil.unit
        name = pencil.text(row["name"], INSET + 2, baseline, theme.step_name, theme.ink,
                           bold=True, room=wide * 0.62)  # fmt: skip
        pencil.text(row["mean"], wide - INSET, baseline, theme.step_name, theme.ink,
                    anchor="right", room=wide - 2 * INSET - name - 8)  # fmt: skip

    def _paint_cells(
        self, pencil: Pencil, row: dict[str, Any], span: tuple[float, float], wide: float
    ) -> None:
        cells, typing = list(row["cells"]), row["typing"]
        active = len(cells) if typing is not None else -1
        shown = [*cells, typing] if typing is not None else cells
        shown += [""] * (2 - len(shown))
        (top, bottom), gap = span, 10
        free = wide - 2 * INSET - gap * (len(shown) - 1)
        # Of three places the typed one has more digits than the others show.
        shares = [
            TYPED_SHARE if place == active and place == 2 else 1 for place in range(len(shown))
        ]
        widths = [free * share / sum(shares) for share in shares]
        baseline = (top + bottom) / 2 + CAP / 2 * theme.must / pencil.unit
        for place, words in enumerate(shown):
            cell, lit = widths[place], place == active
            x = INSET + sum(widths[:place]) + place * gap
            pencil.box(x, top, cell, bottom - top, 8, theme.act_t if lit else theme.card)
            pencil.frame(x, top, cell, bottom - top, 8, 3 if lit else 1.5,
                         theme.act if lit else theme.line)  # fmt: skip
            pencil.text(words, x + cell / 2, baseline, theme.must, theme.ink, bold=True,
                        anchor="middle", room=cell - 8)  # fmt: skip
