"""The score of an estimate: 100 x estimate / actual, and what an estimate over it earns."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from kiosk.estimating.exact import exact, half_up
from kiosk.settings import Over, Rules
from kiosk.texts import say

ERROR_DECIMALS = 6


class Side(StrEnum):
    """On which side of the actual value an estimate lies."""

    UNDER = "under"
    OVER = "over"
    EXACT = "exact"


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """What an estimate earned.

    ``points`` are 0 to 100 with the digits of the rules; ``error_percent`` is signed, below zero
    for an estimate under the actual value, to a millionth of a per cent.
    """

    points: Decimal
    error_percent: Decimal
    side: Side


def score(actual: Decimal, estimate: Decimal, rules: Rules) -> Score:
    """The score of ``estimate``, both in one unit, computed exactly and rounded once.

    ValueError, with one sentence, for an actual value that is not above zero, an estimate below
    zero, or what is no number. An estimate of zero earns 0 points.
    """
    true, guess = exact(actual), exact(estimate)
    if true <= 0:
        raise ValueError(say("score.actual_not_positive"))
    if guess < 0:
        raise ValueError(say("score.estimate_negative"))
    return Score(
        points=half_up(exact_points(true, guess, rules.over), rules.decimals),
        error_percent=error_percent(actual, estimate),
        side=_side(true, guess),
    )


def error_percent(actual: Decimal, estimate: Decimal) -> Decimal:
    """How far ``estimate`` is off, in signed per cent of ``actual``, to a millionth."""
    return half_up(100 * (exact(estimate) / exact(actual) - 1), ERROR_DECIMALS)


def exact_points(actual: Fraction, estimate: Fraction, over: Over) -> Fraction:
    """The points of ``estimate`` before any rounding, 0 to 100."""
    return ratio_points(estimate / actual, over)


def ratio_points(ratio: Fraction, over: Over) -> Fraction:
    """The points of an estimate that is ``ratio`` times the actual value, 0 to 100."""
    if ratio <= 1:
        return 100 * ratio
    return max(Fraction(0), 100 * (2 - ratio)) if over is Over.MIRRORED else Fraction(0)


def _side(actual: Fraction, estimate: Fraction) -> Side:
    if estimate == actual:
        return Side.EXACT
    return Side.UNDER if estimate < actual else Side.OVER
