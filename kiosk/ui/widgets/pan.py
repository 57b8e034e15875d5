"""The pan: what the balance shows, how far it has come to rest, and when it is covered."""

from __future__ import annotations

from functools import cache
from math import cos, pi, sin, sqrt
from typing import Any, ClassVar

from kivy.animation import Animation
from kivy.properties import BooleanProperty, NumericProperty, OptionProperty, StringProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets import signs
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.geometry import Point
from kiosk.ui.widgets.pencil import Pencil, text_width

X, Y = 192, 238  # the middle of the pan on its own sheet
RIM, RING, DISC, CLASP = 182, 171, 159, 17
PIECES = 48  # of the striped rim of a simulated scale
RING_FOLLOWS_S, RING_OPENS_S, TICK_S, COVER_S = 0.12, 0.08, 0.16, 0.25

PHASES = (
    "empty", "not zero", "moving", "pouring", "settling", "stable", "captured", "hidden",
    "too heavy", "unplugged", "no mass",
)  # fmt: skip
CLOSED = ("stable", "captured")
NUMBERLESS = ("hidden", "too heavy", "unplugged", "no mass")


class Pan(Drawing):
    """The big circle with its state word; ``phase`` says which of its pictures is shown.

    While hidden nothing on it follows ``number``, ``progress`` or the small lines.
    ``hidden_text`` stands in the disc whenever no number does: hidden, too heavy, unplugged,
    no mass. ``progress`` 0 to 1 is the share of the ring that is closed while settling.
    """

    sheet_size = (384, 430)
    follows: ClassVar[tuple[str, ...]] = (
        "phase", "word", "label", "number", "unit", "unit_below", "line1", "line2",
        "simulated", "hidden_text", "closing", "ticking", "covering",
    )  # fmt: skip

    phase = OptionProperty("empty", options=PHASES)
    word = StringProperty("")
    label = StringProperty("")
    number = StringProperty("")
    unit = StringProperty("")
    unit_below = BooleanProperty(False)
    line1 = StringProperty("")
    line2 = StringProperty("")
    progress = NumericProperty(0.0)
    simulated = BooleanProperty(False)
    hidden_text = StringProperty("")

    # how far ring, tick and cover are on the way to where phase and progress want them
    closing = NumericProperty(0.0)
    ticking = NumericProperty(0.0)
    covering = NumericProperty(0.0)

    def on_phase(self, *_: Any) -> None:
        """Send ring, tick and cover on their way."""
        closed, hidden = self.phase in CLOSED, self.phase == "hidden"
        self._move("ticking", float(closed), TICK_S)
        self._move("covering", float(hidden), COVER_S)
        self.on_progress()

    def on_progress(self, *_: Any) -> None:
        """Let the ring follow."""
        share = 1.0 if self.phase in CLOSED else 0.0
        if self.phase in ("settling", "not zero"):
            share = min(1.0, max(0.0, self.progress))
        self._move("closing", share, RING_FOLLOWS_S if share > self.closing else RING_OPENS_S)

    def _move(self, name: str, goal: float, seconds: float) -> None:
        Animation.cancel_all(self, name)
        duration = theme.time(seconds)
        if not duration or (self.phase == "hidden" and name != "covering"):
            setattr(self, name, goal)
        elif getattr(self, name) != goal:
            Animation(**{name: goal}, duration=duration, transition="out_quad").start(self)

    def paint(self, pencil: Pencil) -> None:
        """Draw the pan from the ground up."""
        self._paint_word(pencil)
        self._paint_rim(pencil)
        self._paint_disc(pencil)
        self._paint_clasp(pencil)

    def _centred(self, pencil: Pencil, words: str, below: float, role: float, **look: Any) -> None:
        """One line whose capitals are centred ``below`` units under the middle."""
        size = self.type_size(role)
        look.setdefault("colour", theme.soft)
        baseline = Y + below + CAP / 2 * size / pencil.unit
        pencil.text(words, X, baseline, size, anchor="middle", room=_room(below, size), **look)

    def _paint_word(self, pencil: Pencil) -> None:
        size = self.type_size(theme.state_word)
        pencil.text(
            self.word, X, 18 + CAP / 2 * size / pencil.unit, size, theme.ink, bold=True,
            anchor="middle", room=self.wide,
        )  # fmt: skip

    def _paint_rim(self, pencil: Pencil) -> None:
        pencil.disc(X - 6, Y + 8, RIM, theme.shade)
        pencil.disc(X, Y, RIM, theme.steel)
        if self.simulated:
            pencil.ring(X, Y, RIM + 4.5, 11, theme.hazard)
            pencil.fills(_dark_pieces(), theme.ink)
            pencil.ring(X, Y, RIM + 9.5, 1.2, theme.ink)
            pencil.ring(X, Y, RIM - 0.8, 1.2, theme.ink)
        else:
            pencil.ring(X, Y, RIM, 2, theme.line)
        pencil.ring(X, Y, RING, 9, theme.hair)
        pencil.ring(X, Y, RING, 9, theme.ink, 0, 360 * self.closing)

    def _paint_disc(self, pencil: Pencil) -> None:
        unplugged = self.phase == "unplugged"
        pencil.disc(X, Y, DISC, theme.kraft if unplugged else theme.card)
        pencil.ring(X, Y, DISC, 2, theme.line if unplugged else theme.hair)
        if unplugged:
            self._paint_unplugged(pencil)
        elif self.phase in NUMBERLESS:
            if self.phase != "hidden":
                self._centred(pencil, self.hidden_text, 0, theme.name_card, bold=True,
                              colour=theme.ink)  # fmt: skip
        else:
            self._paint_reading(pencil)
        if self.covering:
            self._paint_cover(pencil)

    def _paint_unplugged(self, pencil: Pencil) -> None:
        for way in (-1, 1):
            pencil.stroke([(X + way * 50, Y - 24), (X + way * 96, Y - 24)], 8, theme.ink)
            signs.plug_half(pencil, X + way * 22, Y - 24, 36, 28, way, theme.ink)
        self._centred(pencil, self.hidden_text, 53, theme.name_card, bold=True, colour=theme.ink)

    def _paint_cover(self, pencil: Pencil) -> None:
        share = self.covering
        pencil.disc(X, Y, DISC * share, theme.lid)
        pencil.ring(X, Y, DISC * share, 2, theme.ink)
        if share < 1:
            return
        pencil.ring(X, Y, 145, 2, theme.lid_ring)
        signs.eye(pencil, X, Y, 86, theme.sheet)
        self._centred(pencil, self.hidden_text, 89, theme.state_word, bold=True, colour=theme.sheet)

    def _paint_reading(self, pencil: Pencil) -> None:
        rise = 26 if self.unit_below else 14 if self.line1 else 0
        baseline = 12 if self.unit_below else 34 - rise
        if self.label:
            self._centred(pencil, self.label, -72 - rise, theme.pan_label)
        self._paint_number(pencil, baseline)
        first = 93 if self.unit_below else 66
        if self.unit_below:
            self._centred(pencil, self.unit, 46, theme.second_line, colour=theme.ink)
        if self.line1:
            self._centred(pencil, self.line1, first, theme.pan_line)
        if self.line2:
            self._centred(pencil, self.line2, first + 27, theme.pan_line)

    def _paint_number(self, pencil: Pencil, baseline: float) -> None:
        unit = "" if self.unit_below else self.unit
        size = self.type_size(theme.pan_reading)
        room = _room(baseline - 30, size) * pencil.unit
        needed = _reading_width(self.number, unit, size)
        if needed > room:
            size = int(size * room / needed)
        start = X - _reading_width(self.number, unit, size) / pencil.unit / 2
        width = pencil.text(self.number, start, Y + baseline, size, theme.ink, bold=True)
        if unit:
            gap = _gap(size) / pencil.unit
            pencil.text(unit, start + width + gap, Y + baseline, size / 2, theme.ink)

    def _paint_clasp(self, pencil: Pencil) -> None:
        y = Y - RING
        pencil.disc(X, y, CLASP + 1, theme.ink)
        if self.ticking < 1:
            pencil.disc(X, y, (CLASP - 2) * (1 - self.ticking), theme.steel)
        if self.ticking > 0:
            signs.tick(pencil, X, y, CLASP * self.ticking, theme.sheet)


@cache
def _dark_pieces() -> tuple[tuple[Point, ...], ...]:
    """Every second piece of the striped rim, as a quad from its inner to its outer edge."""
    low, high, turn = RIM - 1, RIM + 10, 2 * pi / PIECES
    return tuple(
        tuple(
            (X + reach * sin(turn * at), Y - reach * cos(turn * at))
            for reach, at in ((low, piece), (high, piece), (high, piece + 1), (low, piece + 1))
        )
        for piece in range(1, PIECES, 2)
    )


def _room(below: float, size: float) -> float:
    """Width in units of the disc where a line stands ``below`` its middle."""
    reach = min(abs(below) + size / theme.u / 3, DISC - 20)
    return 2 * sqrt(DISC**2 - reach**2) - 24


def _gap(size: float) -> float:
    """Pixels between a number of ``size`` and its unit: one space of the unit's size."""
    return size / 2 * 0.3


def _reading_width(number: str, unit: str, size: float) -> float:
    width = text_width(number, round(size), True)
    return width + (_gap(size) + text_width(unit, round(size / 2)) if unit else 0)
