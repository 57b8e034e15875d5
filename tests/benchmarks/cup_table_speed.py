"""Prints how long the cup table lets hands wait, on simulated balances of many kinds.

    python -m tests.benchmarks.cup_table_speed [--cups 40]

Each line is one kind of balance with ten readings a second: so many cups are handed in, each as
soon as the table asks for it. "recorded" are the seconds from the moment that the cup truly rests
(the noiseless display stays within half a division) to the word that it is recorded, "next" those
from the resting empty pan to the word that the next cup may come: median, 95 % and longest. What
hands and balance need is not in them. The last line is what keeping one cup takes on this disk,
which comes on top.
"""

from __future__ import annotations

import argparse
import time
from itertools import product
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from kiosk.records.round_notes import RoundNote
from kiosk.records.store import Store
from kiosk.rounds.contents import CupNote, CupTurn
from tests.helpers.queue_trials import Balance, Times, hand_in, round_of
from tests.helpers.round_notes import said
from tests.helpers.weighings import weighed

MOST_S = 0.7
NOISES = (0.0, 0.15, 0.3)
FILTERS = (0.05, 0.12, 0.25, 0.4)
DAMPINGS = (0.25, 0.5)
KEPT = 40


def kinds() -> list[Balance]:
    """Every noise, filter and damping, with an honest flag of rest and without any."""
    return [
        Balance(noise=noise, filter_seconds=slow, damping=damping, flag=flag)
        for noise, slow, damping, flag in product(NOISES, FILTERS, DAMPINGS, (False, True))
    ]


def line(balance: Balance, times: Times) -> str:
    """One kind of balance in words and numbers."""
    late = sum(each > MOST_S for each in (*times.to_recorded, *times.to_next))
    flag = "flag" if balance.flag else ""
    return (
        f"noise {balance.noise:4.2f} filter {balance.filter_seconds:4.2f} s damping "
        f"{balance.damping:4.2f} {flag:4}   recorded {spread(times.to_recorded)}   "
        f"next {spread(times.to_next)}   over {MOST_S} s: {late}"
    )


def spread(seconds: list[float]) -> str:
    """Median, 95 % and longest."""
    return f"{np.median(seconds):4.2f} {np.quantile(seconds, 0.95):4.2f} {max(seconds):4.2f} s"


def keeping(notes: int = KEPT) -> list[float]:
    """Seconds that it takes to keep one cup, each after the other."""
    names = tuple(f"Team {number}" for number in range(notes))
    state = round_of(names)
    for name in names:
        note = CupNote(team=name.lower(), turn=CupTurn.FILLED)
        state = said(state, note, weighing=weighed("110.0"), zero=weighed("0.0"))
    every = [each.note for chain in state.chains.values() for each in chain]
    filled = [note for note in every if CupTurn.FILLED.value in note.content and note.weighing]
    before = [note for note in every if note not in filled]
    with TemporaryDirectory(prefix="gramstand-") as folder:
        store = Store(str(Path(folder) / "records"))
        store.save(*sorted(before, key=lambda note: note.id != state.id))
        seconds = [_save(store, note) for note in filled]
        store.close()
    return seconds


def _save(store: Store, note: RoundNote) -> float:
    begun = time.perf_counter()
    store.save(note)
    return time.perf_counter() - begun


def main() -> None:
    """Print the table and the totals."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--cups", type=int, default=40)
    cups = parser.parse_args().cups
    recorded: list[float] = []
    following: list[float] = []
    for number, balance in enumerate(kinds()):
        times = hand_in(balance, cups, seed=number)
        recorded += times.to_recorded
        following += times.to_next
        print(line(balance, times), flush=True)
    print(f"all: recorded {spread(recorded)}   next {spread(following)}")
    print(f"keeping a cup: {spread(keeping())}")


if __name__ == "__main__":
    main()
