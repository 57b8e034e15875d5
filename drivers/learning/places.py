"""Which characters of a line a LineShape takes for the number, the unit and the marks of rest."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from drivers.dialects.lines_shaped import picked, words_beside
from drivers.line_shape import BRACKET, LineShape, Mark, Place
from drivers.line_text import Number, Word, bare, numbers_in, unit_named


class Part(StrEnum):
    """What characters of a line mean."""

    NUMBER = "number"
    UNIT = "unit"
    STILL = "still"
    MOVING = "moving"


def parts_of(line: str, shape: LineShape) -> tuple[Part | None, ...]:
    """For each character of ``line`` the part to which it belongs, None for any other.

    All None where the line does not have the number that the shape names.
    """
    text, _ = bare(line)
    number = picked(numbers_in(text, shape.point), shape.number)
    if number is None:
        return (None,) * len(line)
    parts: list[Part | None] = [None] * len(text)
    for part, word in _words(text, number, shape):
        parts[word.column : word.column + len(word.text)] = [part] * len(word.text)
    parts[number.start : number.end] = [Part.NUMBER] * (number.end - number.start)
    return tuple(_with_brackets(line, parts, shape))


def _words(text: str, number: Number, shape: LineShape) -> Iterator[tuple[Part, Word]]:
    before, after = words_beside(text, number)
    for part, mark in ((Part.MOVING, shape.moving), (Part.STILL, shape.stable)):
        if mark is not None:
            side = before if mark.place is Place.BEFORE else after
            shown = (word for word in side if _is(word, mark))
            yield from ((part, _placed(word, text)) for word in shown)
    units = reversed(before) if shape.unit_place is Place.BEFORE else after
    unit = next((word for word in units if unit_named(word.text)), None)
    if unit is not None and shape.unit_place is not Place.NOWHERE:
        yield Part.UNIT, _placed(unit, text)


def _is(word: Word, mark: Mark) -> bool:
    return word.text == mark.text and mark.column in (None, word.column)


def _placed(word: Word, text: str) -> Word:
    """The word with its column from the left; behind the number they count from the right."""
    return word if word.column >= 0 else Word(word.text, len(text) + word.column)


def _with_brackets(line: str, parts: list[Part | None], shape: LineShape) -> Iterator[Part | None]:
    """The brackets that ``bare`` took away, put back among the parts."""
    of_brackets = None
    if shape.moving is not None and shape.moving.text == BRACKET:
        of_brackets = Part.MOVING
    elif shape.stable is not None and shape.stable.text == BRACKET:
        of_brackets = Part.STILL
    rest = iter(parts)
    for char in line:
        yield of_brackets if char in "[]" else next(rest)
