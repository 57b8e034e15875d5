"""Records as files for other programs: every table as CSV, with the digits that were kept."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TextIO

from sqlalchemy import Boolean, Column, Connection, Table

from kiosk.records.columns import Exact
from kiosk.records.csv_cells import harmless, line
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.looking import looking, stored
from kiosk.records.models import SECRETS, Base, ChoiceRow, Kept

_NUMBER = re.compile(r"-?[0-9]+(?:\.[0-9]+)?(?:E[+-]?[0-9]+)?")

_FIRST = tuple(Kept.__annotations__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Exported:
    """A table that was written to ``file``."""

    table: str
    file: Path
    rows: int


def export(where: str | None, folder: Path) -> Iterator[Exported]:
    """Write every table to ``folder`` (made if need be) as ``TABLE.csv``, one after the other.

    All of them show one moment, older records as tables of the present version. Masses and other
    exact numbers keep their digits, times are UTC, frames are hexadecimal, yes and no are true and
    false. RecordsError, and nothing written, if one of the files is there already or the folder
    cannot be written.
    """
    written: list[Path] = []
    try:
        with looking(where) as connection:
            folder.mkdir(parents=True, exist_ok=True)
            tables = Base.metadata.sorted_tables
            for one in tables:
                if (folder / f"{one.name}.csv").exists():
                    raise RecordsError(Problem.THERE_ALREADY, where=folder / f"{one.name}.csv")
            for one in tables:
                path = folder / f"{one.name}.csv"
                with path.open("x", encoding="utf-8", newline="") as file:
                    written.append(path)
                    rows = _write(connection, one, file)
                yield Exported(table=one.name, file=path, rows=rows)
    except BaseException as error:
        for path in written:
            path.unlink(missing_ok=True)
        if isinstance(error, FileExistsError) and not folder.is_dir():
            raise RecordsError(Problem.THERE_ALREADY, where=folder) from error
        if isinstance(error, OSError):
            raise RecordsError(Problem.NOT_WRITABLE, where=folder) from error
        raise


def _write(connection: Connection, one: Table, file: TextIO) -> int:
    columns = sorted(one.columns, key=lambda found: found.name not in _FIRST)
    file.write(line(found.name for found in columns))
    names = [found.name for found in columns]
    count = 0
    for row in stored(connection, one, names):
        if one is ChoiceRow.__table__ and row[names.index("name")] in SECRETS:
            continue
        file.write(line(map(_cell, columns, row)))
        count += 1
    return count


def _cell(found: Column[Any], value: Any) -> str | None:
    if value is None:
        return None
    if isinstance(found.type, Boolean):
        return "true" if value else "false"
    if isinstance(value, bytes):
        return value.hex()
    text = str(value)
    if isinstance(value, str) and not (isinstance(found.type, Exact) and _NUMBER.fullmatch(text)):
        return harmless(text)
    return text
