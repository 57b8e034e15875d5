"""Makes the recordings of lines anew: python -m tests.helpers.make_line_recordings [FOLDER].

Each is what a simulated balance sends by itself in one style and one situation.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

from tests.helpers.line_styles import KINDS, TURN_S, Stream
from tests.helpers.recording_marks import unplugged

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "recordings" / "lines"

Deed = Callable[[Stream], object]


def _put(grams: float) -> Deed:
    return lambda stream: stream.put(grams)


def _pour(first: float, last: float, begins: float, ends: float) -> dict[float, Deed]:
    """From one mass to another at an even pace."""
    turns = round((ends - begins) / TURN_S)
    return {
        begins + turn * TURN_S: _put(first + (last - first) * turn / turns)
        for turn in range(1, turns + 1)
    }


def _zero(stream: Stream) -> None:
    assert stream.device.press_zero(stream.now)


def _tare(stream: Stream) -> None:
    assert stream.device.press_tare(stream.now)


def _unit(stream: Stream) -> None:
    stream.device.press_unit(stream.now)


# name: (kind, what it shows, seconds, what happens when)
SITUATIONS: dict[str, tuple[str, str, float, dict[float, Deed]]] = {
    "header": ("header, zeros", "a cup comes and goes", 8.0, {1.0: _put(12.3), 5.0: _put(0)}),
    "comma": ("comma, CR", "a cup comes and goes", 8.0, {1.0: _put(12.3), 5.0: _put(0)}),
    "overload": ("two headers", "more than the balance can weigh", 8.0,
                 {1.0: _put(2100), 5.0: _put(0)}),
    "torn": ("header, zeros", "lines are torn and garbled while a load rests", 9.0,
             {1.0: _put(50), 4.0: lambda stream: stream.device.faults.tear(3),
              5.0: lambda stream: stream.device.faults.garble(3), 6.5: _put(0)}),
    "pour": ("header, zeros", "a jar is filled on the pan", 14.0,
             {1.0: _put(300), **_pour(300, 500, 4.0, 9.0)}),
    "silence": ("header, zeros", "no line for four seconds, an empty pan after it", 12.0,
                {2.0: lambda stream: stream.device.fall_silent(),
                 6.0: lambda stream: stream.device.speak_again(), 8.0: _put(12.3)}),
    "unplugged": ("header, zeros", "the cable is out for three seconds under a cup", 14.0,
                  {1.0: _put(12.3), 10.0: _put(0)}),
    "below-zero": ("header, zeros", "set to zero by its key under a cup, which is lifted; "
                   "then set to zero again", 14.0,
                   {1.0: _put(12.3), 4.0: _zero, 6.0: _put(0), 9.0: _zero, 10.5: _put(50)}),
    "tared-by-key": ("two headers", "tared by its own key under a cup", 8.0,
                     {1.0: _put(12.3), 4.0: _tare}),
    "unit-key": ("header, zeros", "its unit key is pressed under a load: kilograms, then ounces",
                 14.0, {1.0: _put(50), 4.0: _unit, 8.0: _unit}),
    "brackets": ("brackets, no unit", "to be learned: no unit while the balance moves", 9.0,
                 {2.0: _put(50), 6.0: _put(0)}),
    "clock": ("clock before", "to be learned: a clock in each line", 9.0,
              {2.0: _put(50), 6.0: _put(0)}),
}  # fmt: skip


CABLE_OUT = {"unplugged": (4.0, 7.0)}


def lines(name: str) -> Iterator[str]:
    """The lines of one recording."""
    said = _said(name)
    return unplugged(said, *CABLE_OUT[name]) if name in CABLE_OUT else said


def _said(name: str) -> Iterator[str]:
    kind, note, seconds, script = SITUATIONS[name]
    yield json.dumps(
        {
            "recording": 1,
            "dialect": "lines",
            "readability_g": 0.01,
            "synthetic": True,
            "note": f"synthetic: {note}",
        }
    )
    stream = Stream(KINDS[kind], seed=11)
    waiting = dict(sorted(script.items()))
    for _ in range(round(seconds / TURN_S)):
        for at in [at for at in waiting if at <= stream.now]:
            waiting.pop(at)(stream)
        stream.run(TURN_S)
    for packet in stream.packets:
        if packet.data:
            yield json.dumps({"t": packet.at, "hex": packet.data.hex()})


def main(folder: Path) -> None:
    """Write them all."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in SITUATIONS:
        text = "".join(f"{line}\n" for line in lines(name))
        (folder / f"synthetic-{name}.jsonl").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else FOLDER)
