"""How much single pieces differ: what is known of it before anything was weighed."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

PRIOR_DOF = 20  # a class of material, or a person's word, counts like so many degrees of freedom


@dataclass(frozen=True, slots=True, kw_only=True)
class PriorScatter:
    """One standard deviation of a piece's mass, relative to the mass, and what it is worth.

    ValueError unless ``relative`` is above 0 and at most 1.
    """

    relative: float
    dof: int = PRIOR_DOF

    def __post_init__(self) -> None:
        if not 0 < self.relative <= 1:
            raise ValueError("the scatter of pieces lies above 0 and up to 100 per cent")


class ScatterClass(StrEnum):
    """Kinds of pieces that a person can tell apart by looking."""

    BEADS = "beads and hardware"
    PASTA = "pasta"
    GRAINS = "pulses and grains"
    MIXED = "mixed"
    UNKNOWN = "don't know"


# Common practice, no source; on the high side, because a scatter taken too small makes a key
# look better than it is.
CLASS_CV_PERCENT: dict[ScatterClass, Decimal | None] = {
    ScatterClass.BEADS: Decimal(5),
    ScatterClass.PASTA: Decimal(10),
    ScatterClass.GRAINS: Decimal(20),
    ScatterClass.MIXED: Decimal(40),
    ScatterClass.UNKNOWN: None,
}
