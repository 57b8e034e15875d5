"""The journal: what could not be stored on the server, in a file of this kiosk until it is.

One row each save, in the order in which they were asked for; forced to the disk. What the server
refuses for good stays as well, with the sentence that says why. Entries have their own ids, so that
a row may be tried as often as one likes, by any program, and is stored once.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from kiosk.records.entries import Entry
from kiosk.records.entry_text import text_of
from kiosk.records.errors import in_plain_words
from kiosk.records.places import file_of
from kiosk.records.server import server_url
from kiosk.records.sqlite_file import WAIT_S, usual_file

_TABLE = """CREATE TABLE IF NOT EXISTS saves (
    place INTEGER PRIMARY KEY, entries TEXT NOT NULL UNIQUE, refused TEXT)"""


def journal_file(where: str | None) -> Path | None:
    """Where the journal of the records at ``where`` is; None if they need none, being a file.

    RecordsError for a place that is none, or if there is no folder for user data.
    """
    if file_of(where) is not None:
        return None
    url = server_url(where or "")
    place = f"{url.username}@{url.host or url.query.get('host')}:{url.port}/{url.database}"
    name = sha256(place.encode()).hexdigest()[:8]
    return usual_file().with_name(f"not-stored-{name}.sqlite")


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftBehind:
    """What a journal holds: how many saves wait, and why others were refused for good."""

    file: Path
    waiting: int
    refused: tuple[str, ...]


def left_behind(where: str | None) -> LeftBehind | None:
    """What this kiosk has not stored in the records at ``where``; None if it has no journal."""
    path = journal_file(where)
    if path is None or not path.exists():
        return None
    with closing(Journal(path)) as journal:
        refused = tuple(why for _, why in journal.refused())
        return LeftBehind(file=path, waiting=journal.count(), refused=refused)


class Journal:
    """The journal in the file ``path``, made if need be; every method may raise RecordsError."""

    def __init__(self, path: Path) -> None:
        self.path = path
        with in_plain_words(str(path)):
            self._file = sqlite3.connect(path, timeout=WAIT_S, isolation_level=None)
            try:
                self._file.execute("PRAGMA synchronous = EXTRA")
                self._file.execute(_TABLE)
            except sqlite3.Error:
                self._file.close()
                raise

    def close(self) -> None:
        """Let go of the file."""
        self._file.close()

    def add(self, entries: Sequence[Entry]) -> None:
        """One save more that waits, unless it does so already."""
        with in_plain_words(str(self.path)):
            self._file.execute(
                "INSERT OR IGNORE INTO saves (entries) VALUES (?)", (text_of(entries),)
            )

    def count(self) -> int:
        """How many saves wait."""
        with in_plain_words(str(self.path)):
            found = self._file.execute("SELECT count(*) FROM saves WHERE refused IS NULL")
            return int(found.fetchone()[0])

    def waiting(self) -> list[tuple[int, str]]:
        """The place of each save that waits, in order, and its entries as text."""
        with in_plain_words(str(self.path)):
            return self._file.execute(
                "SELECT place, entries FROM saves WHERE refused IS NULL ORDER BY place"
            ).fetchall()

    def refused(self) -> list[tuple[str, str]]:
        """What was refused for good: its entries as text, and why."""
        with in_plain_words(str(self.path)):
            return self._file.execute(
                "SELECT entries, refused FROM saves WHERE refused IS NOT NULL ORDER BY place"
            ).fetchall()

    def stored(self, place: int) -> None:
        """That save is on the server."""
        with in_plain_words(str(self.path)):
            self._file.execute("DELETE FROM saves WHERE place = ?", (place,))

    def refuse(self, place: int, why: str) -> None:
        """That save will never fit; it stays in the file, and is not tried again."""
        with in_plain_words(str(self.path)):
            self._file.execute("UPDATE saves SET refused = ? WHERE place = ?", (why, place))
