"""Buttons: the one main action of a screen, the second ones, a name card, an answered chip."""

from __future__ import annotations

from typing import Any, ClassVar

from kivy.animation import Animation
from kivy.properties import BooleanProperty, NumericProperty, OptionProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.palette import Colour
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark, signs
from kiosk.ui.widgets.cup_art import draw_cup
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil, text_width
from kiosk.ui.widgets.tappable import Tappable

kv_files.load(__file__)

DISC_SHARE = 0.34  # radius of the sign's disc, as share of the height of a main button
PRINTER_SHARE = 0.55  # the printer is a full block where other signs are strokes
WAIT_TURN_S = 1.2
FOLD = 13  # units of a name card that are folded back
NAME_MARGIN, BESIDE_CUP = 10, 84  # units: on either side of a name, and in all beside a cup
UNDER_SHARE = 0.36  # of a card's height, for a cup under its name


class MainButton(Tappable, Drawing):
    """The one main action: ``text`` and a sign on a disc; waiting and off do not take touches."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "sign", "state_name", "turn")

    text = StringProperty("")
    sign = OptionProperty(
        "arrow", options=["arrow", "tick", "square", "wait", "again", "printer", "off"]
    )
    state_name = OptionProperty("ready", options=["ready", "waiting", "off"])
    turn = NumericProperty(0.0)  # of the waiting sign, degrees

    _turning: Animation | None = None

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.fbind("parent", self._turn_or_rest)
        theme.bind(less_motion=self._turn_or_rest)
        self.on_state_name()

    def on_state_name(self, *_: Any) -> None:
        """Only a ready button takes touches; only a waiting one turns its sign."""
        self.tappable = self.state_name == "ready"
        self._turn_or_rest()

    def _turn_or_rest(self, *_: Any) -> None:
        turning = self.state_name == "waiting" and self.parent and not theme.less_motion
        if turning and self._turning is None:
            self.turn = 0
            self._turning = Animation(turn=360, duration=WAIT_TURN_S)
            self._turning.repeat = True
            self._turning.start(self)
        elif not turning and self._turning is not None:
            self._turning.cancel(self)
            self._turning = None

    def colours(self) -> tuple[Colour, Colour, Colour]:
        """Ground, outline and words in the present state."""
        if self.state_name == "waiting":
            return theme.act_t, theme.act, theme.act
        if self.state_name == "off":
            return theme.kraft, theme.line, theme.soft
        ground = theme.act_d if self.pressed else theme.act
        return ground, ground, theme.card

    def paint(self, pencil: Pencil) -> None:
        """Draw the button and its sign."""
        ground, edge, _ = self.colours()
        pencil.box(0, 0, self.wide, self.high, 22, ground)
        if edge != ground:
            width = 3 if self.state_name == "waiting" else 2
            pencil.frame(0, 0, self.wide, self.high, 22, width, edge)
        self._paint_disc(pencil, edge)

    def _paint_disc(self, pencil: Pencil, edge: Colour) -> None:
        radius = self.high * DISC_SHARE
        x, y = self.wide - self.high / 2, self.high / 2
        quiet = self.state_name != "ready"
        pencil.disc(x, y, radius, theme.act_t if self.pressed else theme.sheet)
        if quiet:
            pencil.ring(x, y, radius, 3 if self.state_name == "waiting" else 2, edge)
        colour = edge if quiet else theme.act
        if self.state_name == "waiting":
            signs.wait(pencil, x, y, radius, colour, self.turn)
        elif self.state_name == "off":
            signs.level(pencil, x, y, radius, colour)
        else:
            share = PRINTER_SHARE if self.sign == "printer" else 1
            mark.SIGNS[self.sign](pencil, x, y, radius * share, colour)


class SecondButton(Tappable, Drawing):
    """A quiet button with an outline; ``sign`` stands at its left, else the text is centred."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "sign", "disabled")

    text = StringProperty("")
    sign = OptionProperty(
        None, options=[None, "", "home", "back", "undo", "cover", "printer"], allownone=True
    )
    type_size = NumericProperty(theme.second_button)
    sign_place = NumericProperty(33.0)  # units from the left edge to the middle of the sign
    text_place = NumericProperty(58.0)  # and to the text beside it
    sign_half = NumericProperty(16.0)  # half the size of the sign

    def paint(self, pencil: Pencil) -> None:
        """Draw the outline and the sign."""
        ground = theme.hair if self.pressed else theme.kraft if self.disabled else theme.sheet
        edge = theme.line if self.disabled else theme.ink
        pencil.box(0, 0, self.wide, self.high, 16, ground)
        pencil.frame(0, 0, self.wide, self.high, 16, 2.5, edge)
        if self.sign:
            mark.SIGNS[self.sign](pencil, self.sign_place, self.high / 2, self.sign_half, edge)


class ChoiceCard(Tappable, Drawing):
    """A folded name card; a small cup on it says that this pair has a cup out.

    The cup stands beside the name, or under it where a word is too long for that.
    """

    follows: ClassVar[tuple[str, ...]] = ("pressed", "cup_number", "chosen", "stacked")

    text = StringProperty("")
    note = StringProperty("")  # a quieter line under the name
    cup_number = NumericProperty(None, allownone=True)
    chosen = BooleanProperty(False)
    stacked = BooleanProperty(False)
    type_size = NumericProperty(theme.name_card)

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        for name in ("text", "cup_number", "width"):
            self.fbind(name, self._place_cup)
        self._place_cup()

    def _place_cup(self, *_: Any) -> None:
        words = self.text.split() if self.cup_number is not None else []
        widest = max((text_width(word, theme.text_floor, True) for word in words), default=0)
        self.stacked = widest > self.name_wide(self.width, beside_cup=True)

    @staticmethod
    def name_wide(width: float, *, beside_cup: bool) -> float:
        """Pixels for a name on a card of that width."""
        return width - (BESIDE_CUP if beside_cup else 2 * NAME_MARGIN) * float(theme.u)

    def paint(self, pencil: Pencil) -> None:
        """Draw the fold, the front and the cup."""
        wide, high = self.wide, self.high
        fold = [(12, 1), (wide - 12, 1), (wide - 1, FOLD), (1, FOLD)]
        pencil.fill(fold, theme.hair)
        pencil.stroke(fold, 2, theme.line, closed=True)
        front = theme.act_t if self.chosen or self.pressed else theme.card
        pencil.box(0, FOLD, wide, high - FOLD, 6, front)
        edge, width = (theme.act, 4) if self.chosen else (theme.line, 2)
        pencil.frame(0, FOLD, wide, high - FOLD, 6, width, edge)
        if self.cup_number is not None:
            middle, deep = FOLD + (high - FOLD) / 2, high * UNDER_SHARE
            beside = (wide - 68, middle - 27, 60, 54)
            under = ((wide - deep * 1.2) / 2, high - deep, deep * 1.2, deep - 5)
            draw_cup(
                pencil, under if self.stacked else beside, theme.lamp_t, rim=5,
                number=str(int(self.cup_number)), size=self.type_size * 0.78,
            )  # fmt: skip


class Chip(Drawing):
    """An answer already given, with its tick; as wide as its text unless told otherwise."""

    text = StringProperty("")
    type_size = NumericProperty(theme.label)

    def natural_width(self, text: str, size: float, high: float, unit: float) -> float:
        """Width in pixels for ``text`` of ``size`` in a chip of ``high`` pixels."""
        return high + text_width(text, round(size)) + 20 * unit if text else 0.0

    def paint(self, pencil: Pencil) -> None:
        """Draw the pill and the tick."""
        pencil.box(0, 0, self.wide, self.high, self.high / 2, theme.kraft)
        pencil.frame(0, 0, self.wide, self.high, self.high / 2, 2, theme.line)
        mark.badge(pencil, "tick", self.high / 2 + 2, self.high / 2, self.high * 0.29)
