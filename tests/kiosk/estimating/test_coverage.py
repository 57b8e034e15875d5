"""Does the interval cover the true number, in simulated jars? A fast slice of the benchmark."""

from __future__ import annotations

from decimal import Decimal
from math import sqrt

import pytest

from kiosk.estimating.count_key import CountKey, count_key
from tests.helpers.jars import Case, as_input, jars

JARS = 800
PROMISED = 0.945
CHANCE = sqrt(PROMISED * (1 - PROMISED) / JARS)  # one standard deviation of the simulation

CORNERS = [
    # pieces differ much, rounding does not matter: rice, pasta
    Case(number=3, pieces=100, cv=0.12, step=Decimal("0.001"), piece=0.025, true=20_000),
    Case(number=10, pieces=10, cv=0.25, step=Decimal("0.01"), piece=0.5, true=500),
    Case(number=5, pieces=25, cv=0.1, step=Decimal("0.01"), piece=0.5, true=800, shape="lognormal"),
    Case(number=3, pieces=100, cv=0.05, step=Decimal("0.01"), piece=0.5, true=700, in_fill=True),
    # the fill's own pieces matter most
    Case(number=10, pieces=500, cv=0.12, step=Decimal("0.01"), piece=0.5, true=50),
    # nothing but rounding, the samples just above a whole number of steps: one and the same
    # error of most of a step in every sample of one jar in five
    Case(number=3, pieces=100, cv=0.005, step=Decimal(1), piece=0.2219, true=5_000),
    Case(number=10, pieces=500, cv=0.005, step=Decimal("0.1"), piece=0.00901, true=20_000),
    # pieces known to differ little, samples that scatter over a step by chance
    Case(number=4, pieces=10, cv=0.005, step=Decimal("0.01"), piece=0.2, true=20_000),
    # both
    Case(number=8, pieces=100, cv=0.12, step=Decimal("0.1"), piece=0.035, true=1_000),
    Case(number=2, pieces=100, cv=0.02, step=Decimal("0.1"), piece=0.251, true=1_000),
    # added to one another: three masses agree by chance; the readings between cancel
    Case(number=3, pieces=10, cv=0.05, step=Decimal("0.1"), piece=0.305, true=1_000, added=True),
    Case(number=10, pieces=100, cv=0.005, step=Decimal(1), piece=0.2219, true=5_000, added=True),
]  # fmt: skip


# The contract refuses half of these: their samples scatter so that the interval is over 10 %.
HALF_REFUSED = [
    Case(number=2, pieces=10, cv=0.05, step=Decimal("0.001"), piece=0.30003, true=20_000),
    Case(number=3, pieces=30, cv=0.25, step=Decimal("0.01"), piece=0.0667, true=20_000),
]


def keys_of(case: Case, prior_percent: Decimal | None = None) -> list[CountKey]:
    """The keys of the jars that got one."""
    answers = [
        count_key(as_input(case, samples, net, prior_percent))
        for samples, net in jars(case, JARS, seed=1)
    ]
    return [answer for answer in answers if isinstance(answer, CountKey)]


def covered(case: Case, prior_percent: Decimal | None = None) -> float:
    """The share of answered jars whose interval holds the true number."""
    keys = keys_of(case, prior_percent)
    assert len(keys) > 0.95 * JARS
    return sum(key.low <= case.true <= key.high for key in keys) / len(keys)


@pytest.mark.parametrize("case", CORNERS, ids=str)
def test_the_samples_alone_cover_the_true_number(case: Case) -> None:
    assert covered(case) >= PROMISED - CHANCE


@pytest.mark.parametrize("case", CORNERS, ids=str)
def test_known_pieces_cover_the_true_number(case: Case) -> None:
    assert covered(case, prior_percent=Decimal(str(100 * case.cv))) >= PROMISED - CHANCE


@pytest.mark.parametrize("case", HALF_REFUSED, ids=str)
def test_hardly_a_jar_is_misled_where_many_are_refused(case: Case) -> None:
    keys = keys_of(case)
    assert 0.4 * JARS < len(keys) < 0.6 * JARS
    wrong = sum(not key.low <= case.true <= key.high for key in keys)
    assert wrong / JARS <= 1 - PROMISED + CHANCE


def test_the_simulation_notices_an_interval_that_is_too_narrow() -> None:
    # Pieces that differ three times as much as was said.
    rough = Case(number=2, pieces=100, cv=0.24, step=Decimal("0.01"), piece=0.5, true=5_000)
    assert covered(rough, prior_percent=Decimal(8)) < 0.9
