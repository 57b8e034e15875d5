"""Which words of a line say that the balance rests, and which that it moves.

A mark of rest stands in the lines of every rest and not in those between rests; a mark of motion
does the opposite. Nothing is taken for a mark because of what it usually means, unless it never
changed: then ST and US count, as balances send them before the number (common practice, no source).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from drivers.dialects.lines_shaped import words_beside
from drivers.learning.mass_field import MassField
from drivers.line_shape import BRACKET, Mark, Place

LEAST_SCORE = 0.25  # by how much more often at rest than in motion, or the other way round
ALWAYS = 0.95
_USUAL_STABLE, _USUAL_MOVING = "ST", "US"
_EARLY = 4  # that part of a rest may still be said to move

_Feature = tuple[Place, str, int | None]  # with a column, and once more without
_Line = set[_Feature]


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks found; ``clear`` from 0 to 1 says how regularly they came, 0 without any."""

    stable: Mark | None = None
    moving: Mark | None = None
    clear: float = 0.0


def marks_of(field: MassField, units: frozenset[str]) -> Marks:
    """The marks of these lines; ``units`` are the words sent as units, which are none."""
    lines = [_features(field, at, units) for at in range(len(field.lines))]
    rests = [[lines[at] for at in group] for group in _by_level(field)]
    found = max(
        (_found(rests, [[lines[at] for at in way] for way in ways]) for ways in _ways(field)),
        key=lambda marks: marks.clear,
        default=Marks(),
    )
    return found if found.clear else _usual(lines)


def _features(field: MassField, at: int, units: frozenset[str]) -> _Line:
    line = field.lines[at]
    before, after = words_beside(line.text, field.found[at])
    features: _Line = {(Place.AFTER, BRACKET, None)} if line.bracketed else set()
    for place, words in ((Place.BEFORE, before), (Place.AFTER, after)):
        for word in words:
            if word.text not in units and word.text not in "+-":
                features |= {(place, word.text, None), (place, word.text, word.column)}
    return features


def _by_level(field: MassField) -> list[list[int]]:
    """The positions of deep rest, those on the first level apart from those on others."""
    first = field.rests[0].level
    near = field.series.span / 10
    groups: tuple[list[int], list[int]] = ([], [])
    for rest in field.rests:
        groups[abs(rest.level - first) > near].extend(rest.deep)
    return [group for group in groups if group]


def _ways(field: MassField) -> list[list[list[int]]]:
    """Positions on the ways from rest to rest: once those alone, once with the rests' beginnings.

    Some balances say for a second that they move when they have come to rest already.
    """
    ways = [(before.end, after.start, after) for before, after in pairwise(field.rests)]
    alone = [list(range(start, end)) for start, end, _ in ways if end > start]
    longer = [list(range(start, end + (r.end - r.start) // _EARLY + 1)) for start, end, r in ways]
    return [alone, longer] if alone else [longer]


def _found(rests: Sequence[Sequence[_Line]], ways: Sequence[Sequence[_Line]]) -> Marks:
    at_rest = [_shares(group) for group in rests]
    each_way = [_shares(way) for way in ways]
    on_ways = [line for way in ways for line in way]
    in_motion = _shares(on_ways)
    moving_score: dict[_Feature, float] = {}
    stable_score: dict[_Feature, float] = {}
    for feature in in_motion.keys() | set[_Feature]().union(*at_rest):
        resting = [shares.get(feature, 0.0) for shares in at_rest]
        moving_share = in_motion.get(feature, 0.0)
        # A clock shows each of its numbers once, perhaps on one of the ways.
        each = [shares.get(feature, 0.0) for shares in each_way] if _has_digit(feature) else []
        moving_score[feature] = min([moving_share, *each]) - max(resting)
        stable_score[feature] = min(resting) - moving_share
    every = [*on_ways, *(line for group in rests for line in group)]
    moving, stable = _best(moving_score), _best(stable_score)
    if moving and not stable:
        stable = _opposite(stable_score, moving, every)
    elif stable and not moving:
        moving = _opposite(moving_score, stable, every)
    scores = [s[f] for f, s in ((moving, moving_score), (stable, stable_score)) if f]
    return Marks(_mark(stable), _mark(moving), max(scores, default=0.0))


def _shares(lines: Sequence[_Line]) -> dict[_Feature, float]:
    """In what share of the lines each feature is."""
    counts = Counter(feature for line in lines for feature in line)
    return {feature: count / len(lines) for feature, count in counts.items()}


def _best(scores: dict[_Feature, float]) -> _Feature | None:
    """The clearest word that counts wherever it stands; of equals letters, then brackets."""
    good = [f for f, score in scores.items() if f[2] is None and score >= LEAST_SCORE]
    return max(good, key=lambda f: (round(scores[f], 2), _plainness(f[1]), f[1]), default=None)


def _opposite(
    scores: dict[_Feature, float], mark: _Feature, lines: Sequence[_Line]
) -> _Feature | None:
    """The word in the column of a mark when that is not there, in lines of as many words.

    It may be a letter that another column holds in every line.
    """
    place, text, _ = mark
    with_mark = [line for line in lines if mark in line]
    columns = {f[2] for line in with_mark for f in line if f[:2] == (place, text)} - {None}
    sizes = {_size(line, place) for line in with_mark}
    good = [
        f
        for f, score in scores.items()
        if f[0] is place
        and f[2] in columns
        and score >= LEAST_SCORE
        and any(f in line and _size(line, place) in sizes for line in lines)
    ]
    return max(good, key=lambda f: scores[f], default=None)


def _size(line: _Line, place: Place) -> int:
    return sum(f[0] is place and f[2] is not None for f in line)


def _has_digit(feature: _Feature) -> bool:
    return any(char.isdigit() for char in feature[1])


def _plainness(text: str) -> int:
    if text.isalpha():
        return 2
    return 1 if text == BRACKET else 0


def _mark(feature: _Feature | None) -> Mark | None:
    if feature is None:
        return None
    place, text, column = feature
    return Mark.model_validate({"text": text, "place": place, "column": column})


def _usual(lines: Sequence[_Line]) -> Marks:
    shares = _shares(lines)

    def always(text: str) -> Mark | None:
        feature = (Place.BEFORE, text, None)
        return _mark(feature) if shares.get(feature, 0.0) >= ALWAYS else None

    return Marks(always(_USUAL_STABLE), always(_USUAL_MOVING))
