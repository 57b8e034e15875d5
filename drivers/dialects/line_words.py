"""Words that balances send beside a number, or in its place (common practice, no source).

They hold where nothing better is known of a balance: see LineShape for what has been learned.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from drivers.reading import Basis, Fault, Range

OVER_WORDS = frozenset({"OL", "OVER", "OVERLOAD"})
UNDER_WORDS = frozenset({"UL", "UNDER", "UNDERLOAD"})
# These also head lines with a good number; only in place of one do they say where the load is.
OVER_ALONE = frozenset({"H", "HI"})
UNDER_ALONE = frozenset({"L", "LO"})
STILL, MOVING = frozenset({"ST", "S"}), frozenset({"US", "D", "M"})
_ANYWHERE_BEFORE = frozenset({"ST", "US"})
_GROSS, _NET = frozenset({"GS", "GROSS"}), frozenset({"NT", "NET"})
BASIS_WORDS = _GROSS | _NET
_ERROR = re.compile(r"(?:E|ERR|ERROR)[0-9]*")
_CALIBRATION = re.compile(r"CAL(?:IB(?:RAT(?:E|ION))?)?")
_NO_DIGITS = re.compile(r"[-_^=~]{3,}")


@dataclass(frozen=True, slots=True)
class Obstacle:
    """Why a line carries no usable mass."""

    range: Range
    reason: str
    fault: Fault | None = None


OVERLOADED = Obstacle(Range.OVER, "there is more on the pan than the balance can weigh")
UNDERLOADED = Obstacle(Range.UNDER, "there is less on the pan than the balance can weigh")
UNCALIBRATED = Obstacle(Range.UNUSABLE, "the balance needs to be calibrated", Fault.CALIBRATION)
NO_NUMBER = Obstacle(Range.UNUSABLE, "the balance shows no number")


def unusable(reason: str, fault: Fault | None = None) -> Obstacle:
    """A number that must not be used."""
    return Obstacle(Range.UNUSABLE, reason, fault)


def obstacle_in(
    words: Sequence[str],
    *,
    numbers: bool,
    more_over: Collection[str] = (),
    more_under: Collection[str] = (),
    more_errors: Collection[str] = (),
    harmless: Collection[str] = (),
) -> Obstacle | None:
    """What the words of a line say against its number; ``numbers`` tells if it has any.

    ``more_...`` are words of this balance, ``harmless`` those that all its lines may hold.
    """
    said = [word for word in words if word not in harmless]

    def any_of(usual: Collection[str], more: Collection[str] = ()) -> str | None:
        return next((word for word in said if word.upper() in usual or word in more), None)

    if any_of(OVER_WORDS, more_over) or (not numbers and any_of(OVER_ALONE)):
        return OVERLOADED
    if any_of(UNDER_WORDS, more_under) or (not numbers and any_of(UNDER_ALONE)):
        return UNDERLOADED
    error = next((w for w in said if _ERROR.fullmatch(w.upper()) or w in more_errors), None)
    if error:
        return unusable(f"the balance reports an error ({error})", Fault.REPORTED)
    asks = not numbers and any(_CALIBRATION.fullmatch(word.upper()) for word in said)
    return UNCALIBRATED if asks else None


def shows_dashes(text: str) -> bool:
    """True if a row of dashes or the like stands where digits should be."""
    return bool(_NO_DIGITS.search(text)) and not any(char.isdigit() for char in text)


def usual_stability(before: Sequence[str], after: Sequence[str]) -> bool | None:
    """What the words before and after a number usually say of rest; None if they do not."""
    letters = [word for word in before if word.isalpha()]
    said = {*letters[-1:], *after, *_ANYWHERE_BEFORE.intersection(letters)}
    still, moving = bool(said & STILL), bool(said & MOVING)
    return still if still != moving else None


def basis_in(words: Sequence[str]) -> Basis | None:
    """Gross or net, if a word says so. A lone G or N is not trusted: many print it always."""
    said = {word.upper() for word in words}
    gross, net = bool(said & _GROSS), bool(said & _NET)
    if gross == net:
        return None
    return Basis.GROSS if gross else Basis.NET
