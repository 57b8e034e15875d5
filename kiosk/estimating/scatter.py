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


def with_bits(cv_percent: Decimal | None) -> Decimal | None:
    """The scatter known beforehand where broken bits count as pieces too, in per cent.

    Pieces of one kind are then mixed pieces: with three bits among ten, of a fifth to four fifths
    of a piece, those that scatter by 20 % scatter by 36 %. Nothing known stays nothing.
    """
    mixed = CLASS_CV_PERCENT[ScatterClass.MIXED]
    return cv_percent if cv_percent is None or mixed is None else max(cv_percent, mixed)
