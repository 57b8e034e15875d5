"""Texts: things for the simulated balance."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "bench.title": "Bench",
    "bench.not_real": "not real",
    "bench.hint": "Tap a thing to put it on, again to take it off.",
    "bench.empty_cup": "empty cup",
    "bench.solid_cup": "solid cup",
    "bench.filled_cup": "filled cup {number}",
    "bench.scoop": "scoop {mass}",
    "bench.scoop_less": "less",
    "bench.scoop_more": "more",
    "bench.no_cup": "no cup out",
    "bench.tray": "empty tray",
    "bench.tray_full": "tray of {pieces}",
    "bench.tray_more": "{pieces} more",
    "bench.jar": "jar",
    "bench.pour": "pour in",
    "bench.weight": "100 g weight",
    "bench.zero": "its zero",
    "bench.tare": "its tare",
    "bench.unplug": "unplug",
    "bench.plug": "plug in",
    "bench.more": "Zero, tare, cable",
    "bench.back": "Back to the things",
    "bench.switch_off": "switch off",
    "bench.wake": "switch on",
    "bench.clear": "clear pan",
}
