"""A copy of the records at one moment of them, while a kiosk may be writing.

The copy of a file is made by SQLite's own backup in one step and checked; what is on a server is
copied in one transaction. Either is made beside its final name, forced to the disk, and only then
given its name: what bears that name is whole.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from contextlib import closing, suppress
from functools import partial
from pathlib import Path

from kiosk.records.errors import Problem, RecordsError, in_plain_words
from kiosk.records.looking import copy_whole, existing
from kiosk.records.places import file_of
from kiosk.records.server_copy import copy_to_file
from kiosk.records.sqlite_file import what_is_wrong


def backup(where: str | None, target: Path) -> int:
    """Copy the records to the file ``target``; its size in bytes.

    Records on a server become a records file of the present version.
    RecordsError, and no ``target``, if it is there already or cannot be written, if there are no
    records or they are damaged, not ours or out of reach.
    """
    path = file_of(where)
    target = target.expanduser().absolute()
    if path is None:
        _make(target, partial(copy_to_file, where or ""))
        return target.stat().st_size
    with existing(path) as source:
        problem = what_is_wrong(source)
        if problem in (Problem.FOREIGN, Problem.DAMAGED):  # a newer one is copied as it is
            raise RecordsError(problem, where=path)
        _make(target, partial(_copy, source, path))
    return target.stat().st_size


def _make(target: Path, copy_to: Callable[[Path], None]) -> None:
    _reserve(target)
    beside = target.with_name(f"{target.name}.part")
    try:
        copy_to(beside)
        _force_to_disk(beside)
        os.replace(beside, target)
    except BaseException as error:
        for left in (beside, target):
            left.unlink(missing_ok=True)
        if isinstance(error, OSError):
            raise RecordsError(Problem.NOT_WRITABLE, where=target) from error
        raise
    with suppress(OSError):  # some systems cannot do this with a folder
        _force_to_disk(target.parent)


def _reserve(target: Path) -> None:
    """Take the name, so that nobody else's file of that name is overwritten at the end."""
    try:
        target.open("x").close()
    except FileExistsError as error:
        raise RecordsError(Problem.THERE_ALREADY, where=target) from error
    except FileNotFoundError as error:
        raise RecordsError(Problem.NO_FOLDER, where=target.parent) from error
    except OSError as error:
        raise RecordsError(Problem.NOT_WRITABLE, where=target) from error


def _copy(source: sqlite3.Connection, path: Path, beside: Path) -> None:
    with in_plain_words(str(beside)), closing(sqlite3.connect(beside)) as copy:
        copy_whole(source, copy, path)
        copy.execute("PRAGMA journal_mode = DELETE")
        if copy.execute("PRAGMA integrity_check(1)").fetchone()[0] != "ok":
            raise RecordsError(Problem.DAMAGED, where=path)


def _force_to_disk(path: Path) -> None:
    descriptor = os.open(path, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
