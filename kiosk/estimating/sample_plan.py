"""How much to count before anything was weighed: the fewest pieces that bring a key to a goal.

A plan is judged as ``count_key`` will judge what comes of it: by samples that scatter as pieces
with the scatter given do, with the same knowledge beforehand. Two things are taken at their worse,
so that the promise holds: rounding is not counted on to average out, since a key grants that only
to samples which have shown their scatter, and a mass that is rounded down weighs what is shown.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from math import ceil, sqrt

from kiosk.estimating.count_key import WIDEST
from kiosk.estimating.count_refusals import LEAST_DIVISIONS
from kiosk.estimating.exact import exact
from kiosk.estimating.expected import planned
from kiosk.estimating.samples import ASSUMED_CV, FEWEST_PIECES, MOST_PIECES, MOST_SAMPLES
from kiosk.estimating.scatter import PriorScatter
from kiosk.estimating.uncertainty import Budget, Part, budget
from kiosk.texts import say
from kiosk.texts.numbers import grams, number, percent

FEWEST_SAMPLES = 3
USUAL_COUNT = 5_000  # a jar of some thousands: common practice, no source
USUAL_PIECE_CV_PERCENT = round(100 * ASSUMED_CV)
FINEST_BALANCE = Decimal("0.0001")
LIGHT_SAMPLE = 2  # standard deviations: so light a sample still shows the least divisions


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanInput:
    """What is known before counting: the mass of a piece and the balance's step in grams.

    ``goal_percent`` is the half width of the 95 % interval to reach, ``count`` the pieces of the
    jar. ``piece_cv_percent`` is the scatter of single pieces; None: the samples alone will have to
    show it, and it is taken to be that of grains.

    ValueError for a mass, a step or a goal that is not above 0, a count below 1, or a scatter that
    does not lie above 0 and up to 100 %.
    """

    piece_mass: Decimal
    readability: Decimal
    goal_percent: Decimal
    piece_cv_percent: Decimal | None = None
    count: int = USUAL_COUNT

    def __post_init__(self) -> None:
        if min(exact(self.piece_mass), exact(self.readability)) <= 0:
            raise ValueError("a piece and a step of the balance weigh more than nothing")
        if exact(self.goal_percent) <= 0:
            raise ValueError("a goal lies above 0 per cent")
        if self.count < 1:
            raise ValueError("a jar holds at least one piece")
        self.prior()

    def prior(self) -> PriorScatter | None:
        """The scatter known beforehand."""
        if self.piece_cv_percent is None:
            return None
        return PriorScatter(relative=float(self.piece_cv_percent) / 100)

    @property
    def piece_cv(self) -> float:
        """The relative scatter of pieces that is planned for."""
        prior = self.prior()
        return prior.relative if prior else ASSUMED_CV

    @property
    def goal(self) -> Decimal:
        """The half width in per cent to reach; there is a limit beyond which no key is given."""
        return min(self.goal_percent, Decimal(round(100 * WIDEST)))


@dataclass(frozen=True, slots=True, kw_only=True)
class SamplePlan:
    """So many samples of so many pieces, and the half width to expect, rounded up, in per cent."""

    samples: int
    pieces_each: int
    half_width_percent: Decimal

    @property
    def total(self) -> int:
        """The pieces to count."""
        return self.samples * self.pieces_each


class WhyNot(StrEnum):
    """Why no plan reaches the goal."""

    LIGHT_FILL = "light fill"
    LIGHT_SAMPLES = "light samples"
    COARSE = "coarse"
    PIECES_DIFFER = "pieces differ"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPlan:
    """No plan; ``sentence`` tells a person why, and what would help."""

    why: WhyNot
    sentence: str


def sample_plan(given: PlanInput) -> SamplePlan | NoPlan:
    """The plan with the fewest pieces to count; of two with as many, the one of fewer samples."""
    return _fewest(given) or _no_plan(given)


def _fewest(given: PlanInput) -> SamplePlan | None:
    reaching = (plan for plan, _ in _plans(given) if plan.half_width_percent <= given.goal)
    return min(reaching, key=lambda plan: (plan.total, plan.samples), default=None)


def _plans(given: PlanInput) -> Iterator[tuple[SamplePlan, Budget]]:
    """Every plan whose samples and fill the balance sees in enough divisions."""
    if _shown(given, given.count) < LEAST_DIVISIONS * Fraction(given.readability):
        return
    for pieces in range(FEWEST_PIECES, MOST_PIECES + 1):
        if not _seen(given, pieces):
            continue
        for samples in range(FEWEST_SAMPLES, MOST_SAMPLES + 1):
            parts = _expected(given, pieces, samples)
            width = Decimal(ceil(10**5 * parts.half_width)).scaleb(-3)
            yield SamplePlan(samples=samples, pieces_each=pieces, half_width_percent=width), parts


def _expected(given: PlanInput, pieces: int, samples: int) -> Budget:
    plan = planned(
        pieces=pieces,
        number=samples,
        piece_mass=float(_shown(given, pieces)) / pieces,
        piece_cv=given.piece_cv,
        readability=float(given.readability),
        prior=given.prior(),
    )
    return budget(replace(plan, averaging=False), float(_shown(given, given.count)))


def _shown(given: PlanInput, pieces: int) -> Fraction:
    """What so many pieces weigh on the balance in grams, or in truth if that is less."""
    mass, step = pieces * Fraction(given.piece_mass), Fraction(given.readability)
    return min(mass, ceil(mass / step - Fraction(1, 2)) * step)


def _seen(given: PlanInput, pieces: int) -> bool:
    """Whether hardly a sample of so many pieces is too light for a key."""
    light = 1 - LIGHT_SAMPLE * given.piece_cv / sqrt(pieces)
    mass = pieces * Fraction(given.piece_mass) * Fraction(light)
    return mass >= (LEAST_DIVISIONS + Fraction(1, 2)) * Fraction(given.readability)


def _no_plan(given: PlanInput) -> NoPlan:
    plans = list(_plans(given))
    if not plans:
        heavy = _shown(given, given.count) >= LEAST_DIVISIONS * Fraction(given.readability)
        return _too_light(given, WhyNot.LIGHT_SAMPLES if heavy else WhyNot.LIGHT_FILL)
    best, parts = min(plans, key=lambda plan: plan[0].half_width_percent)
    return _too_wide(
        given, best, WhyNot.PIECES_DIFFER if parts.dominant is Part.PIECES else WhyNot.COARSE
    )


def _too_light(given: PlanInput, why: WhyNot) -> NoPlan:
    key = why.name.lower()
    sentence = say(
        f"plan.refused.{key}",
        help=_finer(given) or say(f"plan.help.{key}"),
        step=grams(given.readability),
        count=number(given.count),
        most=MOST_PIECES,
        least=LEAST_DIVISIONS,
    )
    return NoPlan(why=why, sentence=sentence)


def _too_wide(given: PlanInput, best: SamplePlan, why: WhyNot) -> NoPlan:
    width = percent(Decimal(ceil(100 * best.half_width_percent)) / 100, 2)
    unknown = why is WhyNot.PIECES_DIFFER and given.piece_cv_percent is None
    sentence = say(
        "plan.refused.too_wide",
        help=_finer(given)
        or say("plan.help.unknown" if unknown else "plan.help.too_wide", best=width),
        samples=best.samples,
        pieces=best.pieces_each,
        count=number(given.count),
        best=width,
        goal=number(given.goal),
    )
    return NoPlan(why=why, sentence=sentence)


def _finer(given: PlanInput) -> str | None:
    """The advice of the coarsest decimal step, finer than the balance's, that has a plan."""
    step = Decimal(1)
    while step >= FINEST_BALANCE:
        if step < given.readability and _fewest(replace(given, readability=step)):
            return say("advice.finer", step=grams(step))
        step /= 10
    return None
