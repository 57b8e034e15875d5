"""Since when a reading has hovered about a value that it reached long ago.

A load comes in at the pace of the pan and its filter, and is there. A hand that leans on the pan
brings the reading near a value too, and then does not let it rest. The pace is told by the way in:
who took so long from far to near takes so long from near to rest, and not much longer.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from kiosk.weighing.trace import Sample

NEAR_DIVISIONS = 21.0  # a trembling hand stays within
NEAR_NOISES = 12.0  # more: it makes a balance noisier
FAR = 10.0  # times near
SURELY_REACHED = 0.7  # of the farthest reading
REST_DIVISIONS = 0.5


def hovering_since(
    samples: Sequence[Sample], mean: float, noise: float, restless_since: float
) -> float:
    """When a load that comes in at that pace would have been at rest about ``mean``, in seconds.

    ``mean`` and ``noise`` (of one reading) in divisions; never before ``restless_since``, nor
    before the first reading: where none came, nothing hovered.
    """
    began = max(restless_since, samples[0].at)
    near = NEAR_DIVISIONS + NEAR_NOISES * noise
    farthest = max(abs(sample.y - mean) for sample in samples)
    near_at = _last_beyond(samples, mean, near)
    if near_at is None or near_at < began:
        return began
    far = min(FAR * near, SURELY_REACHED * farthest)
    far_at = _last_beyond(samples, mean, far)
    if far <= near or far_at is None:
        return near_at
    pace = (near_at - far_at) / math.log(far / near)
    return near_at + pace * math.log(near / REST_DIVISIONS)


def tremor(samples: Sequence[Sample], since: float, mean: float) -> float:
    """Root mean square of the distance from ``mean`` after ``since``; 0 without a reading."""
    squares = [(sample.y - mean) ** 2 for sample in samples if sample.at > since]
    return math.sqrt(sum(squares) / len(squares)) if squares else 0.0


def _last_beyond(samples: Sequence[Sample], mean: float, level: float) -> float | None:
    return next((s.at for s in reversed(samples) if abs(s.y - mean) >= level), None)
