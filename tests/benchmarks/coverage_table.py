"""Prints how often the 95 % interval of a count key holds the true number, over the corners.

    python -m tests.benchmarks.coverage_table [--jars 1000]

Simulated jars (tests/helpers/jars.py) of every combination of k samples of n pieces, scatter c,
sample mass in steps d of the balance, and N pieces in the jar; pieces from outside or from the
container (then only k n <= N/2); samples one by one in the emptied tray, or each added to the
others; with no prior knowledge, and with the right scatter as a prior. Coverage is that of the
jars that got an answer. A corner is judged when at least 95 % of its jars did. Where many are
refused because their samples scatter too much, the rest are those that look better than they are:
however much their samples agree, their mean is off as much as any, and an interval of at most 10 %
cannot hold that. There ``not misled`` is judged instead: the share of all jars that were refused or
got an interval that holds.
``width`` is the median half width over the best one possible with the scatter known.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import product
from math import sqrt
from statistics import mean, median

from kiosk.estimating.count_key import CountKey, count_key
from tests.helpers.jars import Case, as_input, jars

PROMISED = 0.945
MOSTLY_ANSWERED = 0.95
SAMPLES = (2, 3, 4, 5, 10)
PIECES = (10, 100, 500)
SCATTER = (0.005, 0.05, 0.12, 0.25)
STEPS = (22.19, 30.5, 45.1, 100.15, 200.0, 3000.3)  # mass of a sample in steps of the balance
READABILITY = (Decimal("0.001"), Decimal("0.01"), Decimal("0.1"), Decimal(1))
JARS = (50, 1_000, 20_000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What came out of one corner."""

    case: Case
    answered: float
    covered: float
    width: float

    @property
    def not_misled(self) -> float:
        """The share of all jars that were refused or got an interval that holds."""
        return 1 - self.answered * (1 - self.covered)


def corners(*, in_fill: bool) -> Iterator[Case]:
    """The corners that the contract does not refuse for their divisions."""
    grid = product(SAMPLES, PIECES, SCATTER, STEPS, JARS)
    for place, (number, pieces, cv, steps, true) in enumerate(grid):
        if in_fill and number * pieces > true / 2:
            continue
        step = READABILITY[place % len(READABILITY)]
        if steps * true / pieces >= 20:
            piece = steps * float(step) / pieces
            shape = "lognormal" if place % 3 == 0 and pieces * number <= 300 else "gamma"
            yield Case(
                number=number, pieces=pieces, cv=cv, step=step, piece=piece, true=true,
                in_fill=in_fill, shape=shape,
            )  # fmt: skip


def outcome(case: Case, how_many: int, seed: int, *, known: bool) -> Outcome:
    """Make the keys of so many jars of one corner."""
    prior = Decimal(str(100 * case.cv)) if known else None
    keys = [
        key
        for samples, net in jars(case, how_many, seed)
        if isinstance(key := count_key(as_input(case, samples, net, prior)), CountKey)
    ]
    held = sum(key.low <= case.true <= key.high for key in keys)
    width = median(float(key.half_width_percent) for key in keys) if keys else 0.0
    return Outcome(
        case=case,
        answered=len(keys) / how_many,
        covered=held / len(keys) if keys else 1.0,
        width=width / best_percent(case),
    )


def best_percent(case: Case) -> float:
    """1.96 standard uncertainties with the scatter known, in per cent of the count."""
    step = float(case.step) / case.piece  # in pieces
    of_sample = case.cv * sqrt(case.pieces)
    share = 1 / case.number if of_sample >= 0.4 * step else 1.0
    readings = 2 / case.number**2 if case.added else 1 + share
    sign = -1 if case.in_fill else 1
    pieces = case.cv**2 * (1 / (case.number * case.pieces) + sign / case.true)
    rounding = step**2 / 12 * (readings / case.pieces**2 + 2 / case.true**2)
    return 196 * sqrt(pieces + rounding)


def print_table(title: str, outcomes: list[Outcome], how_many: int) -> None:
    """One line for each k and n, the worst corner of each, and what lies below the promise."""
    judged = [each for each in outcomes if each.answered >= MOSTLY_ANSWERED]
    chance = 3 * sqrt(PROMISED * (1 - PROMISED) / how_many)
    low = [each for each in judged if each.covered < PROMISED - chance]
    print(f"\n{title}: {len(judged)} corners judged of {len(outcomes)}")
    print("  k    n   corners   lowest   mean    widest")
    for number, pieces in product(SAMPLES, PIECES):
        cell = [e for e in judged if (e.case.number, e.case.pieces) == (number, pieces)]
        if cell:
            lowest, widest = min(e.covered for e in cell), max(e.width for e in cell)
            usual = mean(each.covered for each in cell)
            print(
                f"{number:3d} {pieces:4d} {len(cell):9d} {lowest:8.3f} {usual:6.3f} {widest:9.2f}"
            )
    print(f"  below {PROMISED} by more than three deviations of the simulation: {len(low)}")
    for each in low:
        print(f"    {each.covered:.3f}  {each.case}")
    if judged:
        print(f"  mean width {mean(each.width for each in judged):.2f}")
    print("  refused    corners   lowest   not misled")
    for least, most in ((0.0, 0.05), (0.05, 0.1), (0.1, 0.5), (0.5, 0.95)):
        group = [e for e in outcomes if least <= 1 - e.answered < most]
        if group:
            lowest, held = min(e.covered for e in group), min(e.not_misled for e in group)
            print(f"  {least:4.0%} - {most:4.0%} {len(group):7d} {lowest:8.3f} {held:12.3f}")


def main() -> None:
    """Print the eight tables."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--jars", type=int, default=1000, help="simulated jars a corner")
    how_many = parser.parse_args().jars
    for added, known, in_fill in product((False, True), repeat=3):
        outcomes = [
            outcome(replace(case, added=added), how_many, seed, known=known)
            for seed, case in enumerate(corners(in_fill=in_fill))
        ]
        knowledge = "scatter known beforehand" if known else "samples alone"
        origin = "pieces from the container" if in_fill else "pieces from outside"
        way = "each added to the others" if added else "one by one in the emptied tray"
        print_table(f"{knowledge}, {origin}, {way}", outcomes, how_many)


if __name__ == "__main__":
    main()
