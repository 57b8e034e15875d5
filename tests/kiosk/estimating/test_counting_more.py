from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.estimating.advice import Advice, CountMoreAtOnce, FinerBalance, MoreSamples
from kiosk.estimating.count_key import CountInput, CountKey, count_key
from kiosk.estimating.counting_more import advise
from kiosk.estimating.samples import Samples
from kiosk.estimating.scatter import PriorScatter
from kiosk.estimating.uncertainty import Part


def advice(
    *masses: str, step: str = "0.1", pieces: int = 100, cv: float | None = None, **more: Decimal
) -> Advice:
    samples = Samples(
        pieces=pieces,
        masses=tuple(map(Decimal, masses)),
        readability=Decimal(step),
        prior=None if cv is None else PriorScatter(relative=cv),
    )
    return advise(samples, **more)


def test_the_first_sample_tells_nothing_yet() -> None:
    first = advice("50.1")
    assert (first.now_percent, first.dominant) == (None, None)
    assert first.step == MoreSamples(number=2, pieces=100, half_width_percent=None)
    assert first.sentence == "To see how good this is, weigh 2 more samples of 100."


def test_pieces_that_differ_ask_for_more_samples() -> None:
    three = advice("50.0", "51.0", "49.5")
    assert three.dominant is Part.PIECES
    assert isinstance(three.step, MoreSamples)
    assert three.step.number == 2


def test_the_promise_is_what_samples_like_these_bring() -> None:
    now, then = advice("50.0", "51.0", "49.5"), advice("50.0", "51.0", "49.5", "50.93", "49.40")
    assert isinstance(now.step, MoreSamples)
    assert float(now.step.half_width_percent or 0) == pytest.approx(
        float(then.now_percent or 0), rel=0.02
    )


def test_a_coarse_balance_asks_for_more_at_once() -> None:
    coarse = advice("50", "50", "50", step="1")
    assert coarse.dominant is Part.SAMPLE_ROUNDING
    assert isinstance(coarse.step, CountMoreAtOnce)
    assert coarse.step.pieces == 200
    assert "count 200 at once (the scale steps by 1 g)" in coarse.sentence


def test_where_counting_does_not_help_a_finer_balance_does() -> None:
    bolts = advice("30", "30", "30", step="1", pieces=500)
    assert bolts.step == FinerBalance(readability=Decimal("0.1"))
    assert bolts.sentence == "Good to 3.3 %: use a scale that steps by 0.1 g."


def test_what_the_balance_hardly_sees_is_no_sample() -> None:
    rice = advice("3", "2", "3", step="1")
    assert rice.now_percent is None
    assert rice.step == FinerBalance(readability=Decimal("0.01"))


def test_a_few_pieces_that_the_balance_hardly_sees_become_more() -> None:
    few = advice("1.1", "1.2", step="0.1", pieces=10)
    assert few.step == CountMoreAtOnce(pieces=200, half_width_percent=None)


def test_a_sample_of_nothing_gets_an_answer_too() -> None:
    assert advice("0.0", "0.0").step == FinerBalance(readability=Decimal("0.01"))


def test_a_good_key_needs_nothing_more() -> None:
    good = advice("50.1", "50.0", "50.1")
    assert good.step is None
    assert good.sentence == "Good to 0.3 %."


def test_the_goal_may_be_higher() -> None:
    assert advice("50.1", "50.0", "50.1", goal_percent=Decimal("0.1")).step is not None


def test_ten_samples_are_enough_then_each_gets_larger() -> None:
    ten = advice(*["50.0", "55.0"] * 5)
    assert isinstance(ten.step, CountMoreAtOnce)
    assert ten.step.pieces == 300


def test_one_sample_of_known_pieces_is_good_to_something() -> None:
    one = advice("50.1", cv=0.2)
    assert one.now_percent is not None
    assert isinstance(one.step, MoreSamples)


def test_a_fill_that_the_balance_hardly_sees_is_not_a_matter_of_samples() -> None:
    little = advice("50.1", "50.0", "50.1", net=Decimal("3.0"))
    assert (little.dominant, little.step) == (Part.FILL_ROUNDING, None)
    assert little.help == "fill in more"


def test_with_the_fill_it_says_what_the_key_says() -> None:
    made = count_key(
        CountInput(
            pieces=100,
            samples=(Decimal("50.0"), Decimal("51.0"), Decimal("49.5")),
            filled=Decimal("1000.0"),
        )
    )
    assert isinstance(made, CountKey)
    told = advice("50.0", "51.0", "49.5", net=Decimal("1000.0"))
    assert told.now_percent == made.half_width_percent


@pytest.mark.parametrize(
    "masses", [("50.0", "51.0", "49.5"), ("50", "50", "50"), ("50.1",), ("50.1", "50.0", "50.1")]
)
def test_it_is_one_sentence(masses: tuple[str, ...]) -> None:
    sentence = advice(*masses, step="1").sentence
    assert sentence.endswith(".")
    assert ". " not in sentence
