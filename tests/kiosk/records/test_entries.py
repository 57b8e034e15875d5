from __future__ import annotations

import dataclasses
import subprocess
import sys
from datetime import UTC, datetime, timedelta, timezone
from decimal import Decimal

import pytest

from kiosk.evidence import Source
from kiosk.records.entries import GuessMade, KeyDropped, KeyMass
from tests.helpers.recorded import AT, cup_taken, key_started, weighing


def test_entries_get_ids_that_differ() -> None:
    assert cup_taken().id != cup_taken().id


def test_an_entry_cannot_be_changed() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        cup_taken().number = 8  # type: ignore[misc]  # that it is refused is the point


@pytest.mark.parametrize("at", [datetime(2026, 3, 14), AT.astimezone(timezone(timedelta(hours=1)))])
def test_a_time_that_is_not_in_utc_is_refused(at: datetime) -> None:
    with pytest.raises(ValueError, match="not a time in UTC"):
        KeyDropped(key_id="k", reason="r", at=at)


@pytest.mark.parametrize("number", [0, 100, -1])
def test_cups_are_numbered_1_to_99(number: int) -> None:
    with pytest.raises(ValueError, match="numbered 1 to 99"):
        cup_taken(number)


def test_a_mass_has_one_of_four_roles() -> None:
    with pytest.raises(ValueError, match="lid"):
        KeyMass(key_id=key_started().id, role="lid", weighing=weighing("3.4"), at=AT)


def test_a_cup_is_simulated_as_its_weighing_is() -> None:
    assert cup_taken(source=Source.SIMULATED).simulated
    assert not cup_taken(source=Source.TYPED).simulated


def test_times_are_kept_in_utc_as_given() -> None:
    assert cup_taken().at.tzinfo is UTC


def test_entries_and_the_writer_come_without_sqlalchemy() -> None:
    script = (
        "import sys, kiosk.records.entries, kiosk.records.kept, kiosk.records.writer\n"
        "print('sqlalchemy' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True)
    assert done.stdout.strip() == "False", done.stderr


def test_a_guess_below_nothing_is_none() -> None:
    with pytest.raises(ValueError, match="no guess"):
        GuessMade(key_id="k", team="Heron", guess=Decimal(-1), at=AT)
