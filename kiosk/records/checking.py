"""Do the records hold together? Asked of the file first, then cell by cell, then of the sense.

Each later question needs the answers of the earlier ones to be good, so a check goes on only
while nothing was found. Nothing is changed or mended.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import func, select

from kiosk.records.errors import Problem, RecordsError
from kiosk.records.findings import (
    Finding,
    Kind,
    finding,
    in_the_file,
    unreadable_cells,
    without_guard,
)
from kiosk.records.looking import existing, looking
from kiosk.records.models import SCHEMA_VERSION, Base
from kiosk.records.places import file_of
from kiosk.records.sense import Fits, senseless
from kiosk.records.sqlite_file import what_is_wrong

_OF_THE_FILE = (Problem.FOREIGN, Problem.NEWER, Problem.DAMAGED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """What a check looked at, and what is wrong with it."""

    tables: int
    rows: int
    findings: tuple[Finding, ...]


def check(where: str | None, fits: Fits) -> Checked:
    """Check the records. ``fits`` says whether points and side can come of target and net.

    RecordsError if there are none, or if they cannot be reached or read at the moment.
    """
    path = file_of(where)
    found = [] if path is None else _in_the_file(path)
    if found:
        return Checked(tables=0, rows=0, findings=tuple(found))
    with looking(where) as connection:
        tables = Base.metadata.sorted_tables
        rows = sum(connection.scalar(select(func.count()).select_from(one)) or 0 for one in tables)
        found = [cell for one in tables for cell in unreadable_cells(connection, one)]
        found = found or list(senseless(connection, fits))
    return Checked(tables=len(tables), rows=rows, findings=tuple(found))


def _in_the_file(path: Path) -> list[Finding]:
    """What is wrong with a SQLite file before any row is understood."""
    found: list[Finding] = []
    try:
        with existing(path) as connection:
            problem = what_is_wrong(connection)
            if problem is not Problem.DAMAGED and problem is not None:
                raise RecordsError(problem, where=path)
            found += in_the_file(connection)
            if problem is not None and not found:
                raise RecordsError(problem, where=path)
            found += _in_the_schema(connection)
    except RecordsError as error:
        if error.problem not in _OF_THE_FILE:
            raise
        found.append(Finding(kind=Kind.FILE, table="", row="", text=str(error)))
    return found


def _in_the_schema(connection: sqlite3.Connection) -> Iterator[Finding]:
    """Tables and columns that are not there (an older version has fewer), and missing guards."""
    there: dict[str, set[str]] = {}
    for name, column in connection.execute(
        "SELECT m.name, c.name FROM sqlite_master m, pragma_table_info(m.name) c"
        " WHERE m.type = 'table'"
    ):
        there.setdefault(name, set()).add(column)
    if connection.execute("PRAGMA user_version").fetchone()[0] == SCHEMA_VERSION:
        for table in Base.metadata.sorted_tables:
            missing = set(table.columns.keys()) - there.get(table.name, set())
            if missing:
                yield finding(Kind.TABLE, table.name, columns=", ".join(sorted(missing)))
    yield from without_guard(connection, there.keys())
