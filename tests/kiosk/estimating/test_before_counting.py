"""How much to count, before anything was counted: what is promised must come."""

from __future__ import annotations

from decimal import Decimal
from math import inf, sqrt
from random import Random

import pytest

from kiosk.estimating.before_counting import FirstAdvice, Guess, before_counting
from kiosk.estimating.samples import Samples
from kiosk.estimating.scatter import PriorScatter
from kiosk.estimating.uncertainty import budget

RICE, LENTIL = "0.025", "0.045"


def guess(
    mass: str | None, step: str, pieces: int = 100, cv: float | None = 0.2, samples: int = 3
) -> Guess:
    return Guess(
        samples=samples,
        pieces=pieces,
        readability=Decimal(step),
        piece_mass=None if mass is None else Decimal(mass),
        prior=None if cv is None else PriorScatter(relative=cv),
    )


def advice(mass: str | None, step: str, pieces: int = 100, cv: float | None = 0.2) -> FirstAdvice:
    return before_counting(guess(mass, step, pieces, cv))


def test_pieces_that_differ_by_a_known_scatter_are_told_by_students_t() -> None:
    # t of 22 degrees of freedom, 2.07 (NIST TN 1297, Table B.1: 2.09 at 20)
    assert advice(None, "0.01").now == pytest.approx(2.074 * 0.2 / sqrt(300), rel=1e-3)


def test_more_at_once_are_named_where_they_bring_much() -> None:
    first = advice(LENTIL, "0.01")
    assert first.pieces == 300
    assert first.sentence == "3 samples of 100 should be good to about 2.4 %, of 300 to 1.4 %."


def test_a_coarse_balance_asks_for_more_at_once_or_a_finer_one() -> None:
    first = advice(LENTIL, "1")
    assert (first.now, first.pieces) == (inf, 500)
    assert first.sentence == "This scale steps by 1 g: count 500 at once, or use a finer one."


def test_where_no_number_helps_a_finer_balance_is_named() -> None:
    first = advice(RICE, "1")
    assert (first.pieces, first.finer) == (None, Decimal("0.1"))
    assert "too coarse for these: use one that steps by 0.1 g" in first.sentence


def test_with_the_finer_balance_there_is_a_number_worth_counting() -> None:
    finer = advice(RICE, str(advice(RICE, "1").finer))
    assert finer.finer is None
    assert finer.then is not None
    assert finer.then <= 0.03


def test_never_more_than_needed() -> None:
    first = advice("0.5", "0.01", pieces=500, cv=0.1)
    assert first.pieces == 200
    assert first.sentence == "3 samples of 200 will do: good to about 0.8 %."


def test_fewer_of_unknown_pieces_might_weigh_too_little() -> None:
    first = advice(None, "0.1", pieces=500, cv=0.05)
    assert first.pieces is None
    assert (
        first.sentence
        == "3 samples of 500 should be good to about 0.3 %, if each weighs over 20 g."
    )


def test_a_good_number_is_left_alone() -> None:
    assert advice("0.5", "0.01", pieces=200, cv=0.1).pieces is None


def test_pieces_of_unknown_scatter_promise_less() -> None:
    assert advice(None, "0.01", cv=None).now > advice(None, "0.01", cv=0.2).now


@pytest.mark.parametrize("pieces", [100, 200, 300, 500])
@pytest.mark.parametrize("step", ["0.1", "0.01"])
def test_samples_like_those_bring_what_was_promised(pieces: int, step: str) -> None:
    """Seeded jars, weighed in one tray and rounded: the median half width is the promised one."""
    chance, promised = Random(4), guess(LENTIL, step, pieces).half_width(pieces)
    widths = sorted(weighed(chance, pieces, Decimal(step)) for _ in range(401))
    assert widths[200] == pytest.approx(promised, rel=0.03) or widths[200] < promised
    assert widths[200] > 0.7 * promised


def weighed(chance: Random, pieces: int, step: Decimal) -> float:
    tray = 20 + chance.random()
    masses = [chance.gauss(pieces * 0.045, 0.2 * 0.045 * sqrt(pieces)) + tray for _ in range(3)]
    empty, *full = [round(mass / float(step)) * step for mass in (tray, *masses)]
    samples = Samples(
        pieces=pieces,
        masses=tuple(mass - empty for mass in full),
        readability=step,
        prior=PriorScatter(relative=0.2),
    )
    sampling = samples.sampling()
    assert sampling is not None
    return budget(sampling, None).half_width


@pytest.mark.parametrize(("mass", "step"), [("0", "0.1"), ("0.1", "0")])
def test_nothing_weighs_nothing(mass: str, step: str) -> None:
    with pytest.raises(ValueError, match="more than nothing"):
        guess(mass, step)


def test_a_single_sample_of_unknown_scatter_is_no_plan() -> None:
    with pytest.raises(ValueError, match="one sample alone"):
        guess(RICE, "0.1", cv=None, samples=1)
