"""The last ten seconds of a pan, for the eye: what it showed, and since when it is at rest."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from decimal import Decimal

from kiosk.estimating.steadiness import Steadiness, steadiness

REMEMBERED_S = 10.0
PACE_S = 3.0  # over which the readings a second are counted


@dataclass(frozen=True, slots=True, kw_only=True)
class PanPast:
    """``points`` are (seconds before now, grams), oldest first.

    ``rest`` is how many seconds ago the present rest began, None while there is none. ``pace`` is
    in readings a second, None while too few came.
    """

    points: tuple[tuple[float, Decimal], ...] = ()
    rest: float | None = None
    pace: float | None = None

    def steadiness(self, readability: Decimal) -> Steadiness | None:
        """Noise and drift of the present rest; None while it tells too little."""
        if self.rest is None:
            return None
        rested = [(-age, float(mass)) for age, mass in self.points if age <= self.rest]
        times, masses = [at for at, _ in rested], [mass for _, mass in rested]
        return steadiness(times, masses, float(readability))


class PanHistory:
    """Takes readings in and forgets those that are older than ``REMEMBERED_S``."""

    def __init__(self) -> None:
        self._points: deque[tuple[float, Decimal]] = deque()
        self._rest: float | None = None

    def note(self, at: float, grams: Decimal, *, resting: bool) -> None:
        """A reading at second ``at``; ``resting`` says whether the pan is at rest with it."""
        self._points.append((at, grams))
        while at - self._points[0][0] > REMEMBERED_S:
            self._points.popleft()
        if not resting:
            self._rest = None
        elif self._rest is None:
            self._rest = at

    def interrupt(self) -> None:
        """No mass came, so no rest goes on."""
        self._rest = None

    def past(self, now: float) -> PanPast:
        """What is still remembered at second ``now``, without what came later."""
        points = tuple(
            (now - at, grams) for at, grams in self._points if 0 <= now - at <= REMEMBERED_S
        )
        rest = None if self._rest is None else min(max(0.0, now - self._rest), REMEMBERED_S)
        return PanPast(points=points, rest=rest if points else None, pace=self._pace(now))

    def _pace(self, now: float) -> float | None:
        times = [at for at, _ in self._points if now - at <= PACE_S]
        if len(times) < 3:
            return None
        return (len(times) - 1) / (times[-1] - times[0]) if times[-1] > times[0] else None
