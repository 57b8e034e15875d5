"""Records that were damaged on purpose, each in one way."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.records.checking import check
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.guards import EVIDENCE
from kiosk.records.models import SCHEMA_VERSION, Base
from kiosk.records.store import Store
from tests.helpers.recorded import (
    balance_checked,
    check_mass,
    cup_taken,
    handed_in,
    key_made,
    key_mass,
    key_started,
)
from tests.helpers.sqlite_files import some_records, version_1

CUP, OUT, KEY = cup_taken(3), cup_taken(4), key_started()


def any_points(target: Decimal, net: Decimal, points: Decimal, side: str) -> bool:
    return True


@pytest.fixture
def full(store: Store, where: str) -> str:
    """Sound records: a cup in, a cup out, a key, a check of the balance."""
    store.save(CUP, handed_in(CUP), OUT)
    store.save(KEY, key_mass(KEY, "sample", "35.4"), key_made(KEY))
    store.save(check_mass("c" * 32), balance_checked("c" * 32))
    store.remember("material", "rice")
    return where


def spoil(where: str, *statements: str) -> None:
    """Do what only somebody with the bare file can do; the guards stand again afterwards."""
    with closing(sqlite3.connect(where, isolation_level=None)) as file:
        guards = file.execute("SELECT name, sql FROM sqlite_master WHERE type='trigger'").fetchall()
        for name, _ in guards:
            file.execute(f"DROP TRIGGER {name}")
        for statement in statements:
            file.execute(statement)
        for _, sql in guards:
            file.execute(sql)


def kinds(where: str, fits: Callable[..., bool] = any_points) -> list[tuple[str, str]]:
    return [(found.kind.value, found.table) for found in check(where, fits).findings]


def test_sound_records_are_sound(full: str) -> None:
    checked = check(full, any_points)
    assert checked.findings == ()
    # 5 weighings, 2 + 1 of cups, 3 of a key, 2 of a check, 2 labels, 1 choice
    assert (checked.tables, checked.rows) == (len(Base.metadata.tables), 16)


def test_older_records_may_be_sound_and_stay_as_they_are(where: str) -> None:
    version_1(where)
    before = Path(where).read_bytes()
    assert kinds(where) == []
    assert Path(where).read_bytes() == before


def test_a_check_writes_nothing(full: str) -> None:
    before = Path(full).read_bytes()
    check(full, any_points)
    assert Path(full).read_bytes() == before


@pytest.mark.parametrize(
    ("statement", "expected"),
    [
        ("UPDATE cups_handed_in SET net = '93.5'", ("net", "cups_handed_in")),
        ("UPDATE weighings SET grams = '12.4' WHERE place = 1", ("net", "cups_handed_in")),
        ("UPDATE cups_handed_in SET try_id = 'nobody'", ("reference", "cups_handed_in")),
        ("DELETE FROM weighings WHERE place = 2", ("reference", "cups_handed_in")),
        ("UPDATE weighings SET grams = 'many' WHERE place = 1", ("value", "weighings")),
        ("UPDATE weighings SET grams = 'NaN' WHERE place = 1", ("value", "weighings")),
        ("UPDATE weighings SET raw = 'text' WHERE place = 1", ("value", "weighings")),
        ("UPDATE cups_taken SET at = '2026-03-14T09:26' WHERE place = 1", ("value", "cups_taken")),
        ("UPDATE cups_taken SET at = '2026-03-14T09:26+01:00' WHERE place = 1",
         ("value", "cups_taken")),
        ("UPDATE cups_taken SET simulated = 7 WHERE place = 1", ("value", "cups_taken")),
        ("UPDATE cups_taken SET team = x'ff' WHERE place = 1", ("value", "cups_taken")),
        ("UPDATE keys_made SET warnings = 'none'", ("value", "keys_made")),
        ("UPDATE keys_made SET count = 'many'", ("value", "keys_made")),
        ("UPDATE balances_checked SET rows = '[{}]'", ("value", "balances_checked")),
        ("UPDATE keys_made SET count = 5000", ("interval", "keys_made")),
        ("UPDATE weighings SET source = 'simulated' WHERE place = 3", ("mixed", "cups_taken")),
        ("UPDATE weighings SET source = 'simulated' WHERE place = 2", ("mixed", "cups_handed_in")),
        ("UPDATE weighings SET source = 'simulated' WHERE place = 4", ("mixed", "keys_made")),
        ("DELETE FROM labels_taken WHERE kind = 'cup'", ("label", "labels_taken")),
        ("DELETE FROM labels_taken WHERE kind = 'jar'", ("label", "labels_taken")),
        ("INSERT INTO labels_taken VALUES ('cup', 0, '9', 'nobody')", ("label", "labels_taken")),
        ("DROP TABLE choices", ("table", "choices")),
        ("ALTER TABLE choices DROP COLUMN text", ("table", "choices")),
    ],
)  # fmt: skip
def test_what_was_spoilt_is_found(full: str, statement: str, expected: tuple[str, str]) -> None:
    spoil(full, "PRAGMA ignore_check_constraints = ON", statement)
    found = kinds(full)
    assert found == [expected] * len(found)
    assert found


def test_a_finding_names_the_row_and_says_why(full: str) -> None:
    spoil(full, "UPDATE cups_handed_in SET net = '93.5'")
    with closing(sqlite3.connect(full)) as file:
        [(row,)] = file.execute("SELECT id FROM cups_handed_in")
    [found] = check(full, any_points).findings
    assert found.row == row
    assert found.text == f"Cup {row}: 105.7 g less 12.3 g is not 93.5 g."


def test_points_are_scored_again(full: str) -> None:
    asked = []

    def no_points(*cup: object) -> bool:
        asked.append(cup)
        return False

    assert kinds(full, no_points) == [("points", "cups_handed_in")]
    assert asked == [(Decimal(100), Decimal("93.4"), Decimal("93.4"), "under")]


@pytest.mark.parametrize("table", [table.name for table in EVIDENCE])
@pytest.mark.parametrize("verb", ["UPDATE", "DELETE"])
def test_a_guard_that_is_gone_is_found(full: str, table: str, verb: str) -> None:
    with closing(sqlite3.connect(full)) as file:
        file.execute(f"DROP TRIGGER {table}_no_{verb}")
    assert kinds(full) == [("guard", table)]


def test_pages_that_are_damaged_are_found(full: str) -> None:
    with Path(full).open("r+b") as file:
        file.seek(3 * 4096)
        file.write(b"\xff" * 4096)
    found = kinds(full)
    assert found
    assert set(found) == {("file", "")}


def test_a_newer_file_is_nothing_to_judge(full: str) -> None:
    with closing(sqlite3.connect(full)) as file:
        file.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    [found] = check(full, any_points).findings
    assert "newer Gramstand" in found.text


def test_a_foreign_file_is_a_finding(tmp_path: Path) -> None:
    (tmp_path / "letter").write_text("Dear Sir or Madam, " * 100)
    [found] = check(str(tmp_path / "letter"), any_points).findings
    assert "is not a records file of Gramstand" in found.text


@pytest.mark.parametrize("make", [lambda path: None, Path.touch, Path.mkdir])
def test_where_nothing_was_kept_there_is_nothing_to_check(
    tmp_path: Path, make: Callable[[Path], None]
) -> None:
    make(tmp_path / "records")
    with pytest.raises(RecordsError) as caught:
        check(str(tmp_path / "records"), any_points)
    assert caught.value.problem in (Problem.NOT_THERE, Problem.A_FOLDER)


def test_a_kiosk_that_writes_is_no_trouble(where: str) -> None:
    some_records(where, cups=3)
    with closing(sqlite3.connect(where, isolation_level=None)) as writer:
        writer.execute("BEGIN IMMEDIATE")
        writer.execute("INSERT INTO choices VALUES ('material', 'sand')")
        assert kinds(where) == []


def test_labels_of_other_kinds_are_not_judged(full: str) -> None:
    spoil(full, "INSERT INTO labels_taken VALUES ('shelf', 0, '9', 'nobody')")
    assert kinds(full) == []
