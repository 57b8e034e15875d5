"""Invented ways of writing lines, of the kinds that public manuals of instruments show.

Each with what must be found in it; and the stream that comes of a load put on and taken off.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any

from drivers.packet import Packet
from drivers.simulated.line_device import LineDevice
from drivers.simulated.line_style import LineStyle
from drivers.simulated.profile import Profile
from drivers.simulated.weighing_pan import WeighingPan

LOAD_G = 52.18
TURN_S = 0.05


@dataclass(frozen=True)
class Kind:
    """A style, the marks to be found in it, and what balance writes it."""

    style: LineStyle
    stable: str | None
    moving: str | None
    knobs: dict[str, Any] = field(default_factory=dict)
    unit: str = "g"


def kind(layout: str, stable: str | None = "ST", moving: str | None = "US", /, **more: Any) -> Kind:
    """A kind whose marks are written as they are found; None is written as nothing."""
    knobs = {name: more.pop(name) for name in list(more) if name in Profile.__dataclass_fields__}
    unit = more.pop("unit", "g")
    blank = more.pop("blank", "")
    style = LineStyle(
        layout=layout,
        still=stable if stable is not None else blank,
        moving=moving if moving is not None else blank,
        **more,
    )
    return Kind(style, stable, moving, knobs, unit)


KINDS: dict[str, Kind] = {
    "header, zeros": kind("{mark},{sign}{number}  {unit}", pad="0"),
    "two headers": kind("{mark},{basis},{sign}{number}{unit}", pad=" ", width=7),
    "kilograms": kind("{mark},{basis},{sign}{number}{unit}", unit="kg", unit_width=2,
                      readability=Decimal("0.1")),
    "echo, then state": kind("S {mark} {signed} {unit}", "S", "D", width=10, plus=""),
    "suffix": kind("{sign} {number} {unit} {mark}", "S", "M", width=7),
    "suffix while moving": kind("{signed} {unit}{mark}", None, " M", plus="", width=9),
    "star at rest": kind("{mark}{signed} {unit}", "*", None, blank=" ", width=9, plus=""),
    "question while moving": kind("{signed}{unit}{mark}", None, "?", width=9, plus=""),
    "comma, CR": kind("{sign}  {number} {unit} {mark}", "ST", "US", point=",", end=b"\r",
                      plus=" ", width=6),
    "brackets, no unit": kind("{sign} {number} {unit}  ", None, None, brackets=True,
                              unit_lacks=True),
    "brackets alone": kind("{sign} {number} {unit}  ", None, None, brackets=True),
    "no unit while moving": kind("{signed} {unit}", None, None, unit_lacks=True, width=10),
    "LF, close together": kind("{mark}{sign}{number}{unit}", "S", "U", end=b"\n", pad="0", width=7),
    "STX and ETX": kind("{mark}{sign}{number} {unit}", "A", "B", wrapped=True, end=b"", pad="0"),
    "clock before": kind("{clock} {mark} {sign}{number} {unit}"),
    "clock behind": kind("{sign}{number} {unit} {mark} {clock}", "ST", "US"),
    "counter, commas": kind("{counter},{mark},{signed},{unit}", plus="", width=0),
    "counter close by": kind("{counter},{number},{unit},{mark}", plus="", pad="0", width=7),
    "station and id": kind("07;A3;{mark};{signed};{unit}", plus="", width=9),
    "check behind": kind("{mark},{sign}{number} {unit},", check="xor"),
    "three check digits": kind("{mark} {sign}{number} {unit} ", check="sum of three digits"),
    "sum after ETX": kind("{mark} {sign}{number} {unit}", wrapped=True, check=None,
                          end=b"5C\r\n"),
    "unit first": kind("{unit} {mark} {signed}", "ST", "US", width=9),
    "digits say it": kind("{mark} {signed} {unit}", "0", "1", width=9, plus=""),
    "never a word": kind("{signed} {unit}", None, None, width=9, plus=""),
    "always stable": kind("{mark},{signed} {unit}", "ST", "ST", width=9),
    "unpadded": kind("{mark} {signed}{unit}", "S", "D", width=0, plus=""),
    "sign behind": kind("{mark} {number}{sign} {unit}", "S", "D", plus=" ", width=8),
    "sign apart": kind("{sign};{mark};{number};{unit}", "S", "D", plus="+", width=8),
    "halves": kind("{mark},{signed} {unit}", readability=Decimal("0.5"), width=8),
    "twos": kind("{mark},{signed} {unit}", readability=Decimal("0.02"), width=8),
    "fast and noisy": kind("{mark},{signed} {unit}", width=8, noise=1.2, readings_per_second=25.0),
    "slow": kind("{mark},{signed} {unit}", width=8, readings_per_second=3.0),
}  # fmt: skip


class Stream:
    """A balance of a kind on a clock that a test moves; ``packets`` is what it sent so far."""

    def __init__(self, chosen: Kind, seed: int = 5, **knobs: Any) -> None:
        readability = {"readability": Decimal("0.01")} | chosen.knobs | knobs
        self.pan = WeighingPan(Profile(seed=seed, **readability))
        self.device = LineDevice(self.pan, chosen.style)
        self.device.indicator.unit = chosen.unit
        self.now = 0.0
        self.packets: list[Packet] = []

    def run(self, seconds: float) -> Decimal:
        """Let time pass; what the display shows then."""
        for _ in range(round(seconds / TURN_S)):
            self.now = round(self.now + TURN_S, 6)
            self.packets.append(Packet(self.now, self.device.due(self.now)))
        return self.device.indicator.shown().value

    def put(self, grams: float) -> None:
        """Bring the load to so many grams."""
        self.pan.load(grams, self.now)


def taught(chosen: Kind, grams: float = LOAD_G, **knobs: Any) -> list[Packet]:
    """What is sent while a load is put on, rests and is taken off."""
    stream = Stream(chosen, **knobs)
    for load in (0.0, grams, 0.0):
        stream.put(load)
        stream.run(3.0)
    return stream.packets
