"""The tent: the scoring rule as a drawing, with the estimate hanging on its slope."""

from __future__ import annotations

from decimal import Decimal
from typing import Any, ClassVar

from kivy.animation import Animation
from kivy.properties import BooleanProperty, NumericProperty, OptionProperty, StringProperty

from kiosk.texts.numbers import number
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark, signs
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tent_shape import TentShape
from kiosk.ui.widgets.tent_words import (
    paint_axis_words,
    paint_band_words,
    paint_cost_words,
    paint_error,
    paint_points,
)

CLIMB_S = 0.9
SIDE, TOP, AXIS_ROOM = 14, 8, 36  # units around the tent: beside it, over it, for the axis words
MARKER, MARKER_SHARE = 18, 0.155  # largest radius; and as share of the height of a small tent


class ScoreTent(Drawing):
    """0 at the left peg, ``true_value`` under the peak, double at the right peg.

    ``estimate`` None shows no marker. With a ``band`` (half width as share of the true value)
    the peak is a flat top, the real number somewhere under it. ``compact`` leaves out all words,
    ``covered`` those along the base, which tell the true value.
    """

    follows: ClassVar[tuple[str, ...]] = (
        "true_value", "estimate", "side", "score_text", "of_text", "error_text", "side_text",
        "left_text", "peak_text", "right_text", "yours_text", "band", "band_text",
        "band_where_text", "cost_text", "cost_where_text", "covered", "compact", "climbed",
    )  # fmt: skip

    true_value = NumericProperty(100.0)
    estimate = NumericProperty(None, allownone=True)
    side = OptionProperty("on target", options=["under", "over", "on target"])
    score_text = StringProperty("")
    of_text = StringProperty("")
    error_text = StringProperty("")  # the number, a space, its unit
    side_text = StringProperty("")
    left_text = StringProperty("")
    peak_text = StringProperty("")
    right_text = StringProperty("")
    yours_text = StringProperty("")
    band = NumericProperty(0.0)
    band_text = StringProperty("")
    band_where_text = StringProperty("")
    cost_text = StringProperty("")
    cost_where_text = StringProperty("")
    covered = BooleanProperty(False)
    compact = BooleanProperty(False)
    climbed = NumericProperty(1.0)  # how far the marker has come on its way from the left peg

    def climb(self) -> None:
        """Let the marker climb from the left peg to its place, slowing down."""
        Animation.cancel_all(self, "climbed")
        duration = theme.time(CLIMB_S)
        self.climbed = 0.0 if duration else 1.0
        if duration:
            Animation(climbed=1.0, duration=duration, transition="out_cubic").start(self)

    def shape(self) -> TentShape:
        """Where the tent stands in this widget."""
        if self.compact:
            side, top, below = 10.0, 13.0, 14.0
        else:
            side, top, below = SIDE, TOP, AXIS_ROOM
        base = self.high - below
        return TentShape(side, base, self.wide - 2 * side, base - top)

    def marker_radius(self) -> float:
        """Radius of the marker's disc in units."""
        return max(6.4, min(MARKER, self.shape().high * MARKER_SHARE))

    def share(self) -> float | None:
        """Where the marker hangs now, as share of the true value."""
        if self.estimate is None or not self.true_value:
            return None
        return float(self.estimate / self.true_value * self.climbed)

    def paint(self, pencil: Pencil) -> None:
        """Draw tent, marker and words."""
        tent = self.shape()
        self._paint_cloth(pencil, tent)
        if self.band:
            self._paint_band(pencil, tent)
        self._paint_frame(pencil, tent)
        share = self.share()
        if share is not None:
            self._paint_marker(pencil, tent, share)
        elif self.band:
            self._paint_peak_mark(pencil, tent)
        if not self.compact:
            self._paint_words(pencil, tent)

    def _paint_cloth(self, pencil: Pencil, tent: TentShape) -> None:
        peak, foot = tent.at(1), (tent.x(1), tent.base)
        pencil.fill([tent.at(0), peak, foot], theme.under_t)
        pencil.fill([tent.at(2), peak, foot], theme.over_t)
        for points in (20, 40, 60, 80):
            pencil.stroke(tent.seam(points, rising=True), 1.5, theme.under_seam)
            pencil.stroke(tent.seam(points, rising=False), 1.5, theme.over_seam)

    def _paint_band(self, pencil: Pencil, tent: TentShape) -> None:
        low, high = tent.at(1 - self.band), tent.at(1 + self.band)
        feet = (high[0], tent.base), (low[0], tent.base)
        pencil.fill([low, high, *feet], theme.on_t)
        pencil.stroke([low, feet[1]], 2.5, theme.on)
        pencil.stroke([high, feet[0]], 2.5, theme.on)

    def _paint_frame(self, pencil: Pencil, tent: TentShape) -> None:
        slope = 5 if tent.high > 100 else 4
        if self.band:
            ridge = [tent.at(0), tent.at(1 - self.band), tent.at(1 + self.band), tent.at(2)]
        else:
            ridge = [tent.at(0), tent.at(1), tent.at(2)]
            pencil.stroke([tent.at(1), (tent.x(1), tent.base)], 3, theme.ink)
        ticks = [0.1 * step for step in range(1, 20)]
        for share in ticks:
            long = round(share * 10) % 5 == 0
            foot = (tent.x(share), tent.base + (9 if long else 6))
            colour = theme.ink if long else theme.line
            pencil.stroke([(foot[0], tent.base), foot], 2, colour)
        pencil.stroke(ridge, slope, theme.ink)
        pencil.stroke([(tent.x(0) - 10, tent.base), (tent.x(2) + 10, tent.base)], 3, theme.ink)
        for share, way in ((0.0, 1), (2.0, -1)):
            x = tent.x(share)
            pencil.stroke(
                [(x - way * 6.5, tent.base - 11), (x + way * 6.5, tent.base + 11)], slope, theme.ink
            )

    def _paint_marker(self, pencil: Pencil, tent: TentShape, share: float) -> None:
        x, y = tent.at(share)
        side = self.side if self.climbed >= 1 else _side_of(share, self.side)
        colour = mark.DATA_COLOURS[side]
        radius = self.marker_radius()
        if y + radius < tent.base:
            pencil.stroke([(x, y), (x, tent.base - 3)], 5 if tent.high > 40 else 3, colour)
        pencil.disc(x, y, radius + 1.5, theme.ink)
        pencil.disc(x, y, radius - 1.5, theme.card)
        mark.SIGNS[side](pencil, x, y, radius * 0.58, colour)

    def _paint_peak_mark(self, pencil: Pencil, tent: TentShape) -> None:
        x, y = tent.at(1)
        signs.on_target(pencil, x, y, 13, theme.sheet)
        signs.on_target(pencil, x, y, 10, theme.on)

    def _paint_words(self, pencil: Pencil, tent: TentShape) -> None:
        colour = mark.DATA_WORD_COLOURS[self.side]
        marked = None if self.estimate is None else tent.x(self.estimate / (self.true_value or 1))
        if not self.covered:
            paint_axis_words(
                pencil, tent, marked, colour, left=self.left_text, peak=self.peak_text,
                right=self.right_text, yours=self.yours_text,
            )  # fmt: skip
        if self.band:
            paint_cost_words(pencil, tent, (self.cost_text, self.cost_where_text))
            paint_band_words(pencil, tent, self.band, (self.band_text, self.band_where_text))
        else:
            paint_points(pencil, tent, self._points_now(), self.of_text)
            paint_error(pencil, tent, self.side, self.error_text, self.side_text)

    def _points_now(self) -> str:
        """The score, counting along while the marker climbs."""
        share = self.share()
        if self.climbed >= 1 or share is None or not self.score_text:
            return str(self.score_text)
        decimals = len(self.score_text.partition(".")[2])
        return number(Decimal(repr(self.shape().points(share))), decimals)

    def on_estimate(self, *_: Any) -> None:
        """A new estimate stands where it belongs until ``climb`` is called."""
        Animation.cancel_all(self, "climbed")
        self.climbed = 1.0


def _side_of(share: float, final: str) -> str:
    if final == "on target":
        return "under"
    return "under" if share < 1 else final
