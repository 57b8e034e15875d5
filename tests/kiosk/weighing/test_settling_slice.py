"""A slice of the settling table (tests/benchmarks/settling_table.py): every kind, a few loads."""

from __future__ import annotations

from itertools import cycle, pairwise

import numpy as np
import pytest

from kiosk.weighing.pan_events import PanKind
from tests.benchmarks.settling_table import POURS, kinds
from tests.helpers.settling_hazards import (
    pour_is_captured,
    poured_slowly,
    trembling_hand_is_captured,
)
from tests.helpers.settling_trials import Tally, try_kind

LOADS = 4
WRONG = 0.001
KINDS = list(kinds())
MOVED = (PanKind.DISTURBED, PanKind.LOAD_PLACED)


@pytest.fixture(scope="module")
def tallies() -> list[Tally]:
    return [try_kind(kind, LOADS, seed=100 + number) for number, kind in enumerate(KINDS)]


def test_hardly_a_load_is_captured_wrongly(tallies: list[Tally]) -> None:
    assert sum(tally.wrong for tally in tallies) <= WRONG * LOADS * len(KINDS)


def test_every_load_is_captured_and_once(tallies: list[Tally]) -> None:
    assert [tally.kind for tally in tallies if tally.never or tally.twice] == []


def test_no_pour_is_captured_while_it_rises() -> None:
    captured = [
        (kind, speed)
        for number, (kind, speed) in enumerate(zip(KINDS, cycle(POURS), strict=False))
        if pour_is_captured(kind, speed, np.random.default_rng([31, number]))
    ]
    assert captured == []


def test_no_trembling_hand_is_captured() -> None:
    captured = [
        kind
        for number, kind in enumerate(KINDS)
        if trembling_hand_is_captured(kind, np.random.default_rng([32, number]))
    ]
    assert captured == []


def test_a_tremor_that_cancels_itself_out_for_two_seconds_is_no_rest() -> None:
    number = 315
    rng, kind = np.random.default_rng([7, number]), KINDS[number % len(KINDS)]
    for speed in POURS:  # the table draws them first
        pour_is_captured(kind, speed, rng)
    assert not trembling_hand_is_captured(kind, rng)


@pytest.mark.parametrize("speed", [2.0, 4.0, 8.0])
def test_a_slow_pour_disturbs_and_settles_anew(speed: float) -> None:
    for number, kind in enumerate(KINDS[::7]):
        told, grams = poured_slowly(kind, speed, np.random.default_rng([33, number]))
        what = [event.kind for event in told]
        assert set(what) <= {*MOVED, PanKind.SETTLED}, kind
        assert what[-1] is PanKind.SETTLED, kind
        assert all(a in MOVED for a, b in pairwise(what) if b is PanKind.SETTLED), kind
        off = abs(float(told[-1].grams or 0) - grams) / kind.division
        assert off <= 1 + kind.noise, kind
