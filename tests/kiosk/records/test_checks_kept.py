"""Checks of the balance: what is kept, and what is found again."""

from __future__ import annotations

from datetime import timedelta

import pytest

from kiosk.evidence import Source
from kiosk.records.entries import new_id
from kiosk.records.errors import Problem
from kiosk.records.store import Store
from tests.helpers.recorded import AT, balance_checked, check_mass, refused


def kept(store: Store, *, source: Source = Source.BALANCE, **more: object) -> str:
    """A check of one mass is kept; its id."""
    check_id = new_id()
    mass = check_mass(check_id, source=source)
    store.save(mass, balance_checked(check_id, **more))  # type: ignore[arg-type]  # by name
    return check_id


def test_a_check_comes_back_as_it_went_in(store: Store) -> None:
    check_id = kept(store)
    assert store.last_check("bench", simulated=False) == balance_checked(check_id)


def test_its_masses_keep_their_digits(store: Store) -> None:
    check_id = kept(store)
    found = store.last_check("bench", simulated=False)
    assert found is not None
    assert found.id == check_id
    assert [str(row.shown) for row in found.rows] == ["100.10", "0.0"]
    assert [row.known is None for row in found.rows] == [False, True]


def test_the_check_kept_last_is_found_whatever_the_clock_said(store: Store) -> None:
    kept(store)
    last = kept(store, at=AT - timedelta(days=400), verdict="not fine")
    found = store.last_check("bench", simulated=False)
    assert found is not None
    assert (found.id, found.verdict) == (last, "not fine")


def test_a_balance_that_was_never_checked_has_no_check(store: Store) -> None:
    kept(store)
    assert store.last_check("another", simulated=False) is None


def test_a_simulated_check_never_stands_for_a_real_one(store: Store) -> None:
    real = kept(store)
    simulated = kept(store, source=Source.SIMULATED)
    for wanted, found in ((real, False), (simulated, True)):
        check = store.last_check("bench", simulated=found)
        assert check is not None
        assert check.id == wanted


def test_a_check_never_mixes_simulated_masses_with_real_ones(store: Store) -> None:
    check_id = new_id()
    store.save(check_mass(check_id))
    assert refused(store, check_mass(check_id, source=Source.SIMULATED)) is Problem.MIXED


def test_verdicts_without_a_weighing_are_refused(store: Store) -> None:
    assert refused(store, balance_checked(new_id())) is Problem.NO_WEIGHING


def test_a_check_that_is_saved_twice_is_kept_once(store: Store) -> None:
    check_id = new_id()
    entries = (check_mass(check_id), balance_checked(check_id))
    store.save(*entries)
    store.save(*entries)
    assert store.last_check("bench", simulated=False) == entries[1]


def test_a_mass_of_a_check_has_one_of_four_roles() -> None:
    with pytest.raises(ValueError, match="lid"):
        check_mass(new_id(), role="lid")
