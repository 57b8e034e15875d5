"""Rounds for tests of the standings: keys, answers and crowds of teams (all invented)."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

import numpy as np

from kiosk.estimating.standings import Answers, Key
from kiosk.settings import Task

ACTUAL = dict(zip(Task, map(Decimal, (100, 800, 4000, 18000, 500, 1500, 3500)), strict=True))


def keys(half_widths: Mapping[Task, str] | str = "0") -> dict[Task, Key]:
    """The seven keys, all with one half width in per cent, or 0 but for those named."""
    given = dict.fromkeys(Task, half_widths) if isinstance(half_widths, str) else half_widths
    return {
        task: Key(actual=actual, half_width_percent=Decimal(given.get(task, "0")))
        for task, actual in ACTUAL.items()
    }


def perfect(team: str, **but: str) -> Answers:
    """A team that is right everywhere ``but`` where said, as ``count_low="750"``."""
    given = {Task[name.upper()]: Decimal(estimate) for name, estimate in but.items()}
    return Answers(team=team, estimates=ACTUAL | given)


def crowd(teams: int, seed: int = 3) -> list[Answers]:
    """Teams that are off by a quarter, more or less."""
    rng = np.random.default_rng(seed)
    return [
        Answers(
            team=f"Team {number}",
            estimates={
                task: Decimal(str(round(float(actual) * rng.lognormal(0, 0.25), 1)))
                for task, actual in ACTUAL.items()
            },
        )
        for number in range(1, teams + 1)
    ]
