"""Reads a line of a balance of which nothing is known.

One number, its sign perhaps apart from it, and right behind it a unit of mass; nothing is guessed.
Several numbers, an unknown unit or none, dashes, a word like OL or Err: no mass, with the reason.
"""

from __future__ import annotations

from drivers.dialects.line_told import (
    NO_UNIT,
    SEVERAL_NUMBERS,
    Told,
    bad_number,
    unknown_unit,
)
from drivers.dialects.line_words import (
    NO_NUMBER,
    basis_in,
    obstacle_in,
    shows_dashes,
    usual_stability,
)
from drivers.line_text import (
    Number,
    after_number,
    bare,
    numbers_in,
    point_of,
    unit_named,
    words_in,
)


def read_unknown(line: str) -> Told | None:
    """What the line tells; None if it is no line of a balance: start-up text, half a line."""
    text, bracketed = bare(line)
    numbers = numbers_in(text, point_of(text))
    words = [word.text for word in words_in(text)]
    basis = basis_in(words)
    obstacle = obstacle_in(words, numbers=bool(numbers))
    if obstacle is None and not numbers and shows_dashes(text):
        obstacle = NO_NUMBER
    if obstacle is None and len(numbers) > 1:
        obstacle = SEVERAL_NUMBERS
    if obstacle is not None:
        return Told(stable=usual_stability(words, ()), basis=basis, obstacle=obstacle)
    return _with_number(text, numbers[0], bracketed) if numbers else None


def _with_number(text: str, number: Number, bracketed: bool) -> Told:
    before = [word.text for word in words_in(text[: number.start])]
    after = [word.text for word in after_number(text[number.end :])]
    behind = [word for word in after if word.isalpha()]
    unit = unit_named(behind[0]) if behind else None
    stable = usual_stability(before, behind[1:] if unit else ())
    obstacle = bad_number(text, number, [number])
    if obstacle is None and unit is None:
        obstacle = unknown_unit(behind[0]) if behind else NO_UNIT
    if bracketed and not behind and stable is None:
        stable = False  # the last digit is not verified, and the unit is held back
    return Told(
        value=number.value,
        unit=unit,
        stable=stable,
        basis=basis_in(before + after),
        obstacle=obstacle,
    )
