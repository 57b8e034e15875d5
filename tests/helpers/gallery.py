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
    from kiosk.ui.widgets.pour_gauge import PourGauge

    table.strip(words=["Scale connected", "Count key", "lentils"], lock="coach",
                right_text="coach")  # fmt: skip
    table.pan(phase="pouring", word="pouring", label="in the jar", number="10\u2009730",
              unit="pieces", unit_below=True, line1="inside 379.0 g")  # fmt: skip
    table.sheet(step=4, steps=5, text="Step 4 of 5: pour")
    table.say("Pour until the arrow is\nin the tall box.", 444, 108, 360, 86,
              type_size=34 * table.theme.u)  # fmt: skip
    table.put(
        PourGauge(count=10730, goal="high", low_text="low", middle_text="middle",
                  high_text="high", now_text="now"),
        444, 206, 542, 168,
    )  # fmt: skip
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


def score(table: Table) -> None:
    from kiosk.ui.widgets.action_button import MainButton
    from kiosk.ui.widgets.score_tent import ScoreTent
    from kiosk.ui.widgets.tries_plot import TriesPlot

    table.strip(words=["Scale connected", "Team Heron", "cup 7"], clock_text="10:14")
    table.pan(phase="captured", word="captured", label="inside", number="93.4", unit="g",
              line1="with the cup 105.7 g")  # fmt: skip
    table.sheet(step=4, text="Step 4 of 4: score")
    table.say("cup [b]12.3[/b]  +  inside [b]93.4[/b] g", 444, 104, 542, 38, heavy=False,
              markup=True, type_size=table.theme.second_line)  # fmt: skip
    table.put(
        ScoreTent(true_value=100, estimate=93.4, side="under", score_text="93.4",
                  of_text="of 100 points", error_text="6.6 g", side_text="under",
                  left_text="0 g", peak_text="100 g", right_text="200 g",
                  yours_text="yours 93.4 g"),
        444, 146, 542, 212,
    )  # fmt: skip
    table.put(
        TriesPlot(errors=[14, 9, -7, 1, -6.6], over_text="over", under_text="under",
                  zero_text="100 g", oldest_text="oldest", newest_text="newest: this try",
                  tries_text="last\nfive tries"),
        444, 366, 542, 118,
    )  # fmt: skip
    table.put(MainButton(text="Next try"), 444, 492, 542, 88)
    table.button("Home", "home")


def key_done(table: Table) -> None:
    from kiosk.ui.widgets.action_button import Chip, MainButton, SecondButton
    from kiosk.ui.widgets.jar_letters import JarLetters
    from kiosk.ui.widgets.score_tent import ScoreTent

    table.strip(words=["Scale connected", "Count key", "lentils"], lock="coach",
                right_text="coach")  # fmt: skip
    table.pan(phase="stable", word="stable", label="in the jar", number="2\u2009830",
              unit="pieces", unit_below=True, line1="inside 100.0 g")  # fmt: skip
    table.sheet(step=5, steps=5, text="Step 5 of 5: key")
    table.say("2\u2009830 pieces", 444, 108, 270, 44, type_size=table.theme.instruction)
    table.put(Chip(text="counted pieces back in"), 716, 107, 270, 46)
    table.say("95 % sure: between [b]2\u2009770[/b] and [b]2\u2009890[/b]", 444, 156, 542, 34,
              heavy=False, markup=True)  # fmt: skip
    table.put(
        ScoreTent(true_value=2830, band=0.0212, left_text="0", peak_text="2\u2009830",
                  right_text="5\u2009660 pieces", cost_text="up to 2.2 points",
                  cost_where_text="near the top", band_text="the real number",
                  band_where_text="is in here"),
        444, 196, 542, 156,
    )  # fmt: skip
    table.say("Which\njar?", 444, 402, 84, 64)
    table.put(
        JarLetters(letters=list("ABCDEFGHIJKLMNOPQRSTUVWXYZ"), used=["A", "B"], chosen="C",
                   used_text="used", range_text="{first} to {last}"),
        528, 386, 458, 88,
    )  # fmt: skip
    table.put(MainButton(text="Save as jar C", sign="tick"), 632, 492, 354, 88)
    table.put(SecondButton(text="Print\nlabel", sign="printer"), 444, 492, 176, 88)
    table.button("Home", "home")
    table.button("Cover the\nbig number", "cover", 180, 212)


PAIRS = ["Heron", "Wren", "Siskin", "Plover", "Linnet", "Dunlin", "Teal", "Swift", "Robin",
         "Avocet", "Curlew", "Goldcrest", "Lapwing", "Pipit", "Redstart", "Osprey",
         "Oystercatcher"]  # fmt: skip


def hand_in(table: Table, cups: int = 9) -> None:
    from kiosk.ui.widgets.action_button import MainButton
    from kiosk.ui.widgets.cup_table import CupTable

    table.strip(words=["Scale connected", "Hand in"])
    table.pan(phase="hidden", word="hidden", hidden_text="cups are out")
    table.sheet(step=3, text="Step 3 of 4: hand in")
    table.say("Put cup 7 on the pan.", 444, 112, 542, 48, type_size=table.theme.instruction)
    table.say("Not yours? Tap your number.", 444, 160, 542, 34, heavy=False,
              type_size=table.theme.must)  # fmt: skip
    out = [(7 + place, name) for place, name in enumerate(PAIRS[:cups])]
    table.put(CupTable(cups=out, chosen=7, more_text="more"), 444, 202, 542, 282)
    table.put(MainButton(text="Waiting for cup 7", state_name="waiting"), 444, 492, 542, 88)
    table.button("Home", "home")


def many_cups(table: Table) -> None:
    hand_in(table, cups=17)


def take_cup(table: Table) -> None:
    from kiosk.ui.widgets.action_button import MainButton
    from kiosk.ui.widgets.cup import CupDrawing, CupRow
    from kiosk.ui.widgets.sheet import Panel

    table.strip(words=["Scale connected", "Team Heron"])
    table.pan(phase="hidden", word="hidden", hidden_text="cups are out", simulated=True)
    table.sheet(step=2, text="Step 2 of 4: fill")
    table.say("Fill it in your hand.\nBring it back.", 444, 110, 542, 90, line_height=1,
              type_size=table.theme.instruction)  # fmt: skip
    table.put(Panel(), 444, 204, 542, 166)
    table.put(CupDrawing(number=7), 466, 214, 190, 146)
    table.put(CupRow(numbers=[7, 8, 9, 10], mine=7, places=7), 444, 413, 542, 66)
    table.put(MainButton(text="Next pair"), 444, 492, 542, 88)
    table.button("Home", "home")


def things(table: Table) -> None:
    from kiosk.ui.widgets.cup import CupDrawing
    from kiosk.ui.widgets.scale_art import JarArt, PlugArt, ScaleArt, TrayArt, WeightArt

    table.strip(words=["Scale unplugged", "Team Heron"], connected=False)
    loads = (("none", "none"), ("empty cup", "down"), ("filled cup", "none"), ("full tray", "up"))
    for place, (load, arrows) in enumerate(loads):
        table.put(ScaleArt(load=load, arrows=arrows), 12 + 252 * place, 50, 240, 230)
    table.put(ScaleArt(load="jar"), 12, 300, 200, 150)
    table.put(ScaleArt(arrows="up"), 220, 300, 112, 76)
    table.put(JarArt(text="?"), 350, 300, 150, 196)
    table.put(JarArt(), 520, 300, 70, 90)
    table.put(TrayArt(pieces=True), 610, 300, 120, 60)
    table.put(TrayArt(), 610, 380, 120, 60)
    table.put(WeightArt(), 750, 300, 58, 78)
    table.put(PlugArt(), 830, 300, 110, 34)
    table.put(PlugArt(connected=False), 830, 350, 110, 34)
    for place, look in enumerate(("out", "yours", "chosen", "in")):
        table.put(CupDrawing(number=7, look=look), 12 + 170 * place, 480, 154, 112)
    table.put(CupDrawing(look="plain", filled=True), 700, 470, 150, 120)
    table.put(CupDrawing(look="plain", filled=True), 870, 500, 90, 64)


def pans(table: Table) -> None:
    from kiosk.ui.widgets.pan import Pan

    looks: list[dict[str, Any]] = [
        {"phase": "not zero", "word": "not zero", "number": "0.3", "unit": "g",
         "line1": "should be 0.0 g"},
        {"phase": "too heavy", "word": "too heavy", "hidden_text": "Too heavy"},
        {"phase": "unplugged", "word": "unplugged", "hidden_text": "no scale"},
        {"phase": "no mass", "word": "no number", "hidden_text": "Look at the display"},
        {"phase": "moving", "word": "moving", "label": "in the jar", "number": "\u22121\u2009234.5",
         "unit": "g", "line1": "tray 21.4 g taken off", "line2": "simulated", "simulated": True},
        {"phase": "pouring", "word": "pouring", "label": "in the jar", "number": "10\u2009730",
         "unit": "pieces", "unit_below": True, "line1": "10\u2009500 to 10\u2009960",
         "line2": "inside 379.0 g"},
    ]  # fmt: skip
    for place, look in enumerate(looks):
        table.put(Pan(**look), 10 + 338 * (place % 3), 10 + 295 * (place // 3), 330, 290)


def tents(table: Table) -> None:
    from kiosk.ui.widgets.score_tent import ScoreTent
    from kiosk.ui.widgets.sheet import Sheet

    table.put(Sheet(), 8, 8, 1008, 584)
    cases: list[dict[str, Any]] = [
        {"estimate": 112.0, "side": "over", "score_text": "88.0", "error_text": "12.0 g",
         "side_text": "over", "yours_text": "yours 112.0 g"},
        {"estimate": 251.4, "side": "over", "score_text": "0.0", "error_text": "151.4 g",
         "side_text": "double or more", "yours_text": "yours 251.4 g"},
        {"estimate": 2.0, "side": "under", "score_text": "2.0", "error_text": "98.0 g",
         "side_text": "under", "yours_text": "yours 2.0 g"},
        {"estimate": 100.0, "side": "on target", "score_text": "100.0", "error_text": "0.0 g",
         "side_text": "on target", "yours_text": "yours 100.0 g"},
    ]  # fmt: skip
    for place, case in enumerate(cases):
        tent = ScoreTent(of_text="of 100 points", left_text="0 g", peak_text="100 g",
                         right_text="200 g", **case)  # fmt: skip
        table.put(tent, 20 + 490 * (place % 2), 20 + 220 * (place // 2), 470, 205)
    for place, (estimate, side) in enumerate(((70, "under"), (99, "on target"), (130, "over"),
                                              (250, "over"), (93, "under"))):  # fmt: skip
        small = ScoreTent(compact=True, estimate=estimate, side=side)
        table.put(small, 30 + 200 * place, 470, 190 if place < 4 else 90, 100 if place < 4 else 50)


def samples(table: Table, count: int = 3) -> None:
    from kiosk.ui.widgets.action_button import MainButton, SecondButton
    from kiosk.ui.widgets.sample_rows import SampleRows

    table.strip(words=["Scale connected", "Count key", "lentils"], lock="coach",
                right_text="coach", simulated=count > 3,
                plate_text="SIMULATED SCALE")  # fmt: skip
    table.pan(phase="stable", word="stable", label="on the tray", number="3.6", unit="g",
              line1="tray 21.4 g taken off")  # fmt: skip
    table.sheet(step=2, steps=5, text="Step 2 of 5: samples")
    table.say("Count 100 pieces into the tray.", 444, 112, 542, 48,
              type_size=table.theme.instruction)  # fmt: skip
    names = ["first", "second", "third", "fourth", "fifth", "sixth"][:count]
    rows: list[dict[str, Any]] = [
        {"name": name, "bricks": 35 * (1 if count == 3 else 9), "differing_bricks": 0,
         "mass_text": "3.5 g" if count == 3 else "31.5 g", "state": "kept", "note": ""}
        for name in names
    ]  # fmt: skip
    rows[-2].update(state="on the pan", bricks=rows[0]["bricks"] + count // 3, note="on the pan",
                    differing_bricks=count // 3)  # fmt: skip
    rows[-1].update(state="to come", bricks=0, mass_text="", note="to come")
    table.put(
        SampleRows(
            rows=rows,
            undo_text="Undo",
            brick_text="one brick = 0.1 g",
            differ_text="they differ by one brick",
        ),
        444,
        170,
        542,
        0,
    )
    table.put(SecondButton(text="Count 300\nat once"), 444, 492, 176, 88)
    table.put(MainButton(text="Keep 3.6 g", sign="tick"), 632, 492, 354, 88)
    table.button("Home", "home")


def many_samples(table: Table) -> None:
    samples(table, count=6)


def bench(table: Table) -> None:
    from kiosk.ui.widgets.bench_tile import BenchTile
    from kiosk.ui.widgets.cup import CupDrawing
    from kiosk.ui.widgets.sheet import BenchPanel, Sheet
    from kiosk.ui.widgets.step_trail import StepTrail

    table.strip(words=["Scale connected", "Team Heron", "practice only"], simulated=True,
                plate_text="SIMULATED SCALE")  # fmt: skip
    table.pan(phase="captured", word="captured", label="empty cup", number="12.3", unit="g",
              line1="simulated", simulated=True)  # fmt: skip
    table.put(Sheet(), 416, 50, 420, 540)
    table.put(StepTrail(step=1, text="1 of 4", first=40, spacing=42), 416, 62, 274, 40)
    table.put(BenchPanel(), 706, 50, 308, 540)
    table.say("Bench", 736, 64, 120, 36, type_size=table.theme.card_title)
    arts = (("cup", "empty cup"), ("filled cup", "filled cup"), ("tray", "tray of 100"),
            ("jar", "jar"), ("weight", "100 g weight"), ("clear", "clear pan"))  # fmt: skip
    for place, (art, text) in enumerate(arts):
        tile = BenchTile(art=art, text=text, placed=not place)
        table.put(tile, 734 + 138 * (place % 2), 108 + 161 * (place // 2), 128, 150)
    table.say("Cup 7 weighs\n12.3 g.", 436, 120, 254, 90, type_size=table.theme.instruction,
              line_height=1)  # fmt: skip
    table.put(CupDrawing(number=7), 446, 312, 154, 112)
    small = ("solid cup", "empty tray", "zero", "tare", "plug", "off", "less", "more", "pour")
    for place, art in enumerate(small):
        tile = BenchTile(art=art, text=art)
        table.put(tile, 12 + 80 * (place % 5), 400 + 92 * (place // 5), 76, 88)
    table.button("Back", "back", 440)


def parts(table: Table) -> None:
    from kiosk.ui.widgets.action_button import MainButton
    from kiosk.ui.widgets.cup import CupDrawing
    from kiosk.ui.widgets.mark import Mark
    from kiosk.ui.widgets.pan import Pan
    from kiosk.ui.widgets.score_tent import ScoreTent
    from kiosk.ui.widgets.sheet import Sheet
    from kiosk.ui.widgets.step_trail import NumberBead, StepTrail

    states: list[dict[str, Any]] = [
        {"phase": "empty", "number": "0.0", "unit": "g"},
        {"phase": "settling", "number": "12.4", "unit": "g", "progress": 0.62},
        {"phase": "stable", "number": "12.3", "unit": "g"},
        {"phase": "captured", "number": "12.3", "unit": "g", "label": "empty cup"},
        {"phase": "hidden"},
        {"phase": "captured", "number": "12.3", "unit": "g", "simulated": True},
        {"phase": "unplugged"},
    ]
    for place, state in enumerate(states):
        table.put(Pan(word=state["phase"], **state), 16 + 144 * place, 46, 128, 150)
    table.put(Sheet(), 16, 208, 992, 382)
    tents = (("70", 70, "under"), ("99", 99, "on target"), ("70", 130, "over"), ("0", 260, "over"))
    for place, (points, estimate, side) in enumerate(tents):
        table.put(ScoreTent(compact=True, estimate=estimate, side=side), 36 + 242 * place, 222, 216,
                  100)  # fmt: skip
        table.say(f"{points} points", 36 + 242 * place, 320, 216, 26, halign="center")
        table.put(Mark(sign=side), 84 + 242 * place, 348, 18, 18)
    for place, (text, state) in enumerate(
        (("Ready", "ready"), ("Waiting", "waiting"), ("Pressed", "ready"), ("Off", "off"))
    ):
        button = MainButton(text=text, state_name=state)
        table.put(button, 32 + 242 * place, 374, 232, 88)
        button.pressed = text == "Pressed"
    for place, look in enumerate(("out", "yours", "chosen", "in")):
        table.put(CupDrawing(number=7, look=look), 34 + 104 * place, 475, 96, 45)
    signs = ("tick", "cross", "level", "lock", "open lock", "clock", "eye", "ring", "printer",
             "chevron", "undo", "again", "plus", "power")  # fmt: skip
    for place, sign in enumerate(signs):
        table.put(Mark(sign=sign), 460 + 38 * place, 478, 32, 32)
    table.put(StepTrail(step=2, steps=4, text="Step 2 of 4: fill"), 452, 526, 540, 40)
    for place in (1, 2):
        table.put(NumberBead(number=place, present=place == 1), 34 + 60 * place, 534, 48, 48)


SCENES: dict[str, Scene] = {
    "weigh-empty": weigh_empty,
    "pouring": pouring,
    "buttons": buttons,
    "samples": samples,
    "many-samples": many_samples,
    "bench": bench,
    "score": score,
    "key-done": key_done,
    "hand-in": hand_in,
    "many-cups": many_cups,
    "take-cup": take_cup,
    "parts": parts,
    "things": things,
    "pans": pans,
    "tents": tents,
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
