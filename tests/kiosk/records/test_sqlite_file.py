"""Opening a records file, and every way in which it can fail."""

from __future__ import annotations

import dataclasses
import os
import sqlite3
import stat
import tempfile
import threading
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine, event

from kiosk.records import sqlite_file
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.guards import create_tables
from kiosk.records.models import SCHEMA_VERSION
from kiosk.records.store import Store
from tests.helpers.ordinary_person import ordinary_person
from tests.helpers.recorded import cup_taken, handed_in, refused, weighing


def trouble(where: str | None) -> RecordsError:
    with pytest.raises(RecordsError) as caught:
        Store(where)
    return caught.value


def pragma(where: str, name: str) -> object:
    with closing(sqlite3.connect(where)) as file:
        return file.execute(f"PRAGMA {name}").fetchone()[0]


def some_records(where: str, cups: int = 30) -> None:
    store = Store(where)
    store.save(*(cup_taken(number) for number in range(1, cups + 1)))
    store.close()


@contextmanager
def at_every_connect(look: Callable[[sqlite3.Connection, object], None]) -> Iterator[None]:
    event.listen(Engine, "connect", look)
    try:
        yield
    finally:
        event.remove(Engine, "connect", look)


# Ours ------------------------------------------------------------------------------------------


def test_a_new_file_says_whose_it_is_and_of_which_version(store: Store, where: str) -> None:
    assert pragma(where, "application_id") == 0x47725374
    assert pragma(where, "user_version") == SCHEMA_VERSION


def test_a_file_that_was_put_into_write_ahead_mode_is_taken_out_of_it(where: str) -> None:
    some_records(where)
    assert pragma(where, "journal_mode = WAL") == "wal"
    Store(where)
    assert pragma(where, "journal_mode") == "delete"


def test_every_connection_syncs_fully_and_checks_foreign_keys(store: Store) -> None:
    seen = []

    def look(connection: sqlite3.Connection, _record: object) -> None:
        for name in ("journal_mode", "synchronous", "foreign_keys"):
            seen.extend(connection.execute(f"PRAGMA {name}").fetchone())

    with at_every_connect(look):
        store.save(cup_taken())
    assert seen == ["delete", 3, 1]  # 3 is EXTRA


def test_without_a_place_the_records_lie_in_the_users_data_folder(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(sqlite_file, "user_data_path", lambda *_, **__: tmp_path / "a" / "b")
    assert Store(None).where == str(tmp_path / "a" / "b" / "records.sqlite")


@pytest.mark.parametrize("name", ["Zaunkönig 1.sqlite", "what?.db", "50%#1.db"])
def test_any_file_name_will_do(tmp_path: Path, name: str) -> None:
    some_records(str(tmp_path / name), cups=1)
    assert [path.name for path in tmp_path.iterdir()] == [name]


def test_an_empty_file_becomes_a_records_file(where: str) -> None:
    Path(where).touch()
    some_records(where, cups=2)
    assert len(Store(where).cups_out(simulated=False)) == 2


def test_tables_are_made_all_or_none(monkeypatch: pytest.MonkeyPatch, where: str) -> None:
    class PowerCutError(Exception):
        pass

    def power_cut(connection: Connection) -> None:
        create_tables(connection)
        raise PowerCutError

    with monkeypatch.context() as patch:
        patch.setattr(sqlite_file, "create_tables", power_cut)
        with pytest.raises(PowerCutError):
            Store(where)
    assert pragma(where, "page_count") == 0
    assert Store(where).cups_out(simulated=False) == []


# Not ours, or not sound --------------------------------------------------------------------------


def foreign_database(path: Path) -> None:
    with closing(sqlite3.connect(path)) as file:
        file.execute("CREATE TABLE recipes (name TEXT)")
        file.commit()


def marked_database(path: Path) -> None:
    with closing(sqlite3.connect(path)) as file:
        file.execute("PRAGMA application_id = 1234")


def essay(path: Path) -> None:
    path.write_bytes(b"My holidays. " * 1000)


def newer_records(path: Path) -> None:
    some_records(str(path))
    with closing(sqlite3.connect(path)) as file:
        file.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")


def truncated_records(path: Path) -> None:
    some_records(str(path))
    path.write_bytes(path.read_bytes()[:-5000])


def damaged_records(path: Path) -> None:
    some_records(str(path))
    content = bytearray(path.read_bytes())
    page = 4096 * 4
    content[page : page + 2000] = b"\xa5" * 2000
    path.write_bytes(content)


@pytest.mark.parametrize(
    ("make", "problem", "sentence"),
    [
        (foreign_database, Problem.FOREIGN, "is not a records file of Gramstand"),
        (marked_database, Problem.FOREIGN, "is not a records file of Gramstand"),
        (essay, Problem.FOREIGN, "is not a records file of Gramstand"),
        (newer_records, Problem.NEWER, "was written by a newer Gramstand"),
        (truncated_records, Problem.DAMAGED, "is damaged"),
        (damaged_records, Problem.DAMAGED, "is damaged"),
    ],
)
def test_a_file_that_cannot_be_used_is_refused_and_left_as_it_is(
    tmp_path: Path, make: Callable[[Path], None], problem: Problem, sentence: str
) -> None:
    path = tmp_path / "theirs.db"
    make(path)
    before = path.read_bytes()
    error = trouble(str(path))
    assert error.problem is problem
    assert str(error).startswith(f"{path} {sentence}")
    assert path.read_bytes() == before
    assert [entry.name for entry in tmp_path.iterdir()] == ["theirs.db"]


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    assert trouble(str(tmp_path)).problem is Problem.A_FOLDER


def test_a_folder_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    error = trouble(str(tmp_path / "stick" / "records.sqlite"))
    assert error.problem is Problem.NO_FOLDER
    assert list(tmp_path.iterdir()) == []


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that everybody can reach, unlike pytest's own."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        folder.chmod(0o777)
        yield folder
        folder.chmod(0o777)


def test_a_folder_that_cannot_be_written_is_named(open_folder: Path) -> None:
    open_folder.chmod(0o555)
    with ordinary_person():
        error = trouble(str(open_folder / "records.sqlite"))
    assert error.problem is Problem.NOT_WRITABLE
    assert str(open_folder) in str(error)


def test_a_file_that_cannot_be_written_is_refused_at_once(open_folder: Path) -> None:
    path = open_folder / "records.sqlite"
    some_records(str(path))
    path.chmod(0o444)
    with ordinary_person():
        assert trouble(str(path)).problem is Problem.NOT_WRITABLE


def test_a_file_in_a_folder_that_takes_no_journal_is_refused_at_once(open_folder: Path) -> None:
    path = open_folder / "records.sqlite"
    some_records(str(path))
    path.chmod(0o666)
    open_folder.chmod(0o555)
    with ordinary_person():
        assert trouble(str(path)).problem is Problem.NOT_WRITABLE


def test_a_folder_that_cannot_be_entered_is_named(open_folder: Path) -> None:
    open_folder.chmod(stat.S_IWUSR)
    with ordinary_person():
        assert trouble(str(open_folder / "records.sqlite")).problem is Problem.NOT_WRITABLE


def test_a_data_folder_that_cannot_be_made_is_named(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "file").touch()
    monkeypatch.setattr(sqlite_file, "user_data_path", lambda *_, **__: tmp_path / "file" / "b")
    assert trouble(None).problem is Problem.NOT_WRITABLE


# In the middle of the day ------------------------------------------------------------------------


@contextmanager
def little_room(where: str) -> Iterator[None]:
    """A disk that takes no page more than the file has."""
    pages = pragma(where, "page_count")

    def limit(connection: sqlite3.Connection, _record: object) -> None:
        connection.execute(f"PRAGMA max_page_count = {pages}")

    with at_every_connect(limit):
        yield


def test_a_full_disk_is_named_and_the_same_entries_can_be_kept_later(where: str) -> None:
    Store(where)
    long_frame = weighing("12.3", raw=bytes(100_000))
    entries = (cup_taken(7), dataclasses.replace(cup_taken(8), empty=long_frame))
    with little_room(where):
        crowded = Store(where)
        assert refused(crowded, *entries) is Problem.FULL
        assert crowded.cups_out(simulated=False) == []
    crowded.save(*entries)
    assert [cup.number for cup in crowded.cups_out(simulated=False)] == [7, 8]


def test_another_program_that_holds_the_file_is_named(
    monkeypatch: pytest.MonkeyPatch, store: Store, where: str
) -> None:
    monkeypatch.setattr(sqlite_file, "WAIT_S", 0.05)
    with closing(sqlite3.connect(where)) as holder:
        holder.execute("BEGIN IMMEDIATE")
        assert refused(store, cup_taken(7)) is Problem.IN_USE
        assert store.cups_out(simulated=False) == []
    store.save(cup_taken(7))


def test_two_programs_that_write_at_once_wait_for_each_other(where: str) -> None:
    stores = [Store(where), Store(where)]
    start = threading.Barrier(len(stores))

    def work(store: Store, first: int) -> int:
        start.wait()
        for number in range(first, first + 20):
            store.save(cup_taken(number))
        return first

    with ThreadPoolExecutor() as pool:
        assert list(pool.map(work, stores, (1, 51))) == [1, 51]
    assert len(stores[0].cups_out(simulated=False)) == 40


def test_a_file_that_went_away_is_missed_at_once_and_found_again(store: Store, where: str) -> None:
    cup = cup_taken()
    store.save(cup)
    os.rename(where, where + ".away")
    assert refused(store, handed_in(cup)) is Problem.NOT_WRITABLE
    assert not Path(where).exists()
    os.rename(where + ".away", where)
    store.save(handed_in(cup))
    assert len(store.last_tries("Heron", simulated=False)) == 1
