"""Pictures of single parts in their states; every name and number is invented."""

from __future__ import annotations

from typing import Any

from kiosk.ui.widgets.action_button import Chip, ChoiceCard, MainButton, SecondButton
from kiosk.ui.widgets.bench_tile import BenchTile
from kiosk.ui.widgets.cup import CupDrawing
from kiosk.ui.widgets.mark import Mark
from kiosk.ui.widgets.pan import Pan
from kiosk.ui.widgets.scale_art import JarArt, PlugArt, ScaleArt, TrayArt, WeightArt
from kiosk.ui.widgets.score_tent import ScoreTent
from kiosk.ui.widgets.sheet import BenchPanel, Sheet
from kiosk.ui.widgets.step_trail import NumberBead, StepTrail
from tests.helpers.gallery_table import Table


def parts(table: Table) -> None:
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


def buttons(table: Table) -> None:
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


def pans(table: Table) -> None:
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


def things(table: Table) -> None:
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


def bench(table: Table) -> None:
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


SCENES = {
    "parts": parts,
    "buttons": buttons,
    "pans": pans,
    "tents": tents,
    "things": things,
    "bench": bench,
}
