"""The container that is being measured, in its proportions, with the edge that is next alight."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.animation import Animation
from kivy.properties import ListProperty, NumericProperty, OptionProperty

from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets.container_shape import Figure, Line, dashes, figure
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.geometry import Point
from kiosk.ui.widgets.pencil import Pencil, text_width

SIDE_ROOM, TOP_ROOM, BOTTOM_ROOM = 46, 10, 40  # units for the tags around the container
BAR, BAR_EDGE = 7, 3  # width of a lit edge, and of its outline
DASH, GAP = 9, 7
LIGHT_S = 0.2
TAG_HIGH, TAG_PAD, TAG_OFF = 38, 11, 26
Tag = tuple[float, float, float, float]  # left, top, width, height in units
_TONES = {"top": "card", "light": "kraft", "dark": "hair"}


class ContainerArt(Drawing):
    """``sizes`` of the edges in cm (0 for none yet), ``states`` (to come, now, done), ``tags``."""

    follows: ClassVar[tuple[str, ...]] = ("shape", "sizes", "states", "tags", "lit")

    shape = OptionProperty("box", options=["box", "cylinder", "tapered", "tapered box"])
    sizes = ListProperty([0.0, 0.0, 0.0])
    states = ListProperty(["to come"] * 3)
    tags = ListProperty(["", "", ""])
    lit = NumericProperty(1.0)  # how far along its edge the light of the present one has come

    def __init__(self, **kwargs: Any) -> None:
        self._now: list[int] = []
        super().__init__(**kwargs)

    def on_states(self, *_: Any) -> None:
        """Light the present edge from its near end, when it is another one."""
        now = [place for place, state in enumerate(self.states) if state == "now"]
        if now == self._now:
            return
        self._now = now
        Animation.cancel_all(self, "lit")
        duration = theme.time(LIGHT_S)
        self.lit = 0.0 if duration else 1.0
        if duration:
            Animation(lit=1.0, duration=duration).start(self)

    def paint(self, pencil: Pencil) -> None:
        """Draw the faces, the places of the present edge, the lit edges and their tags."""
        if not len(self.sizes) == len(self.states) == len(self.tags):
            return  # between two settings of one view
        made = figure(self.shape, self.sizes)
        if min(self.wide - 2 * SIDE_ROOM, self.high - TOP_ROOM - BOTTOM_ROOM) <= 0:
            return  # not laid out yet
        self._fit(made)
        for outline, tone in made.faces:
            face = self._all(outline)
            pencil.fill(face, getattr(theme, _TONES[tone]))
            pencil.stroke(face, 3, theme.line, closed=True)
        if made.label:
            strip = self._all(made.label)
            pencil.fill(strip, theme.sheet)
            pencil.stroke(strip, 2, theme.line, closed=True)
        self._paint_places(pencil, made)
        # The present edge lies on top of the others.
        order = sorted(range(len(made.edges)), key=lambda edge: self.states[edge] == "now")
        for edge in order:
            self._paint_edge(pencil, self._all(made.edges[edge]), self.states[edge])
        taken: list[Tag] = []
        for edge in order:
            if self.tags[edge]:
                tag = self._tag(pencil, self._all(made.edges[edge]), edge, taken)
                taken.append(tag)
                self._paint_tag(pencil, tag, edge)

    def _fit(self, made: Figure) -> None:
        """Lay the figure into the middle, as large as it may be."""
        left, right = (pick(x for x, _ in made.points) for pick in (min, max))
        top, bottom = (pick(y for _, y in made.points) for pick in (min, max))
        room = self.wide - 2 * SIDE_ROOM, self.high - TOP_ROOM - BOTTOM_ROOM
        scale = min(room[0] / (right - left), room[1] / (bottom - top))
        self._placed = (
            scale,
            self.wide / 2 - scale * (left + right) / 2,
            TOP_ROOM + room[1] / 2 - scale * (top + bottom) / 2,
        )

    def _all(self, line: Line) -> list[Point]:
        scale, x, y = self._placed
        return [(x + px * scale, y + py * scale) for px, py in line]

    def _paint_places(self, pencil: Pencil, made: Figure) -> None:
        for places, state in zip(made.places, self.states, strict=True):
            if state != "now":
                continue
            for place in places:
                for piece in dashes(self._all(place), DASH, GAP):
                    pencil.stroke(piece, 3, theme.act)

    def _paint_edge(self, pencil: Pencil, line: list[Point], state: str) -> None:
        if state == "to come" or (state == "now" and not self.lit):
            return
        if state == "now":
            (ax, ay), (bx, by) = line[0], line[-1]
            line = [(ax, ay), (ax + (bx - ax) * self.lit, ay + (by - ay) * self.lit)]
        pencil.stroke(line, BAR + 2 * BAR_EDGE, theme.ink)
        pencil.stroke(line, BAR, theme.act if state == "now" else theme.lamp)

    def _tag(self, pencil: Pencil, line: list[Point], edge: int, taken: list[Tag]) -> Tag:
        """Where the tag of an edge lies: over those that are there already, never on them."""
        size = theme.step_name / pencil.unit
        words = text_width(self.tags[edge], round(theme.step_name), True) / pencil.unit
        wide, high = words + 2 * TAG_PAD, max(TAG_HIGH, 1.5 * size)
        x, y = self._beside(line, wide)
        x = min(max(x - wide / 2, 0), self.wide - wide)
        y = min(max(y - high / 2, 0), self.high - high)
        for other in sorted(taken, key=lambda tag: -tag[1]):
            if _meet((x, y, wide, high), other):
                y = other[1] - high - 2
        return x, y, wide, high

    def _paint_tag(self, pencil: Pencil, tag: Tag, edge: int) -> None:
        (x, y, wide, high), size = tag, theme.step_name
        words, (ground, ink) = self.tags[edge], _tag_colours(self.states[edge])
        pencil.box(x, y, wide, high, 8, ground)
        pencil.frame(x, y, wide, high, 8, 2.5, theme.ink)
        pencil.text(words, x + wide / 2, y + high / 2 + CAP / 2 * size / pencil.unit, size, ink,
                    bold=True, anchor="middle")  # fmt: skip

    def _beside(self, line: list[Point], wide: float) -> Point:
        """Where the middle of a tag lies: to the left of an upright edge, below any other."""
        (ax, ay), (bx, by) = line[0], line[-1]
        x, y = (ax + bx) / 2, (ay + by) / 2
        if abs(ax - bx) < 1:
            return x - wide / 2 - 12, y
        lean = 0 if abs(ay - by) < 1 else 24 if bx > ax else -24
        return x + lean, y + TAG_OFF


def _meet(one: Tag, other: Tag) -> bool:
    (ax, ay, aw, ah), (bx, by, bw, bh) = one, other
    return ax < bx + bw and bx < ax + aw and ay < by + bh and by < ay + ah


def _tag_colours(state: str) -> tuple[Colour, Colour]:
    return (theme.act, theme.card) if state == "now" else (theme.lamp, theme.ink)
