"""What can go wrong with the records: one error, a problem that a screen can act on, a sentence.

Every foreign error is turned into a RecordsError here, so that nobody above needs to know which
store is underneath.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from enum import StrEnum

from kiosk.texts import say


class Problem(StrEnum):
    """What is wrong; the value is the last part of its text's key."""

    FOREIGN = "foreign"  # the file belongs to another program
    NEWER = "newer"  # written by a newer version of this program
    DAMAGED = "damaged"
    NOT_WRITABLE = "not_writable"
    NO_FOLDER = "no_folder"
    A_FOLDER = "a_folder"
    FULL = "full"
    IN_USE = "in_use"
    NOT_THERE = "not_there"  # nothing was ever kept at that place
    THERE_ALREADY = "there_already"  # a copy would overwrite something
    AWAY = "away"  # the server does not answer
    NO_DRIVER = "no_driver"
    BAD_ADDRESS = "bad_address"
    NUMBER_TAKEN = "number_taken"
    ALL_OUT = "all_out"
    NOT_OUT = "not_out"
    NO_TRY = "no_try"
    LETTER_TAKEN = "letter_taken"
    BOX_TAKEN = "box_taken"
    KEY_CLOSED = "key_closed"
    NO_KEY = "no_key"
    NO_MASSES = "no_masses"
    NO_WEIGHING = "no_weighing"
    MASS_GONE = "mass_gone"
    NO_SIZES = "no_sizes"
    SIZE_GONE = "size_gone"
    GONE_ALREADY = "gone_already"
    MIXED = "mixed"
    NO_ROUND = "no_round"
    LOST_RACE = "lost_race"  # another kiosk changed the same thing meanwhile
    ROUND_FROZEN = "round_frozen"  # its rules or keys, since a sitting began
    ROUND_LOCKED = "round_locked"  # the answers of that division
    ROUND_FINAL = "round_final"  # its results
    OTHER_CONTENT = "other_content"
    CONFLICT = "conflict"
    NO_TABLE = "no_table"  # among exported files
    OTHER_TABLE = "other_table"
    UNREADABLE_TABLE = "unreadable_table"
    CLOSED = "closed"
    UNEXPECTED = "unexpected"


# What is to be kept does not fit what is kept by now: trying again cannot help.
NEVER_FITS = frozenset(
    {
        Problem.NUMBER_TAKEN,
        Problem.NOT_OUT,
        Problem.NO_TRY,
        Problem.LETTER_TAKEN,
        Problem.BOX_TAKEN,
        Problem.KEY_CLOSED,
        Problem.NO_KEY,
        Problem.NO_MASSES,
        Problem.NO_WEIGHING,
        Problem.MASS_GONE,
        Problem.NO_SIZES,
        Problem.SIZE_GONE,
        Problem.GONE_ALREADY,
        Problem.MIXED,
        Problem.NO_ROUND,
        Problem.LOST_RACE,
        Problem.ROUND_FROZEN,
        Problem.ROUND_LOCKED,
        Problem.ROUND_FINAL,
        Problem.OTHER_CONTENT,
        Problem.CONFLICT,
    }
)

# The records as a whole do not take anything at the moment: it has nothing to do with what it is.
MAY_PASS = frozenset({Problem.AWAY, Problem.FULL})


class RecordsError(Exception):
    """Something was not kept, or the records cannot be opened; the text says what to do."""

    def __init__(self, problem: Problem, **values: object) -> None:
        super().__init__(say(f"records.{problem}", **values))
        self.problem = problem


# Primary result codes, see https://www.sqlite.org/rescode.html
_SQLITE = {
    sqlite3.SQLITE_FULL: Problem.FULL,
    sqlite3.SQLITE_BUSY: Problem.IN_USE,
    sqlite3.SQLITE_LOCKED: Problem.IN_USE,
    sqlite3.SQLITE_CORRUPT: Problem.DAMAGED,
    sqlite3.SQLITE_NOTADB: Problem.FOREIGN,
    sqlite3.SQLITE_CONSTRAINT: Problem.CONFLICT,
    sqlite3.SQLITE_READONLY: Problem.NOT_WRITABLE,
    sqlite3.SQLITE_CANTOPEN: Problem.NOT_WRITABLE,
    sqlite3.SQLITE_PERM: Problem.NOT_WRITABLE,
    sqlite3.SQLITE_IOERR: Problem.NOT_WRITABLE,
}


def explained(error: BaseException, where: str) -> RecordsError | None:
    """The RecordsError for an error of a store at ``where``; None if it is not a store's error.

    Takes sqlite3's errors, a PostgreSQL driver's (anything with an SQLSTATE), and SQLAlchemy's
    wrapping of either.
    """
    inner = getattr(error, "orig", None) or error
    if isinstance(inner, sqlite3.Error):
        code = getattr(inner, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
        problem = _SQLITE.get(code, Problem.UNEXPECTED)
    elif hasattr(inner, "sqlstate"):
        problem = _of_server(inner)
    else:
        return None
    return RecordsError(problem, where=where, detail=inner)


def unexpected(error: Exception) -> RecordsError:
    """The RecordsError for a fault of our own."""
    return RecordsError(Problem.UNEXPECTED, detail=getattr(error, "orig", None) or error)


# Classes and codes, see PostgreSQL's appendix "Error Codes". A lock that was waited for in vain
# and a deadlock are the doing of others: it goes better a moment later.
_AWAY_CLASSES = ("08", "28", "3D", "57")
_AWAY_CODES = ("25P03", "40001", "40P01", "53300", "55P03")


def _of_server(error: BaseException) -> Problem:
    state: str | None = getattr(error, "sqlstate", None)
    if state is None:  # said by the driver: there is no connection, or it was asked nonsense
        names = {kind.__name__ for kind in type(error).__mro__}
        lost = names & {"OperationalError", "InterfaceError"}
        return Problem.AWAY if lost else Problem.UNEXPECTED
    if state[:2] in _AWAY_CLASSES or state in _AWAY_CODES:
        return Problem.AWAY
    if state[:2] == "23":
        return Problem.CONFLICT
    return Problem.FULL if state == "53100" else Problem.UNEXPECTED


@contextmanager
def in_plain_words(where: str) -> Iterator[None]:
    """Turns a store's errors into RecordsError; lets everything else pass."""
    try:
        yield
    except Exception as error:  # which one it may be differs by store; others are raised again
        plain = explained(error, where)
        if plain is None:
            raise
        raise plain from error
