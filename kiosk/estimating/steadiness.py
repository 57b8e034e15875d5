"""How steady a resting balance is: its noise, and whether it drifts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

LEAST_READINGS = 15
LEAST_SECONDS = 3.0
SURE = 3.0  # standard errors of the slope before it is called a drift


@dataclass(frozen=True, slots=True, kw_only=True)
class Steadiness:
    """``noise`` is the standard deviation of one reading in grams.

    ``drift`` is in grams a minute, 0.0 where none can be told from noise and rounding.
    """

    noise: float
    drift: float


def steadiness(
    seconds: Sequence[float], grams: Sequence[float], readability: float
) -> Steadiness | None:
    """Of readings of one load at rest; None for fewer or shorter than can tell anything.

    A straight line is fitted by least squares; what the display rounds away counts as readability
    over the square root of 12 beside the noise.
    """
    if len(seconds) < LEAST_READINGS or seconds[-1] - seconds[0] < LEAST_SECONDS:
        return None
    times = np.asarray(seconds) - np.mean(seconds)
    masses = np.asarray(grams)
    slope = float(times @ (masses - masses.mean()) / (times @ times))
    left = masses - masses.mean() - slope * times
    noise = float(np.sqrt(left @ left / (len(times) - 2)))
    error = np.sqrt((noise**2 + readability**2 / 12) / (times @ times))
    return Steadiness(noise=noise, drift=60 * slope if abs(slope) > SURE * error else 0.0)
