"""The cup table on simulated balances, played by hands that wait for its word, and timed.

The pan is moved on a hundred times a second without noise, which tells when it truly rests; every
tenth moment is a reading, with the noise and the rounding of its kind of balance.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

import numpy as np

from drivers.simulated.profile import Profile
from drivers.simulated.weighing_pan import Sample, WeighingPan
from kiosk.evidence import Source
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import WeighAgain
from kiosk.procedures.queue_steps import QueueState
from kiosk.rounds.cups import Pass
from kiosk.rounds.state import RoundState
from kiosk.weighing.pan_watch import PanWatch
from tests.helpers.loads import reading
from tests.helpers.queue_hands import table, weighed_empty

FINE, RATE = 100, 10  # moments of the motion and readings, a second
DIVISION = Decimal("0.1")
EMPTY_G = Decimal("12.3")
HAND_S = 0.4  # before a hand does what it is told to
PATIENCE_S = 30.0


@dataclass(frozen=True, kw_only=True)
class Balance:
    """A kind of balance: noise in divisions, time constant of its filter, damping of its pan.

    With a ``flag`` it says honestly whether the load rests, otherwise nothing.
    """

    noise: float
    filter_seconds: float
    damping: float
    flag: bool = True


@dataclass
class Times:
    """Seconds that the kiosk added for each cup: from true rest to its word; and what went wrong.

    ``to_recorded`` from the resting cup, ``to_next`` from the resting empty pan.
    """

    to_recorded: list[float] = field(default_factory=list)
    to_next: list[float] = field(default_factory=list)
    off: list[float] = field(default_factory=list)  # recorded less true, divisions


class Bench:
    """One balance, one cup table, two hands."""

    def __init__(self, balance: Balance, cups: int, seed: int) -> None:
        self.rng = np.random.default_rng(seed)
        self.balance = balance
        self.pan = WeighingPan(
            Profile(
                readability=DIVISION,
                noise=0.0,
                filter_seconds=balance.filter_seconds,
                damping=balance.damping,
                ring_hz=float(self.rng.uniform(5, 10)),
                readings_per_second=FINE,
                seed=seed,
            )
        )
        self.tick = 0
        self.phase = int(self.rng.integers(FINE // RATE))
        self.watch = PanWatch(DIVISION, Source.SIMULATED)
        names = tuple(f"Team {number}" for number in range(cups))
        self.table: CupQueue = table(round_of(names), Pass.FILLED)

    @property
    def now(self) -> float:
        return self.tick / FINE

    def moment(self) -> float:
        """A hundredth of a second; what the pan would show without noise, in grams."""
        self.tick += 1
        sample = self.pan.advance(self.now)[-1]
        if self.tick % (FINE // RATE) == self.phase:
            self._tell(sample)
        return sample.quiet

    def _tell(self, sample: Sample) -> None:
        noisy = sample.quiet / float(DIVISION) + self.balance.noise * self.rng.standard_normal()
        grams = DIVISION * int(np.floor(noisy + 0.5))
        rests = not sample.touched and sample.off_rest <= float(DIVISION) / 2
        stable = rests if self.balance.flag else None
        for event in self.watch.reading(reading(grams, self.now, stable)):
            self.table.pan.note(event)
            for effect in self.table.step(event):
                if isinstance(effect, WeighAgain):
                    self.watch.weigh_again(self.now)

    def wait(self, seconds: float) -> None:
        for _ in range(round(seconds * FINE)):
            self.moment()

    def until(self, state: QueueState, resting: float) -> float:
        """Wait for that word; seconds since the pan came to rest at ``resting`` grams."""
        rested, begun = self.now, self.now
        while self.table.state is not state:
            if abs(self.moment() - resting) > float(DIVISION) / 2:
                rested = self.now
            if self.now - begun > PATIENCE_S:
                raise AssertionError(f"{state} did not come, but {self.table.state}")
        return self.now - rested


def round_of(names: tuple[str, ...]) -> RoundState:
    """A round of these teams, whose cups are out."""
    return weighed_empty(*[str(EMPTY_G)] * len(names), teams=names)


def hand_in(balance: Balance, cups: int, seed: int) -> Times:
    """Hand so many cups in, one after the other, each as soon as the table asks for it."""
    bench, times = Bench(balance, cups, seed), Times()
    bench.wait(2.0)
    for left in reversed(range(cups)):
        grams = float(bench.rng.uniform(40, 200))
        bench.pan.load(grams, bench.now)
        times.to_recorded.append(bench.until(QueueState.RECORDED, grams))
        times.off.append(_shown(bench) / float(DIVISION) - grams / float(DIVISION))
        bench.wait(HAND_S)
        bench.pan.load(0.0, bench.now)
        times.to_next.append(bench.until(QueueState.PUT_ON if left else QueueState.ALL_DONE, 0.0))
        bench.wait(HAND_S)
    return times


def _shown(bench: Bench) -> float:
    recorded = bench.table.recorded
    assert recorded is not None
    notes = bench.table.list.round.cup_notes(recorded.team.team)
    weighing = notes[-1][0].weighing
    assert weighing is not None
    return float(weighing.grams)
