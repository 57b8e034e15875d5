"""Records on a server for other programs: checked, as tables, and as a file."""

from __future__ import annotations

import csv
from contextlib import closing
from pathlib import Path

import psycopg
import pytest

from kiosk.records.backup import backup
from kiosk.records.checking import check
from kiosk.records.exchange import export
from kiosk.records.store import Store
from tests.helpers.recorded import (
    balance_checked,
    check_mass,
    cup_taken,
    handed_in,
    key_made,
    key_mass,
    key_started,
    weighing,
)


@pytest.fixture
def full(on_server: str) -> str:
    """Records with something in every kind of column."""
    cup, key = cup_taken(3, empty="12.30"), key_started()
    check = check_mass("c" * 32)
    with closing(Store(on_server)) as store:
        store.save(cup, handed_in(cup, "105.70"), cup_taken(4, team="Größe;\n\"'", empty="-0.0"))
        store.save(key, key_mass(key, "sample", "35.4"), key_made(key))
        store.save(check, balance_checked("c" * 32))
        store.remember("material", "rice")
    return on_server


def tables(where: str, folder: Path) -> dict[str, list[list[str]]]:
    """Every table as it is exported, line by line."""
    found = {}
    for one in export(where, folder):
        with one.file.open(encoding="utf-8", newline="") as file:
            found[one.table] = list(csv.reader(file, strict=True))
    return found


def test_sound_records_pass_the_check(full: str) -> None:
    checked = check(full, lambda *_: True)
    assert (checked.findings, checked.rows > 10) == ((), True)


def test_records_that_somebody_spoiled_do_not(full: str) -> None:
    with psycopg.connect(full) as connection:
        connection.execute("DELETE FROM labels_taken WHERE label = '4'")
    assert [found.table for found in check(full, lambda *_: True).findings] == ["labels_taken"]


def test_a_backup_is_a_file_that_holds_the_same(full: str, tmp_path: Path) -> None:
    copy = tmp_path / "copy.sqlite"
    assert backup(full, copy) == copy.stat().st_size
    assert tables(str(copy), tmp_path / "of the file") == tables(full, tmp_path / "of the server")
    assert check(str(copy), lambda *_: True).findings == ()


def test_a_kiosk_can_go_on_with_the_backup(full: str, tmp_path: Path) -> None:
    copy = tmp_path / "copy.sqlite"
    backup(full, copy)
    with closing(Store(str(copy))) as store:
        (out,) = store.cups_out(simulated=False)
        assert (out.number, out.team, str(out.empty.grams)) == (4, "Größe;\n\"'", "-0.0")
        assert out.empty.raw == weighing("0").raw
        store.save(cup_taken(5))
        assert store.next_cup_number(simulated=False) == 6


def test_only_the_backup_is_left_behind(full: str, tmp_path: Path) -> None:
    backup(full, tmp_path / "copy.sqlite")
    assert [file.name for file in tmp_path.iterdir()] == ["copy.sqlite"]
