"""Check characters at the end of a line: they change with every number, but weigh nothing.

Tried are sums and exclusive-ors of all that stands before them, in hexadecimal or decimal digits;
a constant beside the sum stands for line ends and the like that may have been counted in.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from functools import partial, reduce
from operator import xor

MOST_CHARACTERS = 3
_MODULI = (256, 1000, 128, 100, 16, 10)
_PARTING = re.compile(r"[^0-9A-Za-z]+$")
_RUN_BEFORE, _RUN_AFTER = re.compile(r"[0-9A-Za-z]*$"), re.compile(r"[0-9A-Za-z]*")


def is_check(lines: Sequence[tuple[str, int]]) -> bool:
    """True if the characters around a place of each line check what stands before them.

    ``lines`` are the texts and the place. What is constant checks nothing.
    """
    parts = [_cut(text, at) for text, at in lines]
    if any(len(run) > MOST_CHARACTERS for _, run in parts):
        return False
    return any(
        _matches(numbers, way)
        for numbers in (_numbers(parts, 16), _numbers(parts, 10))
        if numbers is not None
        for heads in _heads([head for head, _ in parts])
        for way in _ways(heads)
    )


def _cut(text: str, at: int) -> tuple[str, str]:
    start = at - len(_RUN_BEFORE.findall(text[:at])[0])
    found = _RUN_AFTER.match(text, start)
    return text[:start], found[0] if found else ""


def _numbers(parts: Sequence[tuple[str, str]], base: int) -> list[int] | None:
    try:
        return [int(run, base) for _, run in parts]
    except ValueError:
        return None


def _heads(heads: Sequence[str]) -> Iterator[list[str]]:
    """What may be counted: all that stands before, or not what parts it off, or not its start."""
    for first in (0, 1):
        yield [head[first:] for head in heads]
        yield [_PARTING.sub("", head)[first:] for head in heads]


def _ways(heads: Sequence[str]) -> list[tuple[list[int], Callable[[int, int], int]]]:
    """For each way of checking: its value line by line, and how a sent one differs from it."""
    sums = [sum(map(ord, head)) for head in heads]
    xors = [reduce(xor, map(ord, head), 0) for head in heads]
    negative = [-value for value in sums]
    rests = [partial(_rest, modulus) for modulus in _MODULI]
    return [(xors, xor), *((own, rest) for rest in rests for own in (sums, negative))]


def _rest(modulus: int, sent: int, own: int) -> int:
    return (sent - own) % modulus if sent < modulus else -1 - sent


def _matches(numbers: Sequence[int], way: tuple[list[int], Callable[[int, int], int]]) -> bool:
    own, difference = way
    differences = {difference(sent, value) for sent, value in zip(numbers, own, strict=True)}
    different = len(set(numbers))
    return len(differences) == 1 and (different >= 3 or (different == 2 and differences == {0}))
