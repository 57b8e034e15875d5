"""The last tries of a pair: over is up, under is down, the newest in a ring."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import ListProperty, StringProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil, text_width

PLACES = 5  # fewer tries keep to the right, where the newest always stands
ON_TARGET = 2.0  # per cent
LEAST_SCALE = 10.0  # per cent: small errors are not blown up to fill the plot
MARK, RING = 8, 14
WORDS_LEFT, WORDS_RIGHT = 92, 112  # units beside the plot


class TriesPlot(Drawing):
    """``errors`` are signed per cent of the true value, oldest first.

    ``over_text``, ``zero_text`` and ``under_text`` name the axis at the left, ``tries_text``
    tells at the right how many tries these are.
    """

    follows: ClassVar[tuple[str, ...]] = (
        "errors", "over_text", "under_text", "zero_text", "oldest_text", "newest_text",
        "tries_text",
    )  # fmt: skip

    errors = ListProperty([])
    over_text = StringProperty("")
    under_text = StringProperty("")
    zero_text = StringProperty("")
    oldest_text = StringProperty("")
    newest_text = StringProperty("")
    tries_text = StringProperty("")

    def bounds(self) -> tuple[float, float, float]:
        """Left and right edge of the plot and its height, in units."""
        right = self.wide - (WORDS_RIGHT if self.tries_text else 0)
        below = theme.label * 1.25 / theme.u if self.newest_text else 0
        return WORDS_LEFT, right, self.high - below

    def across(self, index: int) -> float:
        """Where a try stands."""
        left, right, _ = self.bounds()
        places = max(PLACES, len(self.errors))
        return left + (right - left) * (places - len(self.errors) + index + 0.5) / places

    def level(self, error: float) -> float:
        """The height of an error, downwards."""
        _, _, high = self.bounds()
        reach = max(LEAST_SCALE, *(abs(each) for each in self.errors), 0.0)
        return high / 2 - error / reach * (high / 2 - RING)

    def paint(self, pencil: Pencil) -> None:
        """Draw the ground, the words and the tries."""
        left, right, high = self.bounds()
        pencil.box(left, 0, right - left, high, 8, theme.card)
        band = max(2.0, abs(self.level(ON_TARGET) - high / 2))
        pencil.box(left, high / 2 - band, right - left, 2 * band, 0, theme.on_t)
        pencil.stroke([(left, high / 2), (right, high / 2)], 3, theme.ink)
        self._paint_words(pencil)
        for index, error in enumerate(self.errors):
            self._paint_try(pencil, index, float(error))

    def _paint_try(self, pencil: Pencil, index: int, error: float) -> None:
        x, y, zero = self.across(index), self.level(error), self.level(0)
        side = "on target" if abs(error) <= ON_TARGET else "over" if error > 0 else "under"
        colour, away = mark.DATA_COLOURS[side], 1 if error < 0 else -1
        if side != "on target" and abs(y - zero) > MARK:
            pencil.stroke([(x, zero + away * 3), (x, y - away * MARK)], 5, colour)
        if index == len(self.errors) - 1:
            pencil.disc(x, y, RING + 1.5, theme.ink)
            pencil.disc(x, y, RING - 1.5, theme.card)
            mark.SIGNS[side](pencil, x, y, MARK * 0.9, colour)
        else:
            mark.SIGNS[side](pencil, x, y, MARK + 2, theme.card)
            mark.SIGNS[side](pencil, x, y, MARK, colour)

    def _paint_words(self, pencil: Pencil) -> None:
        left, right, high = self.bounds()
        size, unit = theme.label, pencil.unit
        below = CAP / 2 * size / unit
        axis = (
            (self.over_text, max(high * 0.14, below + 1), theme.over_x, True),
            (self.zero_text, high / 2, theme.ink, False),
            (self.under_text, min(high * 0.86, high - below - 1), theme.under_x, True),
        )
        for words, middle, colour, bold in axis:
            pencil.text(words, left - 10, middle + below, size if bold else theme.axis, colour,
                        bold=bold, anchor="right", room=left - 10)  # fmt: skip
        for line, words in enumerate(self.tries_text.split("\n")):
            pencil.text(words, right + 14, high * 0.43 + line * size * 1.3 / unit, size,
                        theme.soft, room=WORDS_RIGHT - 14)  # fmt: skip
        self._paint_ages(pencil, high + size / unit)

    def _paint_ages(self, pencil: Pencil, baseline: float) -> None:
        if not self.errors:
            return
        _, right, _ = self.bounds()
        size = theme.label
        newest = pencil.text(
            self.newest_text, right, baseline, size, theme.ink, bold=True, anchor="right"
        )
        start = self.across(0) - 30
        room = right - newest - 20 - start
        if len(self.errors) > 1 and text_width(self.oldest_text, size) / pencil.unit <= room:
            pencil.text(self.oldest_text, start, baseline, size, theme.soft)
