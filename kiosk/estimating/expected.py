"""What a plan of counting would bring, from what is known of the pieces so far."""

from __future__ import annotations

from math import sqrt

from kiosk.estimating.scatter import PriorScatter
from kiosk.estimating.uncertainty import Sampling, averages, pooled


def planned(
    *,
    pieces: int,
    number: int,
    piece_mass: float,
    piece_cv: float,
    readability: float,
    prior: PriorScatter | None = None,
    in_fill: bool = False,
) -> Sampling:
    """``number`` samples of ``pieces`` that scatter as pieces with the relative scatter piece_cv.

    Masses in grams. The rounding of the readings shows in the scatter of samples too. ValueError
    for a single sample with no prior knowledge.
    """
    mean = pieces * piece_mass
    deviation = sqrt((piece_cv / sqrt(pieces) * mean) ** 2 + readability**2 / 12)
    measured, dof = deviation, number - 1
    if prior:
        deviation = pooled(deviation, dof, prior.relative / sqrt(pieces) * mean, prior.dof)
        dof += prior.dof
    if dof < 1:
        raise ValueError("one sample alone shows no scatter")
    return Sampling(
        pieces=pieces,
        number=number,
        mean=mean,
        deviation=deviation,
        dof=dof,
        readability=readability,
        averaging=averages(number, min(measured, deviation), readability),
        in_fill=in_fill,
    )
