from __future__ import annotations

import sqlite3
from contextlib import closing
from multiprocessing import get_context
from pathlib import Path

import pytest

from kiosk.records import backup as backing_up
from kiosk.records.backup import backup
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.models import SCHEMA_VERSION
from kiosk.records.sqlite_file import APPLICATION_ID
from kiosk.records.store import Store
from tests.helpers.killed_keeper import keep_until_killed
from tests.helpers.recorded import cup_taken, handed_in
from tests.helpers.sqlite_files import pragma, some_records, version_1


@pytest.fixture
def target(tmp_path: Path) -> Path:
    return tmp_path / "copies" / "copy.sqlite"


@pytest.fixture(autouse=True)
def copies(target: Path) -> Path:
    target.parent.mkdir()
    return target.parent


def refused(where: str, target: Path) -> RecordsError:
    with pytest.raises(RecordsError) as caught:
        backup(where, target)
    return caught.value


def ids(where: Path | str, table: str = "cups_taken") -> list[str]:
    with closing(sqlite3.connect(where)) as file:
        return [row[0] for row in file.execute(f"SELECT id FROM {table} ORDER BY place")]


def test_a_copy_is_records_that_a_kiosk_can_open(store: Store, where: str, target: Path) -> None:
    cup = cup_taken(3)
    store.save(cup, handed_in(cup), cup_taken(4))
    assert backup(where, target) == target.stat().st_size
    copy = Store(str(target))
    assert [out.number for out in copy.cups_out(simulated=False)] == [4]
    assert [one.id for one in copy.last_tries("Heron", simulated=False)] == [cup.id]
    copy.close()


def test_a_copy_says_whose_and_of_which_version_it_is(where: str, target: Path) -> None:
    version_1(where)
    backup(where, target)
    assert (pragma(str(target), "application_id"), pragma(str(target), "user_version")) == (
        APPLICATION_ID, 1,
    )  # fmt: skip


def test_only_the_copy_is_left_behind(where: str, target: Path) -> None:
    some_records(where)
    before = Path(where).read_bytes()
    backup(where, target)
    assert [file.name for file in target.parent.iterdir()] == [target.name]
    assert Path(where).read_bytes() == before


def test_copies_made_while_a_kiosk_writes_are_whole(where: str, copies: Path) -> None:
    Store(where).close()
    context = get_context("forkserver")
    context.set_forkserver_preload(["tests.helpers.killed_keeper"])
    told, tells = context.Pipe(duplex=False)
    keeper = context.Process(target=keep_until_killed, args=(where, tells))
    keeper.start()
    tells.close()
    said: list[str] = []
    before: list[tuple[str, ...]] = []
    try:
        for number in range(8):
            said += (told.recv_bytes().decode() for _ in range(10))
            before.append(tuple(said))
            backup(where, copies / f"{number}.sqlite")
        went_on = told.poll(10)
    finally:
        keeper.kill()
        keeper.join()
        told.close()
    sizes = []
    for number, kept in enumerate(before):
        copy = copies / f"{number}.sqlite"
        assert pragma(str(copy), "integrity_check") == "ok"
        there = {*ids(copy), *ids(copy, "cups_handed_in")}
        assert set(kept) <= there  # nothing that was said to be kept is missing
        sizes.append(len(there))
    assert sizes == sorted(sizes)
    assert sizes[-1] > sizes[0]
    assert went_on


def test_a_transaction_in_the_middle_is_not_in_the_copy(where: str, target: Path) -> None:
    some_records(where, cups=2)
    with closing(sqlite3.connect(where, isolation_level=None)) as writer:
        writer.execute("BEGIN IMMEDIATE")
        writer.execute("INSERT INTO choices VALUES ('material', 'sand')")
        backup(where, target)
        writer.execute("COMMIT")
    with closing(sqlite3.connect(target)) as copy:
        assert copy.execute("SELECT count(*) FROM choices").fetchone() == (0,)


def test_whoever_never_lets_go_of_the_file_is_told_of(
    where: str, target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    some_records(where, cups=1)
    monkeypatch.setattr("kiosk.records.looking.WAIT_S", 0.0)
    with closing(sqlite3.connect(where, isolation_level=None)) as writer:
        writer.execute("BEGIN EXCLUSIVE")
        assert refused(where, target).problem is Problem.IN_USE
    assert list(target.parent.iterdir()) == []


def test_patience_with_a_writer_that_comes_between_ends(
    where: str, target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    some_records(where, cups=1)
    monkeypatch.setattr("kiosk.records.looking.WAIT_S", 0.0)
    monkeypatch.setattr("kiosk.records.looking.PATIENCE_S", -1.0)
    reserve = backing_up._reserve
    with closing(sqlite3.connect(where, isolation_level=None)) as writer:

        def reserve_and_lock(path: Path) -> None:
            reserve(path)
            writer.execute("BEGIN EXCLUSIVE")

        monkeypatch.setattr(backing_up, "_reserve", reserve_and_lock)
        assert refused(where, target).problem is Problem.IN_USE
    assert list(target.parent.iterdir()) == []


def test_a_file_that_is_there_is_never_overwritten(where: str, target: Path) -> None:
    some_records(where)
    target.write_text("mine")
    error = refused(where, target)
    assert (error.problem, str(target) in str(error)) == (Problem.THERE_ALREADY, True)
    assert target.read_text() == "mine"


def test_the_records_are_not_their_own_copy(where: str) -> None:
    some_records(where)
    assert refused(where, Path(where)).problem is Problem.THERE_ALREADY
    assert len(ids(where)) == 30


def test_a_folder_that_is_not_there_is_named(where: str, tmp_path: Path) -> None:
    some_records(where)
    assert refused(where, tmp_path / "none" / "copy").problem is Problem.NO_FOLDER


def test_damaged_records_are_not_copied(where: str, target: Path) -> None:
    some_records(where)
    with Path(where).open("r+b") as file:
        file.seek(3 * 4096)
        file.write(b"\xff" * 4096)
    assert refused(where, target).problem is Problem.DAMAGED
    assert list(target.parent.iterdir()) == []


def test_what_only_the_full_check_of_a_copy_finds_counts_too(where: str, target: Path) -> None:
    some_records(where)
    with closing(sqlite3.connect(where, isolation_level=None)) as file:
        file.execute("PRAGMA writable_schema = ON")
        file.execute(
            "UPDATE sqlite_master SET sql = replace(sql, '(team)', '(material)')"
            " WHERE type = 'index' AND tbl_name = 'cups_taken'"
        )
    assert pragma(where, "quick_check(1)") == "ok"
    assert refused(where, target).problem is Problem.DAMAGED
    assert list(target.parent.iterdir()) == []


def test_newer_records_are_copied_as_they_are(where: str, target: Path) -> None:
    some_records(where)
    with closing(sqlite3.connect(where)) as file:
        file.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    backup(where, target)
    assert pragma(str(target), "user_version") == SCHEMA_VERSION + 1


def test_foreign_files_are_not_copied(tmp_path: Path, target: Path) -> None:
    (tmp_path / "letter").write_text("Dear Sir or Madam, " * 100)
    assert refused(str(tmp_path / "letter"), target).problem is Problem.FOREIGN
    assert list(target.parent.iterdir()) == []
