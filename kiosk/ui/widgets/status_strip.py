"""The strip along the top: is there a scale, what is going on, the clock or the coach's lock."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, ListProperty, OptionProperty, StringProperty

from kiosk.ui.theme import theme
from kiosk.ui.widgets import signs
from kiosk.ui.widgets.cup_art import CAP
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil, text_width
from kiosk.ui.widgets.sheet import stripes

GAP = 12
LEAST_ROOM = 80  # units; words with less are left out rather than set too small to read


class StatusStrip(Drawing):
    """``words`` tell the state of the scale first, then team or job.

    Where readings are ``typed`` there is no plug, and the first words stand on a plate.
    With a simulated scale the strip is striped and ``plate_text`` says so; every other text then
    stands on a plate of its own. ``lock`` is "" or "coach"; ``right_text`` goes with it, or
    replaces the ``clock_text``.
    """

    follows: ClassVar[tuple[str, ...]] = (
        "connected", "words", "simulated", "typed", "plate_text", "right_text", "lock",
        "clock_text",
    )  # fmt: skip

    connected = BooleanProperty(True)
    words = ListProperty([])
    simulated = BooleanProperty(False)
    typed = BooleanProperty(False)
    plate_text = StringProperty("")
    right_text = StringProperty("")
    lock = OptionProperty("", options=["", "coach"])
    clock_text = StringProperty("")

    def paint(self, pencil: Pencil) -> None:
        """Draw the strip and its words."""
        pencil.box(0, 0, self.wide, self.high, 0, theme.strip)
        if self.simulated:
            self._paint_simulated(pencil)
        else:
            words = list(self.words)
            start = self._paint_typed(pencil, words) if self.typed else self._paint_plug(pencil)
            end = self._paint_right(pencil, self.wide - 16)
            self._paint_words(pencil, start, end - 20, words)

    def _baseline(self, size: float) -> float:
        return self.high / 2 + CAP / 2 * size / theme.u

    def _paint_plug(self, pencil: Pencil) -> float:
        middle = self.high / 2
        if self.connected:
            pencil.stroke([(0, middle), (18, middle)], 3, theme.sheet)
            signs.plug_half(pencil, 26.3, middle, 10.3, 8, -1, theme.sheet)
            signs.plug_half(pencil, 27.7, middle, 10.3, 8, 1, theme.sheet)
            return 48
        signs.plug_half(pencil, 26.5, middle, 10.5, 8, -1, theme.sheet)
        signs.plug_half(pencil, 36.5, middle, 10.5, 8, 1, theme.sheet)
        return 56

    def _paint_typed(self, pencil: Pencil, words: list[str]) -> float:
        """Set the first of the words on its plate."""
        size, typed = theme.label, words.pop(0)
        plate = text_width(typed, size, True) / theme.u + 28
        pencil.box(GAP, 4, plate, self.high - 8, 4, theme.lamp)
        pencil.text(typed, GAP + 14, self._baseline(size), size, theme.ink, bold=True)
        return GAP + plate

    def _paint_words(self, pencil: Pencil, x: float, end: float, told: list[str]) -> None:
        size = theme.label
        for place, words in enumerate(told):
            if place or self.typed:
                pencil.disc(x + 16, self.high / 2, 3, theme.lamp)
                x += 32
            if end - x < LEAST_ROOM:
                return
            bold = not place and not self.typed
            x += pencil.text(
                words, x, self._baseline(size), size, theme.sheet, bold=bold, room=end - x
            )

    def _paint_right(self, pencil: Pencil, right: float) -> float:
        size = theme.label if self.lock else theme.step_name
        words = self.right_text or ("" if self.lock else self.clock_text)
        if words:
            right -= pencil.text(
                words, right, self._baseline(size), size, theme.sheet, bold=True, anchor="right"
            )
        if self.lock:
            signs.open_lock(pencil, right - 22, self.high / 2 + 1, 13, theme.sheet)
            right -= 40
        elif self.clock_text and not self.right_text:
            signs.clock(pencil, right - 21, self.high / 2, 12.5, theme.sheet)
            right -= 40
        return right

    def _paint_simulated(self, pencil: Pencil) -> None:
        pencil.box(0, 0, self.wide, self.high, 0, theme.hazard)
        pencil.fills(stripes(self.wide, self.high, 18, rising=False), theme.ink)
        size, baseline = theme.label, self._baseline(theme.label)
        plate = text_width(self.plate_text, size, True) / theme.u
        pencil.box(GAP, 4, plate + 36, self.high - 8, 4, theme.hazard)
        pencil.text(self.plate_text, GAP + 18, baseline, size, theme.ink, bold=True)
        end = self.wide - GAP
        notices = list(self.words[1:] if self.connected else self.words)
        for words in reversed([*notices, self.right_text or self.clock_text]):
            if words:
                end = self._plate(pencil, words, end, plate + 60)

    def _plate(self, pencil: Pencil, words: str, end: float, start: float) -> float:
        size, coach = theme.label, self.lock and words == self.right_text
        wide = text_width(words, size) / theme.u + 28 + (30 if coach else 0)
        wide = min(wide, end - start)
        if wide < 60:
            return end
        pencil.box(end - wide, 4, wide, self.high - 8, 4, theme.strip)
        pencil.text(
            words, end - 14, self._baseline(size), size, theme.sheet, anchor="right",
            room=wide - 28,
        )  # fmt: skip
        if coach:
            signs.open_lock(pencil, end - wide + 22, self.high / 2 + 1, 11, theme.sheet)
        return end - wide - 8
