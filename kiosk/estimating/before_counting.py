"""How many pieces to count at once, before one was: what some samples should bring.

Nothing is known but how much such pieces differ, and perhaps what one weighs about. Rounding is
not counted on to average out, as in a plan of samples.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from math import inf

from kiosk.estimating.count_key import WIDEST
from kiosk.estimating.counting_more import FEW_DIVISIONS, GOAL_PERCENT, PIECES_AT_ONCE, WORTH_IT
from kiosk.estimating.exact import exact, half_up
from kiosk.estimating.expected import planned
from kiosk.estimating.samples import ASSUMED_CV
from kiosk.estimating.scatter import PriorScatter
from kiosk.estimating.uncertainty import Budget, Part, budget
from kiosk.texts import say
from kiosk.texts.numbers import grams, percent

FAIR = 0.03  # a key that is off by more decides places
ENOUGH_DIVISIONS = 200  # of a sample; from there on rounding hardly counts
FINEST_BALANCE = Decimal("0.0001")


@dataclass(frozen=True, slots=True, kw_only=True)
class Guess:
    """So many samples of so many pieces on a balance that steps by ``readability`` grams.

    ``piece_mass`` in grams, None if nobody has an idea; ``prior`` is the scatter known beforehand,
    None: the samples alone will have to show it, and it is taken to be that of grains.

    ValueError for a mass or a readability that is not above 0, or fewer than two samples without
    a prior.
    """

    samples: int
    pieces: int
    readability: Decimal
    piece_mass: Decimal | None = None
    prior: PriorScatter | None = None

    def __post_init__(self) -> None:
        if self.readability <= 0 or (self.piece_mass is not None and self.piece_mass <= 0):
            raise ValueError("a piece and a step of the balance weigh more than nothing")
        if self.samples < (1 if self.prior else 2):
            raise ValueError("one sample alone shows no scatter")

    def seen(self, pieces: int) -> bool:
        """Whether the balance sees so many pieces in enough steps for a key, as far as known."""
        return (
            self.piece_mass is None or pieces * self.piece_mass >= FEW_DIVISIONS * self.readability
        )

    def parts(self, pieces: int) -> Budget:
        """What samples of so many pieces should bring; without rounding if no mass is known."""
        plan = planned(
            pieces=pieces,
            number=self.samples,
            piece_mass=float(self.piece_mass or 1),
            piece_cv=self.prior.relative if self.prior else ASSUMED_CV,
            readability=float(self.readability) if self.piece_mass else 0.0,
            prior=self.prior,
        )
        return budget(replace(plan, averaging=False), None)

    def half_width(self, pieces: int) -> float:
        """Half of the 95 % interval, relative; infinite where there would be no key."""
        return self.parts(pieces).half_width if self.seen(pieces) else inf


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstAdvice:
    """How good the guessed samples should be, and the number of pieces that suits better.

    ``now`` is a relative 95 % half width, infinite if the balance hardly sees such a sample.
    ``pieces`` is None if the guessed number is right, or no number helps; ``then`` is the half
    width with it. ``coarse``: rounding is the largest part. ``finer`` is a step in grams that
    would do where no number helps.
    """

    guess: Guess
    now: float
    coarse: bool
    pieces: int | None = None
    then: float | None = None
    finer: Decimal | None = None

    @property
    def sentence(self) -> str:
        """One sentence for the person who counts."""
        step = grams(self.guess.readability)
        if self.finer is not None:
            return say("advice.before.too_coarse", step=step, finer=grams(self.finer))
        if self.coarse and self.pieces is not None and self.pieces > self.guess.pieces:
            return say("advice.before.coarse", step=step, pieces=self.pieces)
        return say("advice.before", promise=self._promise, condition=self._condition)

    @property
    def _promise(self) -> str:
        values = {"samples": self.guess.samples, "pieces": self.guess.pieces}
        if self.pieces is None or self.then is None:
            return say("advice.before.fine", now=_percent(self.now), **values)
        name = "fewer" if self.pieces < self.guess.pieces else "more"
        return say(
            f"advice.before.{name}",
            **values,
            now=_percent(self.now),
            other=self.pieces,
            then=_percent(self.then),
        )

    @property
    def _condition(self) -> str:
        if self.guess.piece_mass is not None:
            return ""
        heavy = exact(ENOUGH_DIVISIONS * self.guess.readability)
        return say("advice.before.if", mass=grams(half_up(heavy, 0 if heavy >= 1 else 3)))


def before_counting(guess: Guess) -> FirstAdvice:
    """What the guessed samples should bring, and the least number of pieces worth counting.

    A key better than 1 % is good enough, with fewer pieces if that will do; more are worth it
    where they bring the half width well down. Of pieces that nobody knows, fewer may weigh too
    little.
    """
    goal = float(GOAL_PERCENT) / 100
    now = guess.half_width(guess.pieces)
    coarse = now == inf or guess.parts(guess.pieces).dominant is Part.SAMPLE_ROUNDING
    pieces = _better(guess, now, goal)
    if pieces is None:
        finer = _finer(guess) if now > WIDEST else None
        return FirstAdvice(guess=guess, now=now, coarse=coarse, finer=finer)
    then = guess.half_width(pieces)
    return FirstAdvice(guess=guess, now=now, coarse=coarse, pieces=pieces, then=then)


def _better(guess: Guess, now: float, goal: float) -> int | None:
    if now <= goal:
        pieces = _least(guess, goal)
        fewer = pieces is not None and pieces < guess.pieces
        return pieces if fewer and guess.piece_mass is not None else None
    pieces = _least(guess, FAIR if now == inf else max(WORTH_IT * now, goal))
    return _least(guess, WIDEST) if pieces is None and now > WIDEST else pieces


def _least(guess: Guess, half_width: float) -> int | None:
    reaching = (rung for rung in PIECES_AT_ONCE if guess.half_width(rung) <= half_width)
    return next(reaching, None)


def _finer(guess: Guess) -> Decimal:
    """The coarsest decimal step, finer than the balance's, with which some number is fair."""
    step = Decimal(1)
    while step > FINEST_BALANCE and (
        step >= guess.readability or _least(replace(guess, readability=step), FAIR) is None
    ):
        step /= 10
    return step


def _percent(half_width: float) -> str:
    return percent(half_up(Fraction(100 * half_width), 1))
