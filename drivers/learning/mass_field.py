"""Which of the numbers in the lines is the mass: the one that goes with the load.

A clock and a counter change while the pan rests, an identity never changes, check characters jump:
none of them is a mass. Where two numbers go with the load nobody can say which is meant.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from statistics import correlation

from drivers.dialects.lines_shaped import picked, unit_words
from drivers.learning.check_digits import is_check
from drivers.learning.findings import Refusal
from drivers.learning.heard_lines import HeardLine
from drivers.learning.rests import Rest, Series, follows_load, moves_with_load, rests_of
from drivers.learning.steps import step_of
from drivers.line_shape import Place
from drivers.line_text import Number, unit_named

MOST_NUMBERS = 12
MOST_DECIMALS = 4
LEAST_SHARE = 0.8  # of the lines must have the number
_RELATED = 0.9
_FEWEST_PAIRS = 5


@dataclass(frozen=True)
class MassField:
    """One of the numbers of the lines: ``number`` as in LineShape, its lines, what it was there."""

    point: str
    number: int
    lines: list[HeardLine]
    found: list[Number]

    @cached_property
    def decimals(self) -> int:
        """The usual number of decimals."""
        return Counter(number.decimals for number in self.found).most_common(1)[0][0]

    @cached_property
    def step(self) -> Decimal:
        """The readability, as far as the numbers tell it."""
        usual = (n.value for n in self.found if n.decimals == self.decimals)
        return step_of((value for value in usual if value is not None), self.decimals)

    @cached_property
    def series(self) -> Series:
        """The values over time."""
        return Series(
            times=[line.at for line in self.lines],
            values=[float(number.value or 0) for number in self.found],
            step=float(self.step),
        )

    @cached_property
    def rests(self) -> list[Rest]:
        """Where it rests."""
        return rests_of(self.series)

    @cached_property
    def deep(self) -> list[int]:
        """Positions at which the balance surely rested."""
        return [at for rest in self.rests for at in rest.deep]

    def unit_at(self, at: int, place: Place = Place.AFTER) -> str | None:
        """The word beside the number that is a unit, as sent, in the line at a position."""
        line = self.lines[at]
        words = unit_words(line.text, self.found[at], line.numbers(self.point), place)
        return next((word for word in words if unit_named(word)), None)

    @cached_property
    def has_unit(self) -> bool:
        """Whether a unit follows it in most lines at rest."""
        return 2 * sum(self.unit_at(at) is not None for at in self.deep) > len(self.deep)


def mass_field(lines: Sequence[HeardLine]) -> MassField | Refusal:
    """The mass, or why there is none."""
    followers = _followers(lines, ",")
    if len(followers) == 1 and _is_comma_number(followers[0]):
        return followers[0]
    followers = _followers(lines, ".")
    if not followers:
        moved = any(moves_with_load(f.series, f.rests) for f in _fields(lines, "."))
        return Refusal.NOT_RETURNED if moved else Refusal.NEVER_CHANGED
    return _the_one(followers)


def _fields(lines: Sequence[HeardLine], point: str) -> list[MassField]:
    most = min(MOST_NUMBERS, max((len(line.numbers(point)) for line in lines), default=0))
    fields: list[MassField] = []
    known: set[tuple[int, ...]] = set()
    for index in (*range(most), *range(-1, -most - 1, -1)):
        having = [
            (line, number)
            for line in lines
            if (number := picked(line.numbers(point), index)) is not None
            and number.value is not None
        ]
        places = tuple(number.start for _, number in having)
        if len(having) >= LEAST_SHARE * len(lines) and places not in known:
            known.add(places)
            fields.append(MassField(point, index, [h[0] for h in having], [h[1] for h in having]))
    return fields


def _followers(lines: Sequence[HeardLine], point: str) -> list[MassField]:
    return [
        field
        for field in _fields(lines, point)
        if follows_load(field.series, field.rests) and not _checks(field)
    ]


def _checks(field: MassField) -> bool:
    places = [number.end - len(number.digits) for number in field.found]
    return is_check([(line.text, at) for line, at in zip(field.lines, places, strict=True)])


def _is_comma_number(field: MassField) -> bool:
    """True if the commas are decimal signs, and do not part two fields of a list."""
    halves = [number.digits.split(",") for number in field.found if "," in number.digits]
    if len(halves) < LEAST_SHARE * len(field.found) or not field.has_unit:
        return False
    whole = {int(left): int(right) for left, right in halves}
    if len(whole) == 1:
        return 0 in whole  # else a station's number, and a mass without decimals behind it
    if field.decimals > MOST_DECIMALS:
        return False
    return len(whole) < _FEWEST_PAIRS or not _correlated(list(whole), list(whole.values()))


def _the_one(followers: Sequence[MassField]) -> MassField | Refusal:
    with_unit = [field for field in followers if field.has_unit]
    if len(followers) == 1:
        return followers[0]
    if len(with_unit) != 1:
        return Refusal.TWO_FIELDS
    mass = with_unit[0]
    related = (_related(mass, other) for other in followers if other is not mass)
    return Refusal.TWO_FIELDS if any(related) else mass


def _related(mass: MassField, other: MassField) -> bool:
    """False only if it is plain that the other one jumps about while the mass moves.

    Those are check characters of a kind that is not known.
    """
    values = dict(zip(map(id, other.lines), other.series.values, strict=True))
    pairs = {
        value: values[id(line)]
        for line, value in zip(mass.lines, mass.series.values, strict=True)
        if id(line) in values
    }
    return len(pairs) < _FEWEST_PAIRS or _correlated(list(pairs), list(pairs.values()))


def _correlated(left: Sequence[float], right: Sequence[float]) -> bool:
    if len(set(right)) == 1:
        return False
    return abs(correlation(left, right)) > _RELATED
