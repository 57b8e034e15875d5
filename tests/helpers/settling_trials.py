"""Trials of the pan watch on simulated balances, counted against the truth and a plain rule."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from statistics import median

import numpy as np

from drivers.reading import Reading
from kiosk.evidence import Source
from kiosk.weighing.pan_events import PanEvent, PanKind
from kiosk.weighing.pan_watch import PanWatch
from tests.helpers.loads import Kind, PutOn, plain_rule, put_on, shown

GAP_SECONDS = 60.0  # between two trials on one balance


@dataclass
class Tally:
    """What became of the loads of one kind of balance; delays in seconds from true rest."""

    kind: Kind
    loads: int = 0
    wrong: int = 0
    never: int = 0
    twice: int = 0
    delays: list[float] = field(default_factory=list)
    plain_delays: list[float] = field(default_factory=list)
    plain_wrong: int = 0

    @property
    def plain_captures(self) -> bool:
        """Whether the plain rule captures 95 % of the loads, and rightly."""
        return len(self.plain_delays) >= 0.95 * self.loads

    @property
    def limit(self) -> float:
        """The longest median delay that is good enough, in seconds."""
        rate = self.kind.rate * self.kind.asked
        if not self.plain_captures:
            return 1.0 if rate >= 10 else 9 / rate
        return 0.7 * median(self.plain_delays) if rate <= 10 else 0.45

    @property
    def delay(self) -> float:
        """The median delay in seconds."""
        return median(self.delays)


def try_kind(kind: Kind, loads: int, seed: int) -> Tally:
    """Put ``loads`` loads on one balance, one after the other, each taken off again."""
    rng = np.random.default_rng(seed)
    tally = Tally(kind)
    watch = PanWatch(kind.readability, Source.SIMULATED)
    watched = max(6.0, 24 / kind.rate)
    for number in range(loads):
        load = put_on(kind, number, rng, watched)
        start = GAP_SECONDS * number
        events = play(watch, load.readings, start)
        _count(tally, load, [e for e in events if e.kind is PanKind.SETTLED], start)
        play(watch, bare(kind, rng), start + load.readings[-1].at)
    return tally


def bare(kind: Kind, rng: np.random.Generator) -> list[Reading]:
    """An empty pan, long enough to rest."""
    return shown(kind, np.zeros(1), np.zeros(1), rng, 2.0 + 12 / kind.rate)


def play(watch: PanWatch, readings: list[Reading], start: float) -> list[PanEvent]:
    """What the watch says to these readings, shifted to begin at ``start``."""
    return [e for r in readings for e in watch.reading(replace(r, at=r.at + start))]


def _count(tally: Tally, load: PutOn, settled: list[PanEvent], start: float) -> None:
    division = tally.kind.division
    limit = division * (1 + tally.kind.noise) + 1e-9
    tally.loads += 1
    tally.never += not settled
    tally.twice += len(settled) > 1
    tally.wrong += any(abs(float(e.grams or 0) - load.resting) > limit for e in settled)
    if settled:
        tally.delays.append(settled[0].at - start - load.rest_at)
    plain = plain_rule(load.readings, tally.kind)
    if plain is None:
        return
    if abs(float(plain.grams or 0) - load.resting) > limit:
        tally.plain_wrong += 1
    else:
        tally.plain_delays.append(plain.at - load.rest_at)
