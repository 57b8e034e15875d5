"""Records in one SQLite file: finding its place, making sure that it is ours, opening it safely.

Rollback journal and synchronous EXTRA: a commit that has returned survives a killed program and a
power cut (https://www.sqlite.org/pragma.html#pragma_synchronous). Write-ahead logging would need
fewer syncs, but several connections writing to one such file can damage it in SQLite before
3.51.3, and systems still ship older ones. Each transaction opens the file anew, so that a file
moved away in the middle of the day is noticed at once and never written into the void.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from functools import partial
from pathlib import Path
from typing import Any

from platformdirs import user_data_path
from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.pool import NullPool

from kiosk.records.errors import Problem, RecordsError, in_plain_words
from kiosk.records.guards import create_tables
from kiosk.records.migrations import migrate
from kiosk.records.models import SCHEMA_VERSION

APPLICATION_ID = 0x47725374  # "GrSt": says in the file's header whose file it is
WAIT_S = 5.0  # for another program to let go of the file
READS_ONLY = "reads_only"  # execution option of a connection that needs no writer's lock

_AT_CONNECT = (
    "PRAGMA foreign_keys = ON",
    "PRAGMA synchronous = EXTRA",
    "PRAGMA trusted_schema = OFF",
)


def usual_file() -> Path:
    """The file in the user's data folder; makes the folder, RecordsError if that fails."""
    folder = user_data_path("gramstand", appauthor=False)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise RecordsError(Problem.NOT_WRITABLE, where=folder) from error
    return folder / "records.sqlite"


def open_file(path: Path) -> Engine:
    """An engine on the file ``path`` (absolute); makes the file if there is none.

    Raises RecordsError for anything that is not a sound, writable records file of this version or
    an older one; such a file is left as it is.
    """
    _make_sure_of_file(path)
    engine = create_engine("sqlite://", creator=partial(_connect, path), poolclass=NullPool)
    event.listen(engine, "begin", _begin)
    with in_plain_words(str(path)):
        with closing(_connect(path)) as connection:
            _refuse_unless_ours(connection, path)
        with engine.begin() as connection:
            _prepare(connection)
    return engine


def _make_sure_of_file(path: Path) -> None:
    try:
        if path.is_dir():
            raise RecordsError(Problem.A_FOLDER, where=path)
        if not path.parent.is_dir():
            raise RecordsError(Problem.NO_FOLDER, where=path.parent)
        if not path.exists():
            path.touch()
    except OSError as error:
        raise RecordsError(Problem.NOT_WRITABLE, where=path) from error


def _connect(path: Path) -> sqlite3.Connection:
    # mode=rw never makes a file; no isolation level: sqlite3 then leaves transactions to us, also
    # around DDL, on every Python.
    connection = sqlite3.connect(
        f"{path.as_uri()}?mode=rw", uri=True, timeout=WAIT_S, isolation_level=None
    )
    try:
        for pragma in _AT_CONNECT:
            connection.execute(pragma)
    except sqlite3.Error:
        connection.close()
        raise
    return connection


def _begin(connection: Connection) -> None:
    # A transaction that reads first and writes later could meet another writer in between.
    reads_only = connection.get_execution_options().get(READS_ONLY, False)
    connection.exec_driver_sql("BEGIN" if reads_only else "BEGIN IMMEDIATE")


def _refuse_unless_ours(connection: sqlite3.Connection, path: Path) -> None:
    if is_blank(connection):
        return
    problem = what_is_wrong(connection)
    if problem is not None:
        raise RecordsError(problem, where=path)
    connection.execute("PRAGMA journal_mode = DELETE")


def is_blank(connection: sqlite3.Connection) -> bool:
    """Whether the file was just made: nobody's, without any table."""
    return not (
        _one(connection, "PRAGMA application_id")
        or _one(connection, "PRAGMA user_version")
        or _one(connection, "SELECT count(*) FROM sqlite_master")
    )


def what_is_wrong(connection: sqlite3.Connection) -> Problem | None:
    """Why a file that is not blank is no records file for this program; None if it is one."""
    if _one(connection, "PRAGMA application_id") != APPLICATION_ID:
        return Problem.FOREIGN
    version = _one(connection, "PRAGMA user_version")
    if version > SCHEMA_VERSION:
        return Problem.NEWER
    if version < 1 or _one(connection, "PRAGMA quick_check(1)") != "ok":
        return Problem.DAMAGED
    return None


def _one(connection: sqlite3.Connection, question: str) -> Any:
    return connection.execute(question).fetchone()[0]


def _prepare(connection: Connection) -> None:
    # Asked again inside the transaction: another kiosk may have made the tables just now.
    if connection.exec_driver_sql("PRAGMA application_id").scalar() != APPLICATION_ID:
        create_tables(connection)
        connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
    else:
        migrate(connection, connection.exec_driver_sql("PRAGMA user_version").scalar_one())
    # Written every time, because writing shows whether the file and its folder can be written.
    connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA_VERSION}")
