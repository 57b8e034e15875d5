"""A copy of a records file at one moment of it, while a kiosk may be writing.

The copy is made by SQLite's own backup in one step, beside its final name, checked, forced to the
disk, and only then given its name: what bears that name is whole.
"""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from kiosk.records.errors import Problem, RecordsError, in_plain_words
from kiosk.records.looking import copy_whole, existing
from kiosk.records.places import file_of
from kiosk.records.sqlite_file import what_is_wrong


def backup(where: str | None, target: Path) -> int:
    """Copy the records to the file ``target``; its size in bytes.

    RecordsError, and no ``target``, if it is there already or cannot be written, if there are no
    records or they are damaged, not ours or on a server.
    """
    path = file_of(where)
    if path is None:
        raise RecordsError(Problem.ON_A_SERVER)
    target = target.expanduser().absolute()
    with existing(path) as source:
        problem = what_is_wrong(source)
        if problem in (Problem.FOREIGN, Problem.DAMAGED):  # a newer one is copied as it is
            raise RecordsError(problem, where=path)
        _reserve(target)
        beside = target.with_name(f"{target.name}.part")
        try:
            with in_plain_words(str(beside)), closing(sqlite3.connect(beside)) as copy:
                _copy(source, copy, path)
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
    return target.stat().st_size


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


def _copy(source: sqlite3.Connection, copy: sqlite3.Connection, path: Path) -> None:
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
