"""Makes the recordings of lines anew: python -m tests.helpers.make_line_recordings [FOLDER].

Each is what a simulated balance sends by itself in one style and one situation.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

from tests.helpers.line_styles import KINDS, TURN_S, Stream

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "recordings" / "lines"

Deed = Callable[[Stream], object]


def _put(grams: float) -> Deed:
    return lambda stream: stream.put(grams)


# name: (kind, what it shows, seconds, what happens when)
SITUATIONS: dict[str, tuple[str, str, float, dict[float, Deed]]] = {
    "header": ("header, zeros", "a cup comes and goes", 8.0, {1.0: _put(12.3), 5.0: _put(0)}),
    "comma": ("comma, CR", "a cup comes and goes", 8.0, {1.0: _put(12.3), 5.0: _put(0)}),
    "overload": ("two headers", "more than the balance can weigh", 8.0,
                 {1.0: _put(2100), 5.0: _put(0)}),
    "torn": ("header, zeros", "lines are torn and garbled while a load rests", 9.0,
             {1.0: _put(50), 4.0: lambda stream: stream.device.faults.tear(3),
              5.0: lambda stream: stream.device.faults.garble(3), 6.5: _put(0)}),
    "brackets": ("brackets, no unit", "to be learned: no unit while the balance moves", 9.0,
                 {2.0: _put(50), 6.0: _put(0)}),
    "clock": ("clock before", "to be learned: a clock in each line", 9.0,
              {2.0: _put(50), 6.0: _put(0)}),
}  # fmt: skip


def lines(name: str) -> Iterator[str]:
    """The lines of one recording."""
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
