"""The six answers of a sheet, a row each: what it is, both typings, how it stands."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.input import MotionEvent
from kivy.properties import ListProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark, signs
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.scale_art import draw_box, draw_jar
from kiosk.ui.widgets.tappable import Tappable

GAP, POINTER = 8, 14  # units
NAME_AT, FIRST_ENDS, SECOND_ENDS = 80, 0.56, 0.775  # units; shares of the width
LID_WIDE = 92


class PaperRows(Tappable, Drawing):
    """``rows`` of thing, name, first, second, hidden, state, words; one target.

    A tap dispatches ``on_choose`` with the place of the row that was touched.
    """

    __events__ = ("on_choose",)
    follows: ClassVar[tuple[str, ...]] = ("rows",)
    rows = ListProperty([])

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._touched = 0.0

    def on_choose(self, place: int) -> None:
        """Nothing by itself."""

    def on_touch_down(self, touch: MotionEvent) -> bool:
        """Remember which row was meant."""
        self._touched = (self.top - touch.y) / max(1.0, self.height)
        return bool(super().on_touch_down(touch))

    def on_release(self) -> None:
        """The row under the finger is meant."""
        if self.rows:
            place = int(self._touched * len(self.rows))
            self.dispatch("on_choose", max(0, min(place, len(self.rows) - 1)))

    def paint(self, pencil: Pencil) -> None:
        """Draw the rows."""
        pitch = (self.high + GAP) / max(1, len(self.rows))
        for place, row in enumerate(self.rows):
            self._paint_row(pencil, row, place * pitch, pitch - GAP)

    def _paint_row(self, pencil: Pencil, row: dict[str, Any], top: float, high: float) -> None:
        wide, now = self.wide - POINTER, row["state"] == "now"
        ground = {"now": theme.card, "done": theme.kraft}.get(row["state"], theme.card)
        pencil.box(0, top, wide, high, 14, ground)
        heavy = now or row["state"] in ("differs", "unreadable")
        edge = theme.act if now else theme.ink if heavy else theme.line
        pencil.frame(0, top, wide, high, 14, 4 if now else 3 if heavy else 2, edge)
        middle = top + high / 2
        if now:
            tip = [(wide - 1, middle - 14), (wide + POINTER - 1, middle), (wide - 1, middle + 14)]
            pencil.fill(tip, theme.act)
        self._paint_thing(pencil, row["thing"], middle, high)
        size = theme.card_title
        baseline = middle + CAP / 2 * size / pencil.unit
        if now:  # its letter is what is looked for on the paper: nothing is seen before it
            pencil.box(NAME_AT - 12, top + 8, wide * FIRST_ENDS - NAME_AT - 92, high - 16, 10,
                       theme.act)  # fmt: skip
        pencil.text(row["name"], NAME_AT, baseline, theme.name_card if now else size,
                    theme.sheet if now else theme.ink, bold=True,
                    room=wide * FIRST_ENDS - NAME_AT - 110)  # fmt: skip
        self._paint_values(pencil, row, (baseline, middle), wide)
        self._paint_stand(pencil, row, middle, wide)

    @staticmethod
    def _paint_thing(pencil: Pencil, thing: str, middle: float, high: float) -> None:
        tall = high * 0.72
        if thing == "jar":
            draw_jar(pencil, (24, middle - tall / 2, tall * 0.76, tall))
        else:
            draw_box(pencil, 20, middle - tall / 2, tall / 160)

    @staticmethod
    def _paint_values(
        pencil: Pencil, row: dict[str, Any], place: tuple[float, float], wide: float
    ) -> None:
        baseline, middle = place
        first, second = wide * FIRST_ENDS, wide * SECOND_ENDS
        if row["hidden"]:
            pencil.box(first - LID_WIDE, middle - 16, LID_WIDE, 32, 8, theme.lid)
            signs.small_eye(pencil, first - LID_WIDE / 2, middle, 15, theme.sheet)
        else:
            pencil.text(row["first"], first, baseline, theme.card_title, theme.ink, bold=True,
                        anchor="right", room=120)  # fmt: skip
        typing = row["state"] == "now"
        words = row["second"]
        pencil.text(words, second, baseline, theme.card_title, theme.ink, bold=True,
                    anchor="right", room=120)  # fmt: skip
        if typing:
            at = (second if row["typing_second"] else first) + 5
            pencil.box(at, middle - 17, 4, 34, 1, theme.act)

    @staticmethod
    def _paint_stand(pencil: Pencil, row: dict[str, Any], middle: float, wide: float) -> None:
        if row["words"]:
            baseline = middle + CAP / 2 * theme.label / pencil.unit
            pencil.text(row["words"], wide - 12, baseline, theme.label, theme.act, bold=True,
                        anchor="right", room=wide * (1 - SECOND_ENDS) - 24)  # fmt: skip
        elif row["state"] == "done":
            mark.badge(pencil, "tick", wide - 36, middle, 15)
