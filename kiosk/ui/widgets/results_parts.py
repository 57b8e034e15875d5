"""Parts around the table of results: the plate, the switch, what the signs mean, a team's tents."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, ListProperty, StringProperty

from kiosk.ui.presenters.team_result_views import TeamAnswerView
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil, text_width
from kiosk.ui.widgets.small_tent import draw_small_tent
from kiosk.ui.widgets.tappable import Tappable
from kiosk.ui.widgets.tent_shape import TentShape

COLUMNS = 4  # of a team's answers


class Plate(Drawing):
    """A word in a pill."""

    follows: ClassVar[tuple[str, ...]] = ("words",)
    words = StringProperty("")

    def natural_width(self, words: str, size: float, unit: float) -> float:
        """Pixels that the pill needs."""
        return text_width(words, round(size), True) + 32 * unit if words else 0.0

    def paint(self, pencil: Pencil) -> None:
        """Draw it."""
        if not self.words:
            return
        pencil.box(0, 0, self.wide, self.high, self.high / 2, theme.lamp_t)
        pencil.frame(0, 0, self.wide, self.high, self.high / 2, 2.5, theme.ink)
        down = CAP / 2 * theme.label / pencil.unit
        pencil.text(self.words, self.wide / 2, self.high / 2 + down, theme.label, theme.ink,
                    bold=True, anchor="middle", room=self.wide - 20)  # fmt: skip


class TwoWay(Tappable, Drawing):
    """A switch between two words; a tap on it turns it over."""

    follows: ClassVar[tuple[str, ...]] = ("words", "first", "pressed")
    words = ListProperty(["", ""])
    first = BooleanProperty(True)

    @property
    def text(self) -> str:
        """What it would be turned to."""
        return str(self.words[1 if self.first else 0])

    def paint(self, pencil: Pencil) -> None:
        """Draw both halves, the present one dark."""
        half = self.wide / 2
        pencil.box(0, 0, self.wide, self.high, 16, theme.hair if self.pressed else theme.sheet)
        pencil.box(0 if self.first else half, 0, half, self.high, 16, theme.ink)
        pencil.frame(0, 0, self.wide, self.high, 16, 2.5, theme.ink)
        down = CAP / 2 * theme.body / pencil.unit
        for place, words in enumerate(self.words):
            present = (place == 0) is self.first
            pencil.text(words, half * (place + 0.5), self.high / 2 + down, theme.body,
                        theme.sheet if present else theme.ink, bold=True, anchor="middle",
                        room=half - 12)  # fmt: skip


class SidesLegend(Drawing):
    """Under, on target, over: the marks with their words, from the right."""

    follows: ClassVar[tuple[str, ...]] = ("words",)
    words = ListProperty(["", "", ""])

    def paint(self, pencil: Pencil) -> None:
        """Draw them."""
        if not any(self.words):
            return
        x, down = self.wide, CAP / 2 * theme.label / pencil.unit
        for side, words in zip(("over", "on target", "under"), reversed(self.words), strict=True):
            x -= pencil.text(words, x, self.high / 2 + down, theme.label,
                             mark.DATA_WORD_COLOURS[side], bold=True, anchor="right")  # fmt: skip
            mark.SIGNS[side](pencil, x - 15, self.high / 2, 8, mark.DATA_COLOURS[side])
            x -= 44


class SignsLegend(Drawing):
    """What the signs of a table mean, one below the other."""

    follows: ClassVar[tuple[str, ...]] = ("signs",)
    signs = ListProperty([])

    def paint(self, pencil: Pencil) -> None:
        """Draw them."""
        size = theme.label
        down = CAP / 2 * size / pencil.unit
        line = min(1.35 * size / pencil.unit, self.high / max(1, len(self.signs)))
        y = self.high / 2 - line * (len(self.signs) - 1) / 2
        for sign, words in self.signs:
            if sign == "place":
                pencil.disc(14, y, 6, theme.ink)
            elif sign == "moves":
                pencil.box(1, y - 8, 26, 16, 8, theme.ink)
                pencil.box(3, y - 6, 22, 12, 6, theme.lamp)
            else:
                pencil.text(sign, 14, y + down, size, theme.ink, bold=True, anchor="middle")
            pencil.text(words, 34, y + down, size, theme.ink, room=self.wide - 34)
            y += line


class TeamAnswers(Drawing):
    """A team's answers, four in a row, each on its tent."""

    follows: ClassVar[tuple[str, ...]] = ("answers",)
    answers = ListProperty([])

    def paint(self, pencil: Pencil) -> None:
        """Draw the cells."""
        wide, high = self.wide / COLUMNS, self.high / 2
        for number, answer in enumerate(self.answers):
            row, column = divmod(number, COLUMNS)
            self._paint_answer(pencil, answer, (column * wide, row * high), (wide - 14, high - 8))

    def _paint_answer(
        self,
        pencil: Pencil,
        answer: TeamAnswerView,
        corner: tuple[float, float],
        size: tuple[float, float],
    ) -> None:
        (x, y), (wide, high) = corner, size
        pencil.box(x, y, wide, high, 14, theme.card)
        pencil.frame(x, y, wide, high, 14, 2, theme.hair)
        unit, left, right = pencil.unit, x + 12, x + wide - 12
        first = y + 8 + theme.body * 0.86 / unit
        points = answer.mark.points + ("*" if answer.mark.corrected else "")
        used = pencil.text(points, right, first, theme.body, theme.ink, bold=True, anchor="right")
        pencil.text(answer.name, left, first, theme.body, theme.ink, bold=True,
                    room=wide - 34 - used)  # fmt: skip
        below = y + high - 10
        # What it is counted in goes before anything becomes hard to read.
        whole = f"{answer.said} {answer.unit}"
        fits = text_width(whole, theme.text_floor) <= (wide - 24) * unit
        pencil.text(whole if fits else answer.said, left, below, theme.label, theme.soft,
                    room=wide - 24)  # fmt: skip
        above = below - 1.25 * theme.label / unit
        self._paint_off(pencil, answer, left, above, wide - 24)
        base = above - 1.1 * theme.label / unit
        top = first + 12
        tent = TentShape(left + 6, base, wide - 36, max(10.0, base - top - 4))
        draw_small_tent(pencil, tent, answer.mark, marker=9)

    def _paint_off(
        self, pencil: Pencil, answer: TeamAnswerView, left: float, baseline: float, room: float
    ) -> None:
        side = answer.mark.side
        if not side:
            return
        half = CAP / 2 * theme.label / pencil.unit
        mark.SIGNS[side](pencil, left + 8, baseline - half, 8, mark.DATA_COLOURS[side])
        words = f"{answer.off} {answer.side_text}".strip()
        pencil.text(words, left + 24, baseline, theme.label, mark.DATA_WORD_COLOURS[side],
                    bold=True, room=room - 24)  # fmt: skip
