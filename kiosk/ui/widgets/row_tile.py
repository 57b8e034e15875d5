"""One row to tap: a sign, what it is about, a quieter note, and a value at its right."""

from __future__ import annotations

from typing import ClassVar

from kivy.properties import BooleanProperty, OptionProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.theme import theme
from kiosk.ui.widgets import mark
from kiosk.ui.widgets.drawing import Drawing
from kiosk.ui.widgets.pencil import Pencil
from kiosk.ui.widgets.tappable import Tappable
from kiosk.ui.widgets.verdict_mark import draw_verdict

kv_files.load(__file__)

SIGN_AT, SIGN_RADIUS = 34, 15
VERDICTS = ("fine", "not fine", "cannot tell")
GAP = 6  # units of a row that are left free below it


class RowTile(Tappable, Drawing):
    """Follows its properties; ``look`` is plain, done or now."""

    follows: ClassVar[tuple[str, ...]] = ("pressed", "sign", "look", "tappable")

    text = StringProperty("")
    note = StringProperty("")
    value = StringProperty("")
    sign = StringProperty("")
    look = OptionProperty("plain", options=["plain", "done", "now"])
    roomy = BooleanProperty(True)  # a row over the whole width

    def paint(self, pencil: Pencil) -> None:
        """Draw the row and its sign; one that cannot be tapped has a quiet edge."""
        wide, high = self.wide, self.high - GAP
        ground = theme.kraft if self.look == "done" else theme.card
        pencil.box(0, 0, wide, high, 14, theme.act_t if self.pressed else ground)
        edge, width = (theme.act, 4) if self.look == "now" else (theme.line, 2)
        if self.tappable or self.look == "now":
            pencil.frame(0, 0, wide, high, 14, width, edge)
        else:
            pencil.frame(0, 0, wide, high, 14, 2, theme.hair)
        if self.sign in VERDICTS:
            draw_verdict(pencil, self.sign, SIGN_AT, high / 2, SIGN_RADIUS)
        elif self.sign == "to come":
            pencil.ring(SIGN_AT, high / 2, SIGN_RADIUS - 1.5, 2.5, theme.line)
        elif self.sign:
            mark.SIGNS[self.sign](pencil, SIGN_AT, high / 2, SIGN_RADIUS, theme.ink)
