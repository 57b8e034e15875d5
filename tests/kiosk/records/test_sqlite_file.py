"""Opening a records file, and every way in which it can fail."""

from __future__ import annotations

import sqlite3
import stat
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import Connection

from kiosk.records import sqlite_file
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.guards import create_tables
from kiosk.records.models import SCHEMA_VERSION
from kiosk.records.store import Store
from tests.helpers.ordinary_person import ordinary_person
from tests.helpers.recorded import cup_taken
from tests.helpers.sqlite_files import at_every_connect, pragma, some_records


def trouble(where: str | None) -> RecordsError:
    with pytest.raises(RecordsError) as caught:
        Store(where)
    return caught.value


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


def records_of_no_version(path: Path) -> None:
    some_records(str(path))
    with closing(sqlite3.connect(path)) as file:
        file.execute("PRAGMA user_version = 0")


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
        (records_of_no_version, Problem.DAMAGED, "is damaged"),
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
