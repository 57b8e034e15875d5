"""Looking at records without changing them, at one moment of theirs, while a kiosk goes on.

A file of an older version is brought up to the present one in memory only. While somebody looks, a
kiosk that writes has to wait: looks are short.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from functools import partial
from pathlib import Path
from time import monotonic
from typing import Any

from sqlalchemy import Connection, Engine, Table, column, create_engine, event, select, table
from sqlalchemy.pool import NullPool, StaticPool

from kiosk.records.errors import Problem, RecordsError, in_plain_words
from kiosk.records.migrations import migrate
from kiosk.records.models import SCHEMA_VERSION
from kiosk.records.places import file_of
from kiosk.records.server import open_server
from kiosk.records.sqlite_file import WAIT_S, is_blank, what_is_wrong

_AT_ONCE = 1000  # rows
PATIENCE_S = 30.0  # with a program that keeps writing


@contextmanager
def looking(where: str | None) -> Iterator[Connection]:
    """A connection to the records that changes nothing and sees one moment of them.

    RecordsError if there are none, or if they are not ours, damaged, or of a newer version.
    """
    path = file_of(where)
    if path is None:
        engine, shown = open_server(where or "")
        engine = engine.execution_options(isolation_level="REPEATABLE READ")
    else:
        engine, shown = _engine_to_look(path), str(path)
    try:
        with in_plain_words(shown), engine.connect() as connection:
            yield connection
    finally:
        engine.dispose()


@contextmanager
def existing(path: Path) -> Iterator[sqlite3.Connection]:
    """A connection to the records file ``path`` itself; RecordsError if nothing was kept there."""
    if path.is_dir():
        raise RecordsError(Problem.A_FOLDER, where=path)
    if not path.exists():
        raise RecordsError(Problem.NOT_THERE, where=path)
    with in_plain_words(str(path)), closing(connect_to_look(path)) as connection:
        if is_blank(connection):
            raise RecordsError(Problem.NOT_THERE, where=path)
        yield connection


def copy_whole(source: sqlite3.Connection, copy: sqlite3.Connection, path: Path) -> None:
    """Copy the file ``path`` as it is at one moment; RecordsError if it is never let go of."""
    until = monotonic() + PATIENCE_S

    def be_patient(status: int, _remaining: int, _total: int) -> None:
        if status != sqlite3.SQLITE_DONE and monotonic() > until:
            raise RecordsError(Problem.IN_USE, where=path)

    # In one step: every write of another program would begin smaller ones anew.
    source.backup(copy, pages=-1, progress=be_patient)


def _engine_to_look(path: Path) -> Engine:
    with existing(path) as connection:
        problem = what_is_wrong(connection)
        if problem is not None:
            raise RecordsError(problem, where=path)
        version = connection.execute("PRAGMA user_version").fetchone()[0]
        if version < SCHEMA_VERSION:
            return _brought_up(connection, path, version)
    engine = create_engine("sqlite://", creator=partial(connect_to_look, path), poolclass=NullPool)
    event.listen(engine, "begin", _begin)
    return engine


def _brought_up(source: sqlite3.Connection, path: Path, version: int) -> Engine:
    copy = sqlite3.connect(":memory:", isolation_level=None)
    try:
        copy_whole(source, copy, path)
    except BaseException:
        copy.close()
        raise
    engine = create_engine("sqlite://", creator=lambda: copy, poolclass=StaticPool)
    event.listen(engine, "begin", _begin)
    with engine.begin() as connection:
        migrate(connection, version)
    return engine


def _begin(connection: Connection) -> None:
    connection.exec_driver_sql("BEGIN")


def stored(connection: Connection, one: Table, names: Sequence[str]) -> Iterator[Sequence[Any]]:
    """The cells of a table as they are stored, untouched by their columns' types, in its order."""
    question: Any = select(*map(column, names)).select_from(table(one.name))
    in_order = question.order_by(*(column(key.name) for key in one.primary_key))
    yield from connection.execute(in_order, execution_options={"yield_per": _AT_ONCE})


def connect_to_look(path: Path) -> sqlite3.Connection:
    """A connection to the file that changes nothing but what a killed program left half-written."""
    # mode=rw: what a killed program left half-written can only be undone by writing.
    connection = sqlite3.connect(
        f"{path.as_uri()}?mode=rw", uri=True, timeout=WAIT_S, isolation_level=None
    )
    try:
        connection.execute("PRAGMA query_only = ON")
        connection.execute("PRAGMA trusted_schema = OFF")
    except sqlite3.Error:
        connection.close()
        raise
    return connection
