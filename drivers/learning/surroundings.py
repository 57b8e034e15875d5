"""What stands around the mass: its unit, its sign, and other words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass

from drivers.dialects.lines_shaped import words_beside
from drivers.learning.mass_field import MassField
from drivers.line_shape import Place, SignPlace, UnitPlace
from drivers.line_text import is_grouped, lone_signs, unit_named

MANY = 0.2
_MOST = 0.8
_HARDLY_ANY = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitFound:
    """The unit's short name, ``sent`` the words for it, and whether lines that move lack it."""

    unit: str
    place: UnitPlace
    lacks_while_moving: bool
    sent: frozenset[str]


def unit_of(field: MassField) -> UnitFound | None:
    """The unit that stands beside the mass at rest; None if there is none."""
    places: tuple[UnitPlace, ...] = (Place.AFTER, Place.BEFORE)
    for place in places:
        words = [_unit_at(field, at, place) for at in range(len(field.lines))]
        at_rest = [word for at in field.deep if (word := words[at]) is not None]
        if len(at_rest) < _MOST * len(field.deep):
            continue
        sent = frozenset(word for word in words if word is not None)
        usual = Counter(unit_named(word) for word in at_rest).most_common(1)[0][0]
        assert usual is not None  # every one of these words is a unit
        lacking_at_rest = len(field.deep) - len(at_rest)
        lacking = words.count(None) - lacking_at_rest
        lacks = lacking > 0 and lacking_at_rest <= _HARDLY_ANY * len(field.deep)
        return UnitFound(unit=usual, place=place, lacks_while_moving=lacks, sent=sent)
    return None


def _unit_at(field: MassField, at: int, place: UnitPlace) -> str | None:
    word = field.unit_at(at, place)
    # Before a number a G means gross far more often than grams.
    return None if place is Place.BEFORE and word == "G" else word


def sign_of(field: MassField) -> tuple[SignPlace, bool]:
    """Where the sign stands; and whether the lines hold dashes that are none."""
    seen = [
        (field.found[at], line.text, list(lone_signs(line.text, line.numbers(field.point))))
        for at, line in enumerate(field.lines)
    ]
    lone = [(number, text, places[0]) for number, text, places in seen if places]
    if not lone:
        return Place.BEFORE, False
    signs = Counter(text[at] for _, text, at in lone)
    if len(lone) == len(seen) and set(signs) == {"-"}:
        return Place.BEFORE, True
    behind = sum(
        number.end <= at and not text[number.end : at].strip() for number, text, at in lone
    )
    return (Place.AFTER if 2 * behind > len(lone) else Place.APART), False


def words_of(field: MassField, not_words: Collection[str]) -> tuple[str, ...]:
    """Words with letters in many of the lines at rest, in order, but for ``not_words``.

    Check characters that happen to be letters change too often to be among them.
    """
    found: Counter[str] = Counter()
    for at in field.deep:
        before, after = words_beside(field.lines[at].text, field.found[at])
        found.update({word.text for word in before + after})
    usual = {word for word, count in found.items() if count > MANY * len(field.deep)}
    return tuple(sorted(w for w in usual - set(not_words) if any(c.isalpha() for c in w)))


def follows_digits(field: MassField) -> bool:
    """Whether the mass stands right behind another number in most lines."""
    grouped = sum(is_grouped(field.lines[at].text, field.found[at]) for at in field.deep)
    return 2 * grouped > len(field.deep)
