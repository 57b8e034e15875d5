"""Makes the synthetic recordings anew: python -m tests.helpers.make_recordings [FOLDER].

Each is what the simulated balance sends in one situation, asked for its weight ten times a second.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

from drivers.simulated.materials import RICE
from drivers.simulated.profile import MotionFlag, Profile
from drivers.simulated.table import SimulatedTable, simulated_table
from tests.helpers.recording_marks import unplugged

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "recordings" / "sma"
EVERY_S = 0.1
ASK = b"\nW\r"

Deed = Callable[[SimulatedTable], object]
Script = dict[float, Deed]


def _put(grams: float) -> Deed:
    return lambda table: table.bench.put(table.bench.check_weight(grams))


def _lift(table: SimulatedTable) -> None:
    table.bench.lift()


def _jar(table: SimulatedTable) -> None:
    table.bench.put(table.bench.new_jar())


def _pour(table: SimulatedTable) -> None:
    (jar,) = table.bench.on_pan
    table.bench.pour(jar, RICE, grams=200)  # type: ignore[arg-type]


# name: (what it shows, seconds, what happens when, profile)
SITUATIONS: dict[str, tuple[str, float, Script, Profile]] = {
    "settle": ("a cup comes and goes", 8.0, {1.0: _put(12.3), 5.0: _lift}, Profile()),
    "added": ("something is added to a rested load", 10.0,
              {1.0: _put(50), 5.0: _put(20)}, Profile()),
    "pour": ("a jar is filled on the pan", 14.0, {1.0: _jar, 4.0: _pour}, Profile()),
    "hand": ("a hand leans on the loaded pan, then lets go", 12.0,
             {1.0: _put(50), 4.0: lambda table: table.bench.lean(),
              8.0: lambda table: table.bench.let_go()}, Profile()),
    "overload": ("more than the balance can weigh", 8.0, {1.0: _put(2100), 5.0: _lift}, Profile()),
    "zeroed-under-a-cup": (
        "switched off and on again with a cup on, which is then lifted", 14.0,
        {1.0: _put(12.3), 4.0: lambda table: table.switch_off(),
         8.0: lambda table: table.switch_on(), 11.0: _lift}, Profile(),
    ),
    "tared-by-key": ("tared by its own key under a cup", 8.0,
                     {1.0: _put(12.3), 4.0: lambda table: table.press_tare()}, Profile()),
    "silence": ("no answer for four seconds, an empty pan after it", 12.0,
                {2.0: lambda table: table.fall_silent(), 6.0: lambda table: table.speak_again(),
                 8.0: _put(12.3)}, Profile()),
    "unplugged": ("the cable is out for three seconds under a cup", 14.0,
                  {1.0: _put(12.3), 10.0: _lift}, Profile()),
    "unit-key": ("its unit key is pressed under a load: kilograms, then ounces", 14.0,
                 {1.0: _put(50), 4.0: lambda table: table.press_unit(),
                  8.0: lambda table: table.press_unit()}, Profile()),
    "flickering-flag": ("the motion flag means nothing", 8.0, {1.0: _put(50)},
                        Profile(motion_flag=MotionFlag.FLICKER)),
    "torn-and-garbled": ("frames are torn and garbled while a load rests", 8.0,
                         {1.0: _put(50), 4.0: lambda table: table.device.faults.tear(3),
                          5.0: lambda table: table.device.faults.garble(3)}, Profile()),
}  # fmt: skip


CABLE_OUT = {"unplugged": (4.0, 7.0)}


def lines(name: str) -> Iterator[str]:
    """The lines of one recording."""
    said = _said(name)
    return unplugged(said, *CABLE_OUT[name]) if name in CABLE_OUT else said


def _said(name: str) -> Iterator[str]:
    note, seconds, script, profile = SITUATIONS[name]
    yield json.dumps(
        {
            "recording": 1,
            "dialect": "sma",
            "readability_g": 0.1,
            "synthetic": True,
            "note": f"synthetic: {note}",
        }
    )
    now = [0.0]
    waiting = dict(sorted(script.items()))
    with simulated_table(clock=lambda: now[0], profile=profile, seed=11) as table:
        for turn in range(1, round(seconds / EVERY_S) + 1):
            now[0] = round(turn * EVERY_S, 3)
            for at in [at for at in waiting if at <= now[0]]:
                waiting.pop(at)(table)
            answer = table.device.receive(ASK, now[0])
            if answer:
                yield json.dumps({"t": now[0], "hex": answer.hex()})


def main(folder: Path) -> None:
    """Write them all."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in SITUATIONS:
        text = "".join(f"{line}\n" for line in lines(name))
        (folder / f"synthetic-{name}.jsonl").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else FOLDER)
