"""What a check of the records finds wrong: findings, and the questions about a SQLite file."""

from __future__ import annotations

import sqlite3
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum
from typing import Any

from sqlalchemy import Boolean, Column, Connection, Table

from kiosk.records.guards import EVIDENCE
from kiosk.records.looking import stored
from kiosk.texts import say


class Kind(StrEnum):
    """What sort of thing is wrong; the value is the last part of its text's key."""

    FILE = "file"  # the file as such
    TABLE = "table"  # a table that is not there
    GUARD = "guard"  # a table whose rows could be changed
    REFERENCE = "reference"  # a row that refers to none
    VALUE = "value"  # a cell that cannot be read
    NET = "net"
    POINTS = "points"
    MIXED = "mixed"  # simulated among real
    LABEL = "label"  # a number or letter that is taken, or free, wrongly
    INTERVAL = "interval"  # a count outside its own interval
    VOLUME = "volume"  # a volume outside its own interval


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Something that is wrong. ``row`` is the id of the row or its place, "" for none."""

    kind: Kind
    table: str
    row: str
    text: str


def finding(kind: Kind, table_name: str = "", row: object = "", **values: object) -> Finding:
    """A finding with its sentence."""
    text = say(f"check.{kind}", table=table_name, row=row, **values)
    return Finding(kind=kind, table=table_name, row=str(row), text=text)


def in_the_file(connection: sqlite3.Connection) -> Iterator[Finding]:
    """What SQLite itself finds: pages, indexes, constraints, references."""
    for (why,) in connection.execute("PRAGMA integrity_check"):
        if why != "ok":
            yield finding(Kind.FILE, why=why)
    for name, place, parent, _ in connection.execute("PRAGMA foreign_key_check"):
        yield finding(Kind.REFERENCE, name, place, parent=parent)


def without_guard(connection: sqlite3.Connection, tables: Collection[str]) -> Iterator[Finding]:
    """Those of ``tables`` whose kept rows the file does not defend against change."""
    question = "SELECT tbl_name, upper(sql) FROM sqlite_master WHERE type = 'trigger'"
    guards = connection.execute(question).fetchall()
    for evidence in EVIDENCE:
        for verb in ("UPDATE", "DELETE"):
            if evidence.name in tables and not any(
                name == evidence.name and f" BEFORE {verb} ON " in sql for name, sql in guards
            ):
                yield finding(Kind.GUARD, evidence.name, verb=verb)


def unreadable_cells(connection: Connection, one: Table) -> Iterator[Finding]:
    """Cells whose content is not of the kind that the column keeps."""
    names = [found.name for found in one.columns]
    told_by = names.index("id" if "id" in names else next(iter(one.primary_key)).name)
    for row in stored(connection, one, names):
        for found, value in zip(one.columns, row, strict=True):
            if not _readable(found, value, connection):
                yield finding(Kind.VALUE, one.name, row[told_by], column=found.name)


def _readable(found: Column[Any], value: Any, connection: Connection) -> bool:
    if value is None:
        return bool(found.nullable)
    decode = getattr(found.type, "process_result_value", None)
    if decode is None:
        return _is_plain(found, value)
    try:
        read = decode(value, connection.dialect)
    except (ValueError, ArithmeticError, TypeError, KeyError):
        return False
    if isinstance(read, datetime):
        return read.utcoffset() == timedelta(0)
    return read.is_finite() if isinstance(read, Decimal) else True


def _is_plain(found: Column[Any], value: Any) -> bool:
    if isinstance(found.type, Boolean):
        return value in (0, 1)
    return isinstance(value, found.type.python_type)
