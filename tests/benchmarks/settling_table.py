"""Prints how settling does on simulated balances of many kinds, against a plain rule.

    python -m tests.benchmarks.settling_table [--loads 60]

Each line is one kind of balance with so many loads put on, left to rest and taken off: how many
settled wrongly (farther from the resting value than one division and one standard deviation of the
noise), never or twice, and the median time from true rest (the noiseless display stays within
half a division) to SETTLED, beside that of the plain rule "eight readings within one division" on
the same loads. ``limit`` is 0.7 of the plain rule's median, or 0.45 s above ten readings a second;
where the plain rule does not rightly capture 95 % of the loads it is 1.0 s, or nine readings below
ten a second. ``tau`` is the time constant of the filter, ``ma`` of a moving average.

Then what must not be captured: pours while they rise, a hand that trembles by eight divisions with
three times the noise. A hand that sways slowly under the filter of the simulated pan is told for
information: it can be as still as a load for as long as a load is given to settle.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from decimal import Decimal
from itertools import product
from statistics import median

import numpy as np

from tests.helpers.loads import Flag, Kind
from tests.helpers.settling_hazards import (
    pour_is_captured,
    swaying_hand_is_captured,
    trembling_hand_is_captured,
)
from tests.helpers.settling_trials import Tally, try_kind

RATES = (2.0, 5.0, 10.0, 25.0)
NOISES = (0.0, 0.3, 0.7, 1.5)
FILTERS = ((0.05, 0.0), (0.15, 0.0), (0.4, 0.0), (0.02, 0.5))
STEPS = ("0.001", "0.01", "0.1", "1")
POURS = (12.0, 20.0, 50.0)


def kinds() -> Iterator[Kind]:
    """Every pace, noise and filter; flags and readabilities take turns."""
    flags, steps = tuple(Flag), len(STEPS)
    grid = product(RATES, NOISES, FILTERS)
    for number, (rate, noise, (low_pass, average)) in enumerate(grid):
        yield Kind(
            readability=Decimal(STEPS[(number + number // steps) % steps]),
            noise=noise,
            filter_seconds=low_pass,
            averaging_seconds=average,
            rate=rate,
            flag=flags[(5 * number + number // 6) % len(flags)],
        )


def line(tally: Tally) -> str:
    """One kind of balance in words and numbers."""
    kind, plain = tally.kind, tally.plain_delays
    beside = f"{median(plain):6.2f}" if plain else "     -"
    late = "" if tally.delay <= tally.limit else "  LATE"
    return (
        f"{kind.rate:4.0f}/s {kind.readability!s:>5} g noise {kind.noise:3.1f} "
        f"tau {kind.filter_seconds:4.2f} ma {kind.averaging_seconds:3.1f} {kind.flag:8}"
        f"{tally.wrong:6}{tally.never:6}{tally.twice:6}{tally.delay:8.2f}{tally.limit:7.2f}"
        f"{beside}{len(plain) / tally.loads:7.0%}{tally.plain_wrong:6}{late}"
    )


def hazards(times: int) -> None:
    """Print how often something was captured that must not be, over all kinds."""
    pours = trembling = swaying = 0
    balances = list(kinds())
    for number, kind in enumerate(balances * times):
        rng = np.random.default_rng([7, number])
        pours += sum(pour_is_captured(kind, speed, rng) for speed in POURS)
        trembling += trembling_hand_is_captured(kind, rng)
        swaying += swaying_hand_is_captured(kind, number, rng)
    tried = len(balances) * times
    print(f"pours captured while they rise: {pours} of {tried * len(POURS)}")
    print(f"trembling hands captured in ten seconds: {trembling} of {tried}")
    print(f"slowly swaying hands captured in ten seconds: {swaying} of {tried}")


def main() -> None:
    """Print the table, the totals and the hazards."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--loads", type=int, default=60)
    loads = parser.parse_args().loads
    print(f"{'kind of balance':56} wrong never twice  median  limit plain rights wrong")
    tallies = []
    for number, kind in enumerate(kinds()):
        tallies.append(try_kind(kind, loads, seed=number))
        print(line(tallies[-1]), flush=True)
    total = sum(tally.loads for tally in tallies)
    wrong, never, twice = (
        sum(getattr(tally, name) for tally in tallies) for name in ("wrong", "never", "twice")
    )
    late = sum(tally.delay > tally.limit for tally in tallies)
    print(f"{total} loads: {wrong} wrong ({1000 * wrong / total:.2f} in 1000), {never} never,")
    print(f"{twice} twice; late kinds {late} of {len(tallies)};")
    print(f"the plain rule: {sum(tally.plain_wrong for tally in tallies)} wrong")
    hazards(times=max(1, loads // 20))


if __name__ == "__main__":
    main()
