"""The look in one object: colours by name, sizes by role, one unit that follows the window.

kv reaches it by ``#:import theme kiosk.ui.theme.theme`` and follows ``theme.u``, the pixels of
one look unit. The look is drawn for 1024 x 600 units with the origin at the top left.
"""

from __future__ import annotations

from math import hypot
from pathlib import Path

import kivy
from kivy.event import EventDispatcher
from kivy.properties import BooleanProperty, NumericProperty

from kiosk.ui.palette import Palette

LOOK_WIDTH, LOOK_HEIGHT = 1024, 600
MM_PER_INCH = 25.4
LARGE_PANEL_INCHES = 10
TAP_MM_SMALL_PANEL, TAP_MM_LARGE_PANEL = 9, 12
TAP_UNITS, TAP_FLOOR_PX = 64, 56
ACTION_UNITS, ACTION_FLOOR_PX = 88, 72
STRIP_UNITS, STRIP_FLOOR_PX = 40, 36

# role: (look units, floor in pixels on a window smaller than the look)
TYPE_SIZES = {
    "wall": (300, 234),
    "wall_sentence": (88, 69),
    "pan_reading": (88, 70),
    "big_cup": (84, 66),
    "score": (60, 48),
    "volume": (50, 40),
    "question": (42, 33),
    "pad_digit": (40, 31),
    "cup_number": (38, 29),
    "row_cup_number": (30, 25),
    "instruction": (36, 28),
    "main_button": (34, 27),
    "name_card": (33, 25),
    "second_line": (30, 23),
    "card_title": (28, 22),
    "state_word": (28, 23),
    "pan_label": (26, 21),
    "must": (26, 21),
    "body": (24, 19),
    "second_button": (24, 20),
    "pan_line": (22, 18),
    "step_name": (22, 19),
    "label": (20, 18),
    "axis": (19, 18),
}

_FONTS = Path(kivy.kivy_data_dir) / "fonts"


class Theme(Palette, EventDispatcher):
    """Sizes in pixels for the present window; ``fit`` sets them all, kv follows."""

    u = NumericProperty(1.0)
    tap = NumericProperty(TAP_UNITS)
    action = NumericProperty(ACTION_UNITS)
    strip_high = NumericProperty(STRIP_UNITS)
    less_motion = BooleanProperty(False)

    wall = NumericProperty(0)
    wall_sentence = NumericProperty(0)
    pan_reading = NumericProperty(0)
    big_cup = NumericProperty(0)
    score = NumericProperty(0)
    volume = NumericProperty(0)
    question = NumericProperty(0)
    pad_digit = NumericProperty(0)
    cup_number = NumericProperty(0)
    row_cup_number = NumericProperty(0)
    instruction = NumericProperty(0)
    main_button = NumericProperty(0)
    name_card = NumericProperty(0)
    second_line = NumericProperty(0)
    card_title = NumericProperty(0)
    state_word = NumericProperty(0)
    pan_label = NumericProperty(0)
    must = NumericProperty(0)
    body = NumericProperty(0)
    second_button = NumericProperty(0)
    pan_line = NumericProperty(0)
    step_name = NumericProperty(0)
    label = NumericProperty(0)
    axis = NumericProperty(0)
    text_floor = NumericProperty(18)

    # The family name keeps [b] in marked-up text on the real bold cut.
    regular = "Roboto"
    bold = str(_FONTS / "Roboto-Bold.ttf")
    mono = str(_FONTS / "RobotoMono-Regular.ttf")

    def __init__(self) -> None:
        super().__init__()
        self.fit(LOOK_WIDTH, LOOK_HEIGHT)

    def fit(self, width: float, height: float, pixels_per_mm: float | None = None) -> None:
        """Follow a window of ``width`` x ``height`` px; ``pixels_per_mm`` is the panel's density.

        At 1024 x 600 and above every size grows with the window; below, type and targets stop
        at their floors.
        """
        unit = min(width / LOOK_WIDTH, height / LOOK_HEIGHT)
        for role, (units, floor) in TYPE_SIZES.items():
            setattr(self, role, round(_floored(units * unit, floor, unit)))
        self.tap = max(
            _floored(TAP_UNITS * unit, TAP_FLOOR_PX, unit), _tap_mm_px(width, height, pixels_per_mm)
        )
        self.action = max(_floored(ACTION_UNITS * unit, ACTION_FLOOR_PX, unit), self.tap)
        self.strip_high = _floored(STRIP_UNITS * unit, STRIP_FLOOR_PX, unit)
        self.u = unit

    def px(self, units: float) -> float:
        """Pixels of ``units`` look units."""
        return units * self.u

    def time(self, seconds: float) -> float:
        """How long a movement of ``seconds`` lasts: nothing when less motion is wished."""
        return 0.0 if self.less_motion else seconds


def _floored(size: float, floor: float, unit: float) -> float:
    return max(size, floor) if unit < 1 else size


def _tap_mm_px(width: float, height: float, pixels_per_mm: float | None) -> float:
    if pixels_per_mm is None:
        return 0.0
    diagonal_inches = hypot(width, height) / pixels_per_mm / MM_PER_INCH
    # A panel sold as 10 inch measures a little less than that across its glass.
    large = round(diagonal_inches) >= LARGE_PANEL_INCHES
    return pixels_per_mm * (TAP_MM_LARGE_PANEL if large else TAP_MM_SMALL_PANEL)


theme = Theme()
