"""Evidence is appended, never edited, not even by another program."""

from __future__ import annotations

import sqlite3
from contextlib import closing

import pytest

from kiosk.records.guards import EVIDENCE
from kiosk.records.store import Store
from tests.helpers.recorded import cup_taken, handed_in


def test_every_table_but_two_is_evidence(store: Store, where: str) -> None:
    with closing(sqlite3.connect(where)) as file:
        tables = {
            row[0] for row in file.execute("SELECT name FROM sqlite_master WHERE type='table'")
        }
    assert tables - {table.name for table in EVIDENCE} == {"labels_taken", "choices"}


@pytest.mark.parametrize("table", ["weighings", "cups_taken", "cups_handed_in"])
@pytest.mark.parametrize("change", ["UPDATE {} SET at = 'never'", "DELETE FROM {}"])
def test_a_kept_row_cannot_be_changed(store: Store, where: str, table: str, change: str) -> None:
    cup = cup_taken()
    store.save(cup, handed_in(cup))
    with (
        closing(sqlite3.connect(where)) as file,
        pytest.raises(sqlite3.IntegrityError, match="kept rows are never changed"),
    ):
        file.execute(change.format(table))


def test_every_evidence_table_is_guarded_both_ways(store: Store, where: str) -> None:
    with closing(sqlite3.connect(where)) as file:
        guards = {
            (row[0], verb)
            for row in file.execute("SELECT tbl_name, sql FROM sqlite_master WHERE type='trigger'")
            for verb in ("UPDATE", "DELETE")
            if f"BEFORE {verb}" in row[1]
        }
    assert guards == {(table.name, verb) for table in EVIDENCE for verb in ("UPDATE", "DELETE")}
