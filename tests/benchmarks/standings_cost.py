"""Prints what the standings of many teams cost beside the bare draws, and how much memory.

    python -m tests.benchmarks.standings_cost [--teams 2000]

``bare`` is numpy drawing the same random numbers and nothing else: for each of 4 000 draws one for
every cup and one for each of the six other keys. ``ranked`` is everything from estimates to
standings: exact scores, totals, places, and the range of places. Both are timed by turns in one
process, and the shortest of each counts. Ends with 1 if the ratio is 10 or more.
"""

from __future__ import annotations

import argparse
import sys
import tracemalloc
from collections.abc import Callable
from time import perf_counter

import numpy as np

from kiosk.estimating.place_ranges import DRAWS, SEED
from kiosk.estimating.standings import standings
from kiosk.settings import Rules, Task
from tests.helpers.rounds import crowd, keys

TIMES = 5
PROMISED = 10


def bare(teams: int) -> None:
    """The random numbers alone, in pieces that stay in the cache."""
    rng = np.random.default_rng(SEED)
    for _ in range(0, DRAWS, 100):
        rng.standard_normal((100, teams + len(Task) - 1))


def seconds(work: Callable[[], object]) -> float:
    """How long it takes once."""
    begin = perf_counter()
    work()
    return perf_counter() - begin


def main() -> int:
    """Print the table; 1 if the standings are dearer than promised."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--teams", type=int, default=2000)
    teams = parser.parse_args().teams
    given, answers, rules = keys("2"), crowd(teams), Rules()

    def ranked() -> object:
        return standings(given, answers, rules)

    pairs = [(seconds(lambda: bare(teams)), seconds(ranked)) for _ in range(TIMES)]
    draws, whole = (min(times) for times in zip(*pairs, strict=True))
    tracemalloc.start()
    ranked()
    _, peak = tracemalloc.get_traced_memory()
    print(f"{teams} teams: bare {draws:.3f} s, ranked {whole:.3f} s, ratio {whole / draws:.1f}")
    table = DRAWS * teams * np.dtype(float).itemsize
    print(f"memory {peak / 2**20:.0f} MiB; all totals at once: {table / 2**20:.0f} MiB")
    return int(whole >= PROMISED * draws)


if __name__ == "__main__":
    sys.exit(main())
