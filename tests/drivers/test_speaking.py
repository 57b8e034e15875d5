"""Finding out how a balance speaks: listening first, asking last."""

from __future__ import annotations

import pytest

from drivers.events import Identified, LineUnreadable, ReadingReceived
from drivers.speaking import TRIAL_S, Speaking, trials
from tests.helpers.pan import shown


def reading(grams: str = "12.3") -> ReadingReceived:
    return ReadingReceived(reading=shown(grams, 1.0))


def test_those_that_listen_come_before_the_one_that_asks() -> None:
    assert trials(["Scale 1"]) == ("lines", "Scale 1", "sma")


def test_two_masses_are_enough() -> None:
    speaking = Speaking(["lines", "sma"])
    speaking.heard(reading())
    assert not speaking.understood
    speaking.heard(reading())
    assert (speaking.understood, speaking.present) == (True, "lines")


def test_a_balance_that_gives_its_name_is_understood() -> None:
    speaking = Speaking(["sma"])
    speaking.heard(Identified(name="pan", capacity=None, readability=None, at=1.0))
    assert speaking.understood


def test_garbage_is_no_mass() -> None:
    speaking = Speaking(["lines"])
    for _ in range(5):
        speaking.heard(LineUnreadable(raw=b"\xff\xfe", at=1.0))
    assert not speaking.understood


@pytest.mark.parametrize("open_port", [True, False])
def test_time_counts_only_at_an_open_port(open_port: bool) -> None:
    speaking = Speaking(["lines", "sma"])
    speaking.tick(0.0, open_port=True)
    assert speaking.tick(TRIAL_S, open_port=open_port) is open_port
    assert speaking.present == ("sma" if open_port else "lines")


def test_a_mass_of_the_trial_before_does_not_count() -> None:
    speaking = Speaking(["lines", "sma"])
    speaking.heard(reading())
    speaking.tick(0.0, open_port=True)
    speaking.tick(TRIAL_S, open_port=True)
    speaking.heard(reading())
    assert not speaking.understood


def test_after_the_last_one_nothing_is_left() -> None:
    speaking = Speaking(["sma"])
    speaking.tick(0.0, open_port=True)
    assert speaking.tick(TRIAL_S, open_port=True)
    assert speaking.present is None
    assert not speaking.tick(2 * TRIAL_S, open_port=True)
