"""Pictures of the parts with which a cup is filled; every name and number is invented."""

from __future__ import annotations

from kiosk.ui.widgets.action_button import MainButton
from kiosk.ui.widgets.cup import CupDrawing, CupRow
from kiosk.ui.widgets.cup_table import CupTable
from kiosk.ui.widgets.score_tent import ScoreTent
from kiosk.ui.widgets.sheet import Panel
from kiosk.ui.widgets.tries_plot import TriesPlot
from tests.helpers.gallery_table import Table

PAIRS = ["Heron", "Wren", "Siskin", "Plover", "Linnet", "Dunlin", "Teal", "Swift", "Robin",
         "Avocet", "Curlew", "Goldcrest", "Lapwing", "Pipit", "Redstart", "Osprey",
         "Oystercatcher"]  # fmt: skip


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


def take_cup(table: Table) -> None:
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


def hand_in(table: Table, cups: int = 9) -> None:
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


def score(table: Table) -> None:
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


SCENES = {
    "weigh-empty": weigh_empty,
    "take-cup": take_cup,
    "hand-in": hand_in,
    "many-cups": many_cups,
    "score": score,
}
