"""A count by weight: N = n x M / m, its 95 % interval, and when no key is given at all.

Ratio of means: n pieces in each of k samples, m the mean of the samples' net masses, M the net
mass of the fill. The interval is symmetric and covers the true number in 95 of 100 jars.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil, floor

from kiosk.estimating.count_refusals import (
    Refused,
    Why,
    less_than_counted,
    nothing_inside,
    too_wide,
    unusable,
)
from kiosk.estimating.count_warnings import warnings
from kiosk.estimating.exact import exact, half_up, significant
from kiosk.estimating.samples import Samples
from kiosk.estimating.scatter import PRIOR_DOF, PriorScatter
from kiosk.estimating.score import exact_points
from kiosk.estimating.uncertainty import Budget, budget
from kiosk.settings import Rules

__all__ = ["CountInput", "CountKey", "Refused", "Why", "count_key", "interval", "score_effect"]

WIDEST = 0.10  # half width relative to the count
GOOD_ANSWER = Fraction(9, 10)  # the answer under the count that would score 90 points
DEFAULT_RULES = Rules()


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """A part of a fill that was weighed by itself: gross grams, full and empty."""

    filled: Decimal
    empty: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class CountInput:
    """What was counted and weighed; masses in grams.

    ``samples`` are net masses of ``pieces`` each, all from one tray; ``filled`` and ``empty`` are
    gross. ``more_lots`` are part of the fill, weighed in the same container after it was emptied.
    ``readability`` None: taken from the digits of the masses, so they must be as shown.
    ``piece_cv_percent`` is the scatter of single pieces known beforehand, worth ``piece_cv_dof``
    degrees of freedom. ``from_container``: the counted pieces are in the weighed fill. ``drift`` is
    the relative 95 % half width that samples of another day add (see old_samples). ``whole_only``:
    broken bits do not count, and nobody can see whether some were weighed in the fill. ``chains``
    see samples: how many are left of samples that were added to one another.

    ValueError for pieces below 1, a readability that is not above 0, or a scatter that does not
    lie above 0 and up to 100 %. Masses that make no sense are refused by ``count_key``.
    """

    pieces: int
    samples: tuple[Decimal, ...]
    filled: Decimal
    empty: Decimal = Decimal(0)
    more_lots: tuple[Lot, ...] = ()
    readability: Decimal | None = None
    piece_cv_percent: Decimal | None = None
    piece_cv_dof: int = PRIOR_DOF
    from_container: bool = False
    drift: float = 0.0
    whole_only: bool = False
    chains: int | None = None

    def __post_init__(self) -> None:
        if self.pieces < 1:
            raise ValueError("a sample has at least one piece")
        for mass in self._masses:
            exact(mass)
        if self.readability is not None and exact(self.readability) <= 0:
            raise ValueError("a readability is above zero")
        self.prior()

    @property
    def _masses(self) -> tuple[Decimal, ...]:
        return (*self.samples, *(mass for lot in self.lots for mass in (lot.filled, lot.empty)))

    @property
    def lots(self) -> tuple[Lot, ...]:
        """All lots of the fill; mostly it is one."""
        return (Lot(filled=self.filled, empty=self.empty), *self.more_lots)

    @property
    def all_filled(self) -> Decimal:
        """The sum of the full masses in grams."""
        return sum((lot.filled for lot in self.lots), Decimal(0))

    @property
    def all_empty(self) -> Decimal:
        """The sum of the empty masses in grams."""
        return sum((lot.empty for lot in self.lots), Decimal(0))

    @property
    def net(self) -> Decimal:
        """The net mass of the fill in grams."""
        return self.all_filled - self.all_empty

    @property
    def finest_digit(self) -> Decimal:
        """The smallest decimal place among the masses, in grams; 1 for whole grams."""
        places = [int(mass.as_tuple().exponent) for mass in self._masses]
        return Decimal(1).scaleb(min(0, *places))

    def prior(self) -> PriorScatter | None:
        """The scatter known beforehand."""
        if self.piece_cv_percent is None:
            return None
        return PriorScatter(relative=float(self.piece_cv_percent) / 100, dof=self.piece_cv_dof)

    def measured(self) -> Samples:
        """The samples with the readability given or found."""
        return Samples(
            pieces=self.pieces,
            masses=self.samples,
            readability=self.readability or self.finest_digit,
            prior=self.prior(),
            in_fill=self.from_container,
            drift=self.drift,
            chains=self.chains,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CountKey:
    """A count that may stand as a key.

    ``low`` and ``high`` bound 95 %, rounded outward; ``half_width_percent`` is half of that,
    relative to the count. ``score_effect`` is the largest loss, in points, of an answer that
    would score 90 against ``count`` when the true number is at either bound. ``budget`` holds the
    parts of the uncertainty. ``warnings`` are sentences for a person.
    """

    count: int
    low: int
    high: int
    half_width_percent: Decimal
    piece_mass_g: Decimal
    score_effect: Decimal
    budget: Budget
    warnings: tuple[str, ...]


def count_key(given: CountInput, rules: Rules = DEFAULT_RULES) -> CountKey | Refused:
    """The key, or why there is none and what would help."""
    samples = given.measured()
    refused = unusable(samples, given.all_filled, given.all_empty) or _a_lot_unusable(given)
    if refused:
        return refused
    sampling = samples.sampling()
    assert sampling is not None  # a single sample without a prior was refused
    parts = budget(sampling, float(given.net), len(given.lots))
    if parts.half_width > WIDEST:
        return too_wide(samples, given.net, WIDEST)
    exactly = Fraction(given.net) / samples.piece_mass
    count, (low, high) = int(half_up(exactly, 0)), interval(exactly, parts.half_width)
    if given.from_container and high < given.pieces:
        return less_than_counted(samples, count)
    return CountKey(
        count=count,
        low=low,
        high=high,
        half_width_percent=half_up(Fraction(100 * parts.half_width), 3),
        piece_mass_g=significant(samples.piece_mass, 6),
        score_effect=score_effect(count, low, high, rules),
        budget=parts,
        warnings=warnings(
            samples,
            filled=given.all_filled,
            empty=given.all_empty,
            count=count,
            limit=rules.count_limit,
            inferred=given.readability is None,
            whole_only=given.whole_only,
        ),
    )


def _a_lot_unusable(given: CountInput) -> Refused | None:
    found = (nothing_inside(lot.filled, lot.empty) for lot in given.lots)
    return next((refused for refused in found if refused), None)


def interval(count: Fraction, half_width: float) -> tuple[int, int]:
    """The whole numbers that bound 95 %, rounded outward; a fill holds at least one piece."""
    reach = count * Fraction(half_width)
    return max(1, floor(count - reach)), ceil(count + reach)


def score_effect(
    value: int | Decimal, low: int | Decimal, high: int | Decimal, rules: Rules
) -> Decimal:
    """The largest loss of a 90-point answer if the true count or volume is ``low`` or ``high``.

    The answer may lie under the value or, where the rules mirror the score, over it.
    """
    known = Fraction(value)
    answers = [answer * known for answer in (GOOD_ANSWER, 2 - GOOD_ANSWER)]
    losses = [
        exact_points(known, answer, rules.over) - exact_points(Fraction(true), answer, rules.over)
        for answer in answers
        for true in (low, high)
    ]
    return half_up(max(losses), 2)
