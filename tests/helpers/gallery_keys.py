"""Pictures of the parts with which a count key is made; every number is invented."""

from __future__ import annotations

from typing import Any

from kiosk.ui.widgets.action_button import Chip, MainButton, SecondButton
from kiosk.ui.widgets.jar_letters import JarLetters
from kiosk.ui.widgets.pour_gauge import PourGauge
from kiosk.ui.widgets.sample_rows import SampleRows
from kiosk.ui.widgets.score_tent import ScoreTent
from tests.helpers.gallery_table import Table


def samples(table: Table, count: int = 3) -> None:
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


def pouring(table: Table) -> None:
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


def key_done(table: Table) -> None:
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


SCENES = {
    "samples": samples,
    "many-samples": many_samples,
    "pouring": pouring,
    "key-done": key_done,
}
