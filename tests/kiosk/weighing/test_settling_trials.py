"""Loads put on simulated balances of many kinds: captured rightly, once, and soon."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tests.helpers.loads import Flag, Kind
from tests.helpers.settling_trials import Tally, try_kind

LOADS = 12
KINDS = [
    Kind(readability=Decimal(step), noise=noise, filter_seconds=slow, rate=rate, flag=flag)
    for step, noise, slow, rate, flag in [
        ("0.1", 0.0, 0.1, 10, Flag.NONE),
        ("0.1", 0.3, 0.1, 10, Flag.HONEST),
        ("0.1", 0.3, 0.1, 10, Flag.EARLY),
        ("0.1", 1.0, 0.1, 10, Flag.FLICKER),
        ("0.1", 1.5, 0.5, 10, Flag.NONE),
        ("0.1", 0.0, 0.5, 10, Flag.ALWAYS),
        ("0.1", 0.3, 0.1, 2, Flag.NONE),
        ("0.1", 0.0, 0.1, 5, Flag.NEVER),
        ("0.1", 0.3, 0.1, 25, Flag.NONE),
        ("0.001", 1.0, 0.1, 10, Flag.NONE),
        ("1", 0.0, 0.1, 10, Flag.NONE),
        ("1", 0.3, 0.5, 25, Flag.HONEST),
    ]
]


@pytest.fixture(scope="module")
def tallies() -> list[Tally]:
    return [try_kind(kind, LOADS, seed=5) for kind in KINDS]


def test_no_load_is_captured_wrongly(tallies: list[Tally]) -> None:
    assert [tally.kind for tally in tallies if tally.wrong] == []


def test_every_load_is_captured(tallies: list[Tally]) -> None:
    assert [tally.kind for tally in tallies if tally.never] == []


def test_no_load_is_captured_twice(tallies: list[Tally]) -> None:
    assert [tally.kind for tally in tallies if tally.twice] == []


def test_captures_come_sooner_than_by_the_plain_rule(tallies: list[Tally]) -> None:
    late = [tally.kind for tally in tallies if tally.delay > tally.limit + 0.05]
    assert late == []
