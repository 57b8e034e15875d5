"""A database for the tests of one process: made once, emptied before each test."""

from __future__ import annotations

import psycopg
from psycopg.sql import SQL, Identifier

from kiosk.records.models import Base
from kiosk.records.store import Store

_TABLES = tuple(table.name for table in reversed(Base.metadata.sorted_tables))


def with_tables(where: str) -> None:
    """Make the tables."""
    Store(where).close()


def empty(where: str) -> None:
    """Take out all rows, past the guards that keep a program from doing so."""
    with psycopg.connect(where) as connection:
        connection.execute("SET session_replication_role = replica")
        for table in _TABLES:
            connection.execute(SQL("DELETE FROM {}").format(Identifier(table)))
