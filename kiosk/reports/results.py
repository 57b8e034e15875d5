"""What a result list says, as plain values."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from kiosk.texts import say


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultRow:
    """A team with the scores of its tasks in order, None for an answer that is missing.

    ``shared`` when another team has the same place.
    """

    place: int
    shared: bool
    team: str
    scores: tuple[Decimal | None, ...]
    total: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """A score that was changed after the list was shown, and why.

    ``team`` is None when a key was changed, which counts for all teams; ``task`` is the place of
    the score in its row.
    """

    team: str | None
    task: int
    before: Decimal | None
    after: Decimal | None
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultList:
    """A division as it stands at ``at``; ``rows`` in order, ``tasks`` name the scores.

    ``at`` and ``protests_until`` are printed as the clock that they carry shows them: give the
    local time. ``best`` and ``median`` are those of each task. The first ``medals`` places have
    medals. ``left`` says in sentences who takes no part any more. What is not ``released`` is for
    the coach alone.
    """

    round_name: str
    place: str
    division: str
    released: bool = True
    final: bool
    at: datetime
    protests_until: datetime | None
    tasks: tuple[str, ...]
    rows: tuple[ResultRow, ...]
    best: tuple[Decimal, ...]
    median: tuple[Decimal, ...]
    medals: int
    corrections: tuple[Correction, ...]
    left: tuple[str, ...] = ()
    decimals: int
    simulated: bool

    @property
    def state(self) -> str:
        """The word for how far it is."""
        if not self.released:
            return say("paper.results.not_released")
        return say("paper.results.final" if self.final else "paper.results.provisional")


def clock(at: datetime) -> str:
    """A moment as its own clock shows it, to the minute."""
    zone = " UTC" if at.tzname() == "UTC" else ""
    return f"{at:%Y-%m-%d %H:%M}{zone}"
