"""Makes the synthetic HID recordings anew: python -m tests.helpers.make_hid_recordings [FOLDER].

Each is what the simulated balance would send as reports in one situation, ten times a second.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

from drivers.simulated.indicator import Shown, State
from drivers.simulated.materials import RICE
from drivers.simulated.table import SimulatedTable, simulated_table
from tests.helpers.hid_reports import (
    AT_ZERO,
    BELOW_ZERO,
    FAULT,
    GRAM,
    KG,
    MOVING,
    OZ,
    STABLE,
    TOO_MUCH,
    ZERO_GONE,
    report,
)
from tests.helpers.recording_marks import unplugged

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "recordings" / "hid-scale"
EVERY_S = 0.1
SEED = 11

Deed = Callable[[SimulatedTable], object]
_BY_STATE = {
    State.UNDER: BELOW_ZERO,
    State.OVER: TOO_MUCH,
    State.NOT_ZEROED: ZERO_GONE,
    State.CENTRE_OF_ZERO: AT_ZERO,
    State.IN_RANGE: STABLE,
}
_UNITS = {"g": GRAM, "kg": KG, "oz": OZ}


def _put(grams: float) -> Deed:
    return lambda table: table.bench.put(table.bench.check_weight(grams))


def _lift(table: SimulatedTable) -> None:
    table.bench.lift()


def _zero(table: SimulatedTable) -> None:
    assert table.press_zero()


def _tare(table: SimulatedTable) -> None:
    assert table.press_tare()


def _unit(table: SimulatedTable) -> None:
    table.press_unit()


def _jar(table: SimulatedTable) -> None:
    table.bench.put(table.bench.new_jar())


def _pour(table: SimulatedTable) -> None:
    (jar,) = table.bench.on_pan
    table.bench.pour(jar, RICE, grams=200)  # type: ignore[arg-type]


# name: (what it shows, seconds, what happens when, what is sent instead from when to when)
SITUATIONS: dict[str, tuple[str, float, dict[float, Deed], dict[tuple[float, float], bytes]]] = {
    "settle": ("a cup comes and goes", 8.0, {1.0: _put(12.3), 5.0: _lift}, {}),
    "under-zero": (
        "set to zero by its key under a cup, which is lifted; then set to zero again", 14.0,
        {1.0: _put(12.3), 4.0: _zero, 6.0: _lift, 9.0: _zero, 10.5: _put(50)}, {},
    ),
    "over-limit": ("more than the scale can weigh", 8.0, {1.0: _put(2100), 5.0: _lift}, {}),
    "pour": ("a jar is filled on the pan", 14.0, {1.0: _jar, 4.0: _pour}, {}),
    "silence": (
        "no report for four seconds, an empty pan after it", 12.0, {8.0: _put(12.3)},
        {(2.0, 6.0): b""},
    ),
    "unplugged": (
        "the cable is out for three seconds under a cup", 14.0, {1.0: _put(12.3), 10.0: _lift}, {},
    ),
    "tared-by-key": (
        "tared by its own key under a cup, which its reports do not tell; then lifted", 10.0,
        {1.0: _put(12.3), 4.0: _tare, 7.0: _lift}, {},
    ),
    "unit-key": (
        "its unit key is pressed under a load: kilograms, then ounces", 14.0,
        {1.0: _put(50), 4.0: _unit, 8.0: _unit}, {},
    ),
    "garbage": (
        "reports of another length and another id while a load rests", 9.0, {1.0: _put(50)},
        {(4.0, 4.6): b"\x03\x04\x02\xff", (5.0, 5.6): report(report_id=0x7E, weight=999)},
    ),
    "fault": (
        "a fault for three seconds while a load rests", 10.0, {1.0: _put(50)},
        {(4.0, 7.0): report(FAULT, GRAM, -1, 0)},
    ),
    "reports-of-zeros": (
        "reports of zeros for half a second while a load rests", 8.0, {1.0: _put(50)},
        {(4.0, 4.5): bytes(6)},
    ),
}  # fmt: skip


CABLE_OUT = {"unplugged": (4.0, 7.0)}


def lines(name: str) -> Iterator[str]:
    """The lines of one recording."""
    said = _said(name)
    return unplugged(said, *CABLE_OUT[name]) if name in CABLE_OUT else said


def _said(name: str) -> Iterator[str]:
    note, seconds, script, instead = SITUATIONS[name]
    yield json.dumps(
        {
            "recording": 1,
            "dialect": "hid-scale",
            "packets": True,
            "readability_g": 0.1,
            "synthetic": True,
            "note": f"synthetic: {note}",
        }
    )
    now = [0.0]
    waiting = dict(sorted(script.items()))
    with simulated_table(clock=lambda: now[0], seed=SEED) as table:
        for turn in range(1, round(seconds / EVERY_S) + 1):
            now[0] = round(turn * EVERY_S, 3)
            for at in [at for at in waiting if at <= now[0]]:
                waiting.pop(at)(table)
            for _ in table.device.indicator.advance(now[0]):
                pass
            sent = _sent(table.device.indicator.shown())
            for (first, last), other in instead.items():
                sent = other if first <= now[0] < last else sent
            if sent:
                yield json.dumps({"t": now[0], "hex": sent.hex()})


def _sent(shown: Shown) -> bytes:
    """The display as a report; a number below zero is sent without its sign, as it must be."""
    status = BELOW_ZERO if shown.value < 0 else _BY_STATE[shown.state]
    if shown.moving and status in (STABLE, AT_ZERO):
        status = MOVING
    power = int(shown.value.as_tuple().exponent)
    return report(status, _UNITS[shown.unit], power, abs(int(shown.value.scaleb(-power))))


def main(folder: Path) -> None:
    """Write them all."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in SITUATIONS:
        text = "".join(f"{line}\n" for line in lines(name))
        (folder / f"synthetic-{name}.jsonl").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else FOLDER)
