from __future__ import annotations

from collections.abc import Callable
from functools import reduce
from operator import xor
from zlib import crc32

import pytest

from drivers.learning.check_digits import is_check

HEADS = [f"ST,+{value:8.2f} g," for value in (0.0, 12.3, 52.18, 7.77, 100.0)]


def checked(check: Callable[[str], str], count: int = 5) -> bool:
    return is_check([(head + check(head), len(head)) for head in HEADS[:count]])


@pytest.mark.parametrize(
    "check",
    [
        lambda head: f"{reduce(xor, map(ord, head)):02X}",
        lambda head: f"{reduce(xor, map(ord, head)):03d}",
        lambda head: f"{reduce(xor, map(ord, head[1:-1])):02X}",
        lambda head: f"{sum(map(ord, head)) % 256:02X}",
        lambda head: f"{-sum(map(ord, head)) % 256:02X}",
        lambda head: f"{(sum(map(ord, head)) + 2 + 13) % 256:02X}",
        lambda head: f"{sum(map(ord, head)) % 100:02d}",
        lambda head: f"{sum(map(ord, head)) % 1000:03d}",
    ],
)
def test_the_usual_ways_of_checking_are_known(check: Callable[[str], str]) -> None:
    assert checked(check)


def test_two_lines_are_enough_if_nothing_is_added() -> None:
    assert checked(lambda head: f"{sum(map(ord, head)) % 256:02X}", 2)
    assert not checked(lambda head: f"{(sum(map(ord, head)) + 77) % 256:02X}", 2)


@pytest.mark.parametrize(
    "other",
    [
        lambda head: "42",
        lambda head: f"{float(head[4:12]):.0f}",
        lambda head: f"{crc32(head.encode()) % 256:02X}",
        lambda head: f"{sum(map(ord, head)):04d}",
    ],
    ids=["constant", "the mass", "another way", "too long"],
)
def test_what_checks_nothing_is_no_check(other: Callable[[str], str]) -> None:
    assert not checked(other)
