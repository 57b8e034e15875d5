"""Draws the parts of the kiosk to PNG files, for looking: python -m tests.helpers.gallery FOLDER.

Every name, number and text in the pictures is invented.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import Any

from tests.helpers.offscreen import frames, open_window, prepare_once, save_picture

SIZES = ((800, 480), (1024, 600), (1280, 800))


class Table:
    """Places widgets by the look's units, from the upper left of the window."""

    def __init__(self, width: int, height: int) -> None:
        from kiosk.ui.theme import theme
        from kiosk.ui.widgets.sheet import Bench

        self.theme, self.width, self.height = theme, width, height
        self.root = Bench(size_hint=(None, None), size=(width, height))

    def put(self, widget: Any, x: float, y: float, wide: float, high: float) -> Any:
        u = self.theme.u
        widget.size_hint = (None, None)
        widget.size = (wide * u, max(high * u, widget.height if high == 0 else 0))
        widget.pos = (x * u, self.height - y * u - widget.height)
        self.root.add_widget(widget)
        return widget

    def sheet(self, *, step: int = 1, steps: int = 4, text: str = "") -> None:
        from kiosk.ui.widgets.sheet import Sheet
        from kiosk.ui.widgets.step_trail import StepTrail

        self.put(Sheet(), 416, 50, 598, 540)
        if text:
            self.put(StepTrail(step=step, steps=steps, text=text), 416, 62, 570, 40)

    def say(self, text: str, x: float, y: float, wide: float, high: float, **look: Any) -> None:
        from kiosk.ui.widgets.fit_label import FitLabel

        bold = look.pop("heavy", True)
        label = FitLabel(text=text)
        label.font_name = self.theme.bold if bold else self.theme.regular
        for name, value in look.items():
            setattr(label, name, value)
        self.put(label, x, y, wide, high)

    def strip(self, **look: Any) -> None:
        from kiosk.ui.widgets.status_strip import StatusStrip

        strip = StatusStrip(**look)
        self.put(strip, 0, 0, self.width / self.theme.u, 40)
        strip.height = self.theme.strip_high
        strip.top = self.height

    def pan(self, **look: Any) -> None:
        from kiosk.ui.widgets.pan import Pan

        self.put(Pan(**look), 16, 66, 384, 430)

    def button(self, text: str, sign: str | None, x: float = 28, wide: float = 140) -> None:
        from kiosk.ui.widgets.action_button import SecondButton

        self.put(SecondButton(text=text, sign=sign), x, 510, wide, 70)


Scene = Callable[[Table], None]


def weigh_empty(table: Table) -> None:
    table.strip(words=["Scale connected", "Team Heron", "no cup is out"])
    table.pan(phase="settling", word="settling", label="empty cup", number="12.3", unit="g",
              progress=0.78)  # fmt: skip
    table.sheet(step=1, text="Step 1 of 4: empty cup")
    table.say("We weigh the empty cup first.", 444, 112, 542, 48,
              type_size=table.theme.instruction)  # fmt: skip
    table.say("It will not count.", 444, 162, 542, 38, heavy=False,
              type_size=table.theme.second_line)  # fmt: skip
    table.button("Back", "back")


def pouring(table: Table) -> None:
    from kiosk.ui.widgets.action_button import MainButton

    table.strip(words=["Scale connected", "Count key", "lentils"], lock="coach",
                right_text="coach")  # fmt: skip
    table.pan(phase="pouring", word="pouring", label="in the jar", number="10\u2009730",
              unit="pieces", unit_below=True, line1="inside 379.0 g")  # fmt: skip
    table.sheet(step=4, steps=5, text="Step 4 of 5: pour")
    table.say("Pour until the arrow is\nin the tall box.", 444, 108, 360, 86,
              type_size=34 * table.theme.u)  # fmt: skip
    table.put(MainButton(text="Stop here", sign="square"), 444, 492, 542, 88)
    table.button("Home", "home")


def buttons(table: Table) -> None:
    from kiosk.ui.widgets.action_button import Chip, ChoiceCard, MainButton, SecondButton

    table.strip(words=["Scale connected", "Team Heron", "practice only"], simulated=True,
                plate_text="SIMULATED SCALE", clock_text="10:14")  # fmt: skip
    signs = ("arrow", "tick", "square", "again", "printer")
    for place, sign in enumerate(signs):
        table.put(MainButton(text="Ready", sign=sign), 16 + place * 200, 60, 190, 88)
    table.put(MainButton(text="Waiting for cup 7", state_name="waiting"), 16, 160, 490, 88)
    table.put(MainButton(text="Open the drawer", state_name="off"), 516, 160, 490, 88)
    pressed = table.put(MainButton(text="Pressed", sign="arrow"), 16, 260, 276, 88)
    pressed.pressed = True
    for place, sign in enumerate(("home", "back", "undo", "cover", "printer")):
        table.put(SecondButton(text="Home", sign=sign), 310 + place * 140, 265, 132, 70)
    for place, name in enumerate(("Avocet", "Goldcrest", "Heron", "The Very Long Pair")):
        card = ChoiceCard(text=name, cup_number=7 if name == "Heron" else None,
                          chosen=name == "Avocet")  # fmt: skip
        table.put(card, 16 + place * 194, 360, 182, 112)
    table.put(SecondButton(text="Cover the\nbig number", sign="cover"), 16, 490, 212, 70)
    table.put(SecondButton(text="Count 300 at once"), 240, 490, 176, 88)
    table.put(Chip(text="counted pieces back in"), 430, 500, 264, 46)


SCENES: dict[str, Scene] = {
    "weigh-empty": weigh_empty,
    "pouring": pouring,
    "buttons": buttons,
}


def draw(folder: Path, names: list[str], sizes: tuple[tuple[int, int], ...] = SIZES) -> None:
    """Draw the named scenes in each size into ``folder``."""
    from kiosk.ui.theme import theme

    theme.less_motion = True
    for width, height in sizes:
        window = open_window(width, height)
        for name in names:
            table = Table(width, height)
            SCENES[name](table)
            window.add_widget(table.root)
            frames(4)
            save_picture(window, str(folder / f"{name}-{width}.png"))
            window.remove_widget(table.root)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--scene", action="append", default=[])
    parser.add_argument("--width", action="append", type=int, default=[])
    wanted = parser.parse_args()
    wanted.folder.mkdir(parents=True, exist_ok=True)
    prepare_once()
    sizes = tuple(size for size in SIZES if not wanted.width or size[0] in wanted.width)
    draw(wanted.folder, wanted.scene or list(SCENES), sizes)


if __name__ == "__main__":
    main()
