"""What went in comes out: digits, frames, times, words."""

from __future__ import annotations

import dataclasses
import sqlite3
from decimal import Decimal

import pytest

from kiosk.evidence import Source, Weighing
from kiosk.records.store import Store
from tests.helpers.recorded import AT, cup_taken, handed_in, key_made, key_mass, key_started

DIGITS = ["3.40", "0.000", "-0.0", "112", "1E+2", "12345678901234567890.123456789"]


def kept_empty(store: Store, weighing: Weighing) -> Weighing:
    store.save(dataclasses.replace(cup_taken(), empty=weighing))
    return store.cups_out(simulated=False)[0].empty


@pytest.mark.parametrize("digits", DIGITS)
def test_digits_survive(store: Store, digits: str) -> None:
    weighing = dataclasses.replace(cup_taken().empty, grams=Decimal(digits), value=Decimal(digits))
    kept = kept_empty(store, weighing)
    assert (str(kept.grams), str(kept.value)) == (digits, digits)


def test_masses_are_text_in_the_file(store: Store, where: str) -> None:
    kept_empty(store, dataclasses.replace(cup_taken().empty, grams=Decimal("3.40")))
    with sqlite3.connect(where) as file:
        row = file.execute("SELECT grams, typeof(grams), at FROM weighings").fetchone()
    file.close()
    assert row == ("3.40", "text", "2026-03-14T09:26:53.589793+00:00")


def test_a_raw_frame_survives_to_the_last_byte(store: Store) -> None:
    frame = bytes(range(256))
    kept = kept_empty(store, dataclasses.replace(cup_taken().empty, raw=frame))
    assert kept.raw == frame


def test_a_whole_weighing_comes_back_equal(store: Store) -> None:
    weighing = dataclasses.replace(cup_taken().empty, source=Source.TYPED, readability=None)
    assert kept_empty(store, weighing) == weighing


def test_times_come_back_in_utc_to_the_microsecond(store: Store) -> None:
    cup = cup_taken()
    store.save(cup, handed_in(cup))
    (kept,) = store.last_tries("Heron", simulated=False)
    assert kept.at == AT
    assert kept.at.utcoffset() == AT.utcoffset()


@pytest.mark.parametrize("team", ["", "Zaunkönig", "'; DROP TABLE cups_taken; --", "蛙\n2"])
def test_any_team_name_survives(store: Store, team: str) -> None:
    store.save(cup_taken(team=team))
    assert store.cups_out(simulated=False)[0].team == team


def test_a_key_comes_back_equal(store: Store) -> None:
    key = key_started()
    made = key_made(key)
    store.save(key, key_mass(key, "sample", "3.5"), made)
    (kept,) = store.keys(simulated=False)
    assert kept.made == made
    assert str(kept.made.half_width_percent) == "3.10"
    assert kept.draft.piece_cv_percent == Decimal(20)


def test_a_number_that_no_balance_showed_is_refused(store: Store) -> None:
    with pytest.raises(Exception, match="NaN is not a number to keep"):
        kept_empty(store, dataclasses.replace(cup_taken().empty, grams=Decimal("NaN")))
    assert store.cups_out(simulated=False) == []
