"""Samples of a trace, in divisions."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal

from kiosk.weighing.trace import Sample
from tests.helpers.loads import reading

EVERY_S = 0.1
STEP = Decimal("0.1")


def sample(at: float, y: float, stable: bool | None = None) -> Sample:
    """One reading of so many divisions."""
    return Sample(at, y, stable, reading(STEP * Decimal(str(y)), at, stable))


def samples(ys: Sequence[float], start: float = 0.0, every: float = EVERY_S) -> list[Sample]:
    """Readings one after the other."""
    return [sample(round(start + every * place, 6), y) for place, y in enumerate(ys)]


def along(path: Callable[[float], float], seconds: float, every: float = EVERY_S) -> list[Sample]:
    """What a display shows of a path: whole divisions."""
    return samples([round(path(every * n)) for n in range(round(seconds / every))], every=every)
