"""The balance's own word earns trust, loses it by a lie, and earns it back."""

from __future__ import annotations

from kiosk.weighing.flag_trust import BAN, HESITATE, HURRY, NEEDED, PROMPT_LOADS, FlagTrust
from kiosk.weighing.trace import Sample
from tests.helpers.samples import sample

REST = 100.0


def way(*said: tuple[float, bool | None]) -> list[Sample]:
    """Readings with what the balance said of each."""
    return [sample(0.1 * place, y, stable) for place, (y, stable) in enumerate(said)]


HONEST = way((0, False), (60, False), (95, False), (100, True))
LATE = way((0, False), (60, False), (100, False), (100, False))
LIE = way((0, False), (60, True), (100, True))
DUMB = way((0, None), (60, None), (100, None))


def taught(*ways: list[Sample]) -> FlagTrust:
    trust = FlagTrust()
    for way_in in ways:
        trust.learn(way_in, REST, 0.2)
    return trust


def test_a_new_balance_is_not_trusted() -> None:
    trust = FlagTrust()
    assert not trust.trusted
    assert (trust.more_readings(True), trust.more_readings(False)) == (0, 0)


def test_trust_comes_with_the_second_honest_load() -> None:
    assert not taught(*[HONEST] * (NEEDED - 1)).trusted
    assert taught(*[HONEST] * NEEDED).more_readings(True) == HURRY


def test_a_balance_that_says_nothing_earns_nothing() -> None:
    trust = taught(*[DUMB] * 9)
    assert not trust.trusted
    assert trust.more_readings(None) == 0


def test_a_lie_costs_the_trust_for_a_good_while() -> None:
    before = [HONEST] * NEEDED
    assert not taught(*before, LIE).trusted
    assert not taught(*before, LIE, *[HONEST] * (BAN - 1)).trusted
    assert taught(*before, LIE, *[HONEST] * BAN).trusted


def test_stable_close_to_the_rest_is_no_lie() -> None:
    assert taught(*[[*HONEST[:-1], *way((98.5, True))]] * NEEDED).trusted


def test_moving_is_listened_to_once_the_flag_has_been_prompt() -> None:
    assert taught(*[HONEST] * (PROMPT_LOADS - 1)).more_readings(False) == 0
    assert taught(*[HONEST] * PROMPT_LOADS).more_readings(False) == HESITATE


def test_one_late_word_and_moving_counts_no_more() -> None:
    assert taught(*[HONEST] * PROMPT_LOADS, LATE).more_readings(False) == 0
