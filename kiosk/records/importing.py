"""Records of another kiosk, taken in from its exported tables: each row once, by its own id.

What is here already is left alone. What does not fit what is here (another content under the same
id, a cup that was handed in here too, an answer that was typed here too or comes after the lock) is
a conflict: it is named, and what is here stands. A division that was locked elsewhere without
knowing all that is noted about it here stays open. What this version cannot read is not taken.
Numbers and letters in use follow from what is kept.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from pathlib import Path
from typing import Any

from sqlalchemy import Boolean, Column, Integer, LargeBinary, Table, func, insert, select, text
from sqlalchemy.exc import IntegrityError, StatementError
from sqlalchemy.orm import Session

from kiosk.records.columns import Exact, Moment
from kiosk.records.csv_cells import as_it_was
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.importing_rounds import Readable, Rounds
from kiosk.records.models import SECRETS, Base, ChoiceRow, LabelTakenRow, RoundNoteRow
from kiosk.records.sense import labels_wanted

_NUMBER = re.compile(r"-?[0-9]+(?:\.[0-9]+)?(?:E[+-]?[0-9]+)?")
_WHOLE = re.compile(r"-?[0-9]+")
_PLACE = "place"
_LABELS = LabelTakenRow.__tablename__  # they follow from the rest


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """A row that was not taken in: its table, its id, and what it says by column."""

    table: str
    id: str
    theirs: Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenIn:
    """What came of one table: how many rows are new, how many were here already."""

    table: str
    new: int
    known: int
    conflicts: tuple[Conflict, ...]


def take_in(session: Session, folder: Path, readable: Readable) -> list[TakenIn]:
    """Take in all tables of an exported folder, in the transaction of that session.

    ``readable`` says of a round's note, by kind, about and content, whether this version can read
    it.
    RecordsError, with the file and the line, if one of them is not there or cannot be read: the
    caller's transaction is then to be given up.
    """
    tables = [one for one in Base.metadata.sorted_tables if one.name != _LABELS]
    found = [_take_in_table(session, one, folder, readable) for one in tables]
    return [*found, _labels_follow(session)]


def _take_in_table(session: Session, one: Table, folder: Path, readable: Readable) -> TakenIn:
    empty = not session.execute(select(one).limit(1)).first()
    new = known = 0
    conflicts: list[Conflict] = []
    rows = list(_rows(folder / f"{one.name}.csv", one))
    judge = Rounds(session, rows, readable) if one.name == RoundNoteRow.__tablename__ else None
    for row in rows:
        if one.name == ChoiceRow.__tablename__:
            here = session.get(ChoiceRow, row["name"])
            taken = here is None and row["name"] not in SECRETS
            if taken:
                session.add(ChoiceRow(**row))
            new, known = new + taken, known + (not taken)
            continue
        fate = _take_in_row(session, one, row, judge, keep_place=empty)
        new, known = new + (fate is True), known + (fate is None)
        if fate is False:
            conflicts.append(Conflict(table=one.name, id=row["id"], theirs=row))
    if empty and new and session.get_bind().dialect.name == "postgresql":
        _go_on_from_last(session, one)
    return TakenIn(table=one.name, new=new, known=known, conflicts=tuple(conflicts))


def _take_in_row(
    session: Session,
    one: Table,
    row: dict[str, Any],
    judge: Rounds | None,
    *,
    keep_place: bool,
) -> bool | None:
    """True: taken in; None: it is here already; False: it does not fit."""
    here = session.execute(select(one).where(one.c.id == row["id"])).mappings().first()
    if here is not None:
        same = all(here[name] == value for name, value in row.items() if name != _PLACE)
        return None if same else False
    if judge is not None and not judge.takes(row):
        return False
    columns = row if keep_place else {name: row[name] for name in row if name != _PLACE}
    try:
        with session.begin_nested():
            session.execute(insert(one).values(**columns))
    except IntegrityError:
        return False
    return True


def _go_on_from_last(session: Session, one: Table) -> None:
    last = session.scalar(select(func.max(one.c.place)))
    sequence = text("SELECT setval(pg_get_serial_sequence(:table, 'place'), :last)")
    session.execute(sequence, {"table": one.name, "last": last})


def _labels_follow(session: Session) -> TakenIn:
    """A number or letter is taken while its cup is out or its key counts."""
    taken = LabelTakenRow
    wanted = set(labels_wanted(session.connection()))
    rows = session.scalars(select(taken)).all()
    there = {(row.kind, row.simulated, row.label, row.holder): row for row in rows}
    for over in there.keys() - wanted:
        session.delete(there[over])
    session.flush()
    conflicts: list[Conflict] = []
    missing = sorted(wanted - there.keys())
    for kind, simulated, label, holder in missing:
        columns = {"kind": kind, "simulated": simulated, "label": label, "holder": holder}
        try:
            with session.begin_nested():
                session.execute(insert(taken).values(**columns))
        except IntegrityError:
            conflicts.append(Conflict(table=_LABELS, id=holder, theirs=columns))
    return TakenIn(
        table=_LABELS,
        new=len(missing) - len(conflicts),
        known=len(there.keys() & wanted),
        conflicts=tuple(conflicts),
    )


# Reading the files ---------------------------------------------------------------------------


def _rows(path: Path, one: Table) -> Iterator[dict[str, Any]]:
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            reader = csv.reader(file, strict=True)
            header = next(reader, [])
            columns = _columns(path, one, header)
            for cells in reader:
                if len(cells) != len(header):
                    raise _unreadable(path, reader.line_num)
                try:
                    yield {c.name: _value(c, cell) for c, cell in zip(columns, cells, strict=True)}
                except (ValueError, ArithmeticError, StatementError) as error:
                    raise _unreadable(path, reader.line_num) from error
    except FileNotFoundError as error:
        raise RecordsError(Problem.NO_TABLE, where=path) from error
    except (OSError, UnicodeDecodeError, csv.Error) as error:
        raise _unreadable(path, 1) from error


def _columns(path: Path, one: Table, header: Sequence[str]) -> list[Column[Any]]:
    """The columns that the file has; one that may be blank may be missing in an older file."""
    missing = [c.name for c in one.columns if c.name not in header and not c.nullable]
    if missing or set(header) - set(one.columns.keys()) or len(set(header)) < len(header):
        raise RecordsError(Problem.OTHER_TABLE, where=path)
    return [one.columns[name] for name in header]


def _unreadable(path: Path, line: int) -> RecordsError:
    return RecordsError(Problem.UNREADABLE_TABLE, where=path, line=line)


def _value(column: Column[Any], cell: str) -> Any:
    """What a cell says; ValueError if it cannot be of that column."""
    if not cell and column.nullable:
        return None
    kind = column.type
    if isinstance(kind, Boolean):
        return {"true": True, "false": False}[cell] if cell in ("true", "false") else _wrong(cell)
    if isinstance(kind, LargeBinary):
        return bytes.fromhex(cell)
    if isinstance(kind, Integer):
        return int(cell) if _WHOLE.fullmatch(cell) else _wrong(cell)
    if isinstance(kind, Exact):
        return Decimal(cell) if _NUMBER.fullmatch(cell) else _wrong(cell)
    if isinstance(kind, Moment):
        return datetime.fromisoformat(cell)
    plain = as_it_was(cell)
    read = getattr(kind, "process_result_value", None)
    return read(plain, None) if read is not None else plain


def _wrong(cell: str) -> Any:
    raise ValueError(cell)
