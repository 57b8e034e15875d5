"""Reads a line of a balance whose LineShape is known."""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal

from drivers.dialects.line_told import (
    NO_UNIT,
    UNCLEAR_SIGN,
    UNREADABLE_NUMBER,
    Told,
    bad_number,
    unknown_unit,
)
from drivers.dialects.line_words import (
    BASIS_WORDS,
    NO_NUMBER,
    Obstacle,
    basis_in,
    obstacle_in,
    shows_dashes,
    unusable,
    usual_stability,
)
from drivers.line_shape import BRACKET, LineShape, Mark, Place
from drivers.line_text import (
    Number,
    Word,
    after_number,
    bare,
    lone_signs,
    numbers_in,
    unit_named,
    words_in,
)

_CHECK = re.compile(r"[0-9A-F]{1,3}")
OTHER_DECIMALS = unusable("the number has other decimals than this balance used to send")


def read_shaped(line: str, shape: LineShape, last_unit: str | None) -> Told | None:
    """What the line tells; None if it does not have this shape.

    ``last_unit`` is the unit of the newest line that had one.
    """
    text, bracketed = bare(line)
    numbers = numbers_in(text, shape.point)
    if hindered := _hindered(text, numbers, shape):
        return hindered
    number = picked(numbers, shape.number)
    if number is None:
        return None
    before, after = words_beside(text, number)
    unit, unknown = _unit(text, number, numbers, shape)
    if not _has_its_length(line, unit, shape):
        return None
    value, obstacle = _value(text, number, numbers, shape)
    if obstacle is None and not _has_its_decimals(number, unit, shape):
        obstacle = OTHER_DECIMALS
    lacking = unit is None and unknown is None and shape.unit_lacks_while_moving
    if lacking:
        unit = last_unit
    if obstacle is None and unit is None:
        obstacle = NO_UNIT if unknown is None else unknown_unit(unknown)
    return Told(
        value=value,
        unit=unit,
        stable=_stability(shape, before, after, bracketed=bracketed, lacking=lacking),
        basis=basis_in([word.text for word in before + after]),
        obstacle=obstacle,
    )


def picked(numbers: Sequence[Number], index: int) -> Number | None:
    """The number at ``index``, from the left or, below zero, from the right; None if missing."""
    return numbers[index] if -len(numbers) <= index < len(numbers) else None


def words_beside(text: str, number: Number) -> tuple[list[Word], list[Word]]:
    """The words before and behind a number, with the columns that a Mark has."""
    after = [
        Word(word.text, number.end + word.column - len(text))
        for word in after_number(text[number.end :])
    ]
    return words_in(text[: number.start]), after


def _has_its_length(line: str, unit: str | None, shape: LineShape) -> bool:
    """Whether the line may be whole; a longer or shorter unit than usual may change its length."""
    more = 0 if unit is None else len(unit) - len(shape.unit)
    return not shape.lengths or not {len(line), len(line) - more}.isdisjoint(shape.lengths)


def _has_its_decimals(number: Number, unit: str | None, shape: LineShape) -> bool:
    """Whether no digit was lost; of another unit's decimals nothing is known."""
    known = bool(shape.point) and unit in (None, shape.unit) and shape.decimals is not None
    return not known or number.decimals == shape.decimals


def _hindered(text: str, numbers: Sequence[Number], shape: LineShape) -> Told | None:
    number = picked(numbers, shape.number)
    words = [word.text for word in words_in(text)]
    if number is not None:  # what follows it may be check characters, which could be any letters
        before, after = words_beside(text, number)
        behind = [word.text for word in after if not _CHECK.fullmatch(word.text)]
        words = [*(word.text for word in before), *behind]
    obstacle = obstacle_in(
        words,
        numbers=bool(numbers),
        more_over=shape.over_words,
        more_under=shape.under_words,
        more_errors=shape.error_words,
        harmless=_harmless(shape),
    )
    if obstacle is None and not numbers and shows_dashes(text):
        obstacle = NO_NUMBER
    return None if obstacle is None else Told(basis=basis_in(words), obstacle=obstacle)


def _harmless(shape: LineShape) -> set[str]:
    return {*shape.words, *(mark.text for mark in (shape.stable, shape.moving) if mark)}


def _value(
    text: str, number: Number, numbers: Sequence[Number], shape: LineShape
) -> tuple[Decimal | None, Obstacle | None]:
    """The mass with its sign, and what is against it."""
    value = number.value
    if value is None:
        return None, UNREADABLE_NUMBER
    if not shape.point and shape.decimals:
        value = value.scaleb(-shape.decimals)
    lone = [at for at in lone_signs(text, numbers) if text[at] not in shape.words]
    if shape.sign is Place.BEFORE:
        return value, bad_number(
            text, number, numbers, harmless=shape.words, in_a_row=shape.follows_digits
        )
    own = [at for at in lone if shape.sign is Place.APART or not text[number.end : at].strip()]
    if number.sign or len(lone) > 1 or lone != own:
        return value, UNCLEAR_SIGN
    return value.copy_negate() if lone and text[lone[0]] == "-" else value, None


def _unit(
    text: str, number: Number, numbers: Sequence[Number], shape: LineShape
) -> tuple[str | None, str | None]:
    """The unit, else the word that stands in its place, else neither."""
    if shape.unit_place is Place.NOWHERE:
        return shape.unit, None
    harmless = _harmless(shape) | BASIS_WORDS
    unknown = None
    for word in unit_words(text, number, numbers, shape.unit_place):
        if word in harmless or not word.isalpha():
            continue
        if unit := unit_named(word):
            return unit, None
        unknown = unknown or word
    return None, unknown


def unit_words(text: str, number: Number, numbers: Sequence[Number], place: Place) -> list[str]:
    """The words among which the unit of a number may stand, the nearest one first.

    What is glued to the next number belongs to that.
    """
    at = numbers.index(number)
    if place is Place.BEFORE:
        start = numbers[at - 1].end if at else 0
        return [word.text for word in reversed(words_in(text[start : number.start]))]
    end = numbers[at + 1].start if at + 1 < len(numbers) else len(text)
    words = after_number(text[number.end : end])
    if (
        words
        and at + 1 < len(numbers)
        and words[-1].column + len(words[-1].text) == end - number.end
    ):
        glued = words[-1].text.isalpha() and unit_named(words[-1].text) is None
        words = words[:-1] if glued else words
    return [word.text for word in words]


def _stability(
    shape: LineShape, before: list[Word], after: list[Word], *, bracketed: bool, lacking: bool
) -> bool | None:
    def shown(mark: Mark | None) -> bool:
        if mark is None:
            return False
        if mark.text == BRACKET:
            return bracketed
        side = before if mark.place is Place.BEFORE else after
        return any(w.text == mark.text and mark.column in (None, w.column) for w in side)

    if shown(shape.moving) or lacking:
        return False
    if shown(shape.stable):
        return True
    if shape.stable is not None:  # its absence says "moving" unless there is a word for that
        return False if shape.moving is None else None
    if shape.moving is not None or shape.unit_lacks_while_moving:
        return True
    return usual_stability([w.text for w in before], [w.text for w in after])
