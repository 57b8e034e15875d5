"""How much more to count after each sample: the least work that is worth doing."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import hypot, sqrt

from kiosk.estimating.advice import Advice, CountMoreAtOnce, FinerBalance, MoreSamples, Step
from kiosk.estimating.exact import half_up
from kiosk.estimating.expected import planned
from kiosk.estimating.samples import MOST_SAMPLES, Samples
from kiosk.estimating.uncertainty import (
    AVERAGING_SAMPLES,
    SMALLEST_SCATTER,
    Part,
    budget,
)

GOAL_PERCENT = Decimal(1)
WORTH_IT = 0.6  # of the present half width
HOPELESS = 10.0  # a half width of ten times the count is told, nothing wider
PIECES_AT_ONCE = (20, 50, 100, 200, 300, 400, 500)
FEW_DIVISIONS, ENOUGH_DIVISIONS = 20, 200


def advise(
    samples: Samples,
    net: Decimal | None = None,
    *,
    goal_percent: Decimal = GOAL_PERCENT,
    needed_percent: Decimal | None = None,
) -> Advice:
    """What to do after these samples; ``net`` is the fill in grams, None before there is one.

    A key better than ``goal_percent`` is good enough; a step that leaves it above
    ``needed_percent`` is not worth doing.
    """
    step: Step | None
    sampling = samples.sampling()
    coarse = min(samples.masses) < FEW_DIVISIONS * samples.readability
    if coarse or sampling is None:
        step = _until_seen(samples) if coarse else _first_samples(samples)
        return Advice(now_percent=None, dominant=None, step=step, readability=samples.readability)
    parts = budget(sampling, None if net is None else float(net))
    now = parts.half_width
    step = None
    if 100 * now > goal_percent:
        worth = max(WORTH_IT * now, float(goal_percent) / 100)
        if needed_percent is not None:
            worth = min(worth, float(needed_percent) / 100)
        step = _best_step(samples, net, parts.dominant, worth)
    return Advice(
        now_percent=_percent(now),
        dominant=parts.dominant,
        step=step,
        readability=samples.readability,
    )


def _best_step(samples: Samples, net: Decimal | None, dominant: Part, worth: float) -> Step | None:
    """The first kind of step that brings the half width down to ``worth``."""
    if dominant in (Part.FILL_ROUNDING, Part.OLD_SAMPLES):
        return None
    if dominant is Part.SAMPLE_ROUNDING:
        return _more_at_once(samples, net, worth) or _finer(samples)
    return _more_samples(samples, net, worth) or _more_at_once(samples, net, worth)


def _more_samples(samples: Samples, net: Decimal | None, worth: float) -> MoreSamples | None:
    now = len(samples.masses)
    for number in range(now + 1, MOST_SAMPLES + 1):
        then = _half_width(samples, net, pieces=samples.pieces, number=number)
        if then <= worth:
            return MoreSamples(
                number=number - now, pieces=samples.pieces, half_width_percent=_percent(then)
            )
    return None


def _more_at_once(samples: Samples, net: Decimal | None, worth: float) -> CountMoreAtOnce | None:
    for pieces in PIECES_AT_ONCE:
        if pieces <= samples.pieces:
            continue
        then = _half_width(samples, net, pieces=pieces, number=len(samples.masses))
        if then <= worth:
            return CountMoreAtOnce(pieces=pieces, half_width_percent=_percent(then))
    return None


def _half_width(samples: Samples, net: Decimal | None, *, pieces: int, number: int) -> float:
    """The half width to expect of ``number`` samples of ``pieces``."""
    plan = planned(
        pieces=pieces,
        number=number,
        piece_mass=float(samples.piece_mass),
        piece_cv=_piece_cv(samples),
        readability=float(samples.readability),
        prior=samples.prior,
        in_fill=samples.in_fill,
    )
    return hypot(budget(plan, None if net is None else float(net)).half_width, samples.drift)


def _piece_cv(samples: Samples) -> float:
    """The scatter of pieces that the samples show once their rounding is taken out."""
    if samples.prior and len(samples.masses) == 1:
        return samples.prior.relative
    step = float(samples.readability)
    variance = max(samples.deviation**2 - step**2 / 12, (SMALLEST_SCATTER * step) ** 2)
    return sqrt(variance * samples.pieces) / float(samples.mean)


def _first_samples(samples: Samples) -> MoreSamples:
    return MoreSamples(
        number=AVERAGING_SAMPLES - len(samples.masses),
        pieces=samples.pieces,
        half_width_percent=None,
    )


def _until_seen(samples: Samples) -> Step:
    """For samples of which the balance shows hardly more than nothing."""
    for divisions in (ENOUGH_DIVISIONS, FEW_DIVISIONS):
        for pieces in PIECES_AT_ONCE:
            seen = pieces * samples.piece_mass >= divisions * Fraction(samples.readability)
            if seen and pieces > samples.pieces:
                return CountMoreAtOnce(pieces=pieces, half_width_percent=None)
    return _finer(samples)


def _finer(samples: Samples) -> FinerBalance:
    """The coarsest decimal step, finer than now, that sees a sample in enough divisions."""
    step = Decimal(1)
    while step >= samples.readability or (
        samples.mean > 0 and ENOUGH_DIVISIONS * Fraction(step) > samples.mean
    ):
        step /= 10
    return FinerBalance(readability=step)


def _percent(half_width: float) -> Decimal:
    return half_up(Fraction(100 * min(half_width, HOPELESS)), 3)
