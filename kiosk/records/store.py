"""The store: what the kiosk keeps, in its own SQLite file or on a server shared with others.

Importing this module imports SQLAlchemy; the kiosk does so in the writer's thread, after its
first picture stands.
"""

from __future__ import annotations

import platform
from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, text
from sqlalchemy.orm import Session

from kiosk.records import jars, queries, round_locks, rounds, volumes
from kiosk.records.entries import BalanceChecked, CupOut, Entry
from kiosk.records.errors import NEVER_FITS, RecordsError, in_plain_words
from kiosk.records.exchange import Exported, export
from kiosk.records.importing import TakenIn, take_in
from kiosk.records.importing_rounds import Readable
from kiosk.records.jar_entries import ClosedJar
from kiosk.records.keeping import keep
from kiosk.records.kept import (
    Guess,
    Guessed,
    KeyDraft,
    StoredKey,
    StoredVolume,
    Try,
    VolumeDraft,
)
from kiosk.records.kinds import JAR
from kiosk.records.models import ChoiceRow
from kiosk.records.places import file_of
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote, StoredRound
from kiosk.records.server import CHANNEL, open_server
from kiosk.records.sqlite_file import READS_ONLY, open_file

OF_ONE_KIOSK = ("scale", "material")  # choices about what stands on its own table


class Store:
    """The records at one place; every method raises RecordsError with a sentence to show.

    ``where`` is None for the file in the user's data folder, the name of a file, or
    ``postgresql://...``. A store belongs to one thread at a time.
    """

    def __init__(self, where: str | None = None) -> None:
        self._address = where  # with its password, which is shown nowhere
        self._engine, self.where = _opened(where)
        self._reader = self._engine.execution_options(**{READS_ONLY: True})

    def close(self) -> None:
        """Let go of the file or server."""
        self._engine.dispose()

    def save(self, *entries: Entry) -> None:
        """Keep all of these or none, in this order; when this returns they are on the disk.

        An entry that is there already is not written again, so a save may be repeated.
        """
        try:
            self._save(entries)
        except RecordsError as refused:
            if refused.problem not in NEVER_FITS:
                raise
            # What stood in the way may have been this very save, whose answer got lost with a
            # connection while the server was still writing it down: then it is there by now.
            self._save(entries)

    def _save(self, entries: Sequence[Entry]) -> None:
        with self._writing() as session:
            for entry in entries:
                keep(session, entry)

    def cups_out(self, simulated: bool) -> list[CupOut]:
        """Cups that are being filled, in the order in which they were taken."""
        with self._reading() as session:
            return queries.cups_out(session, simulated)

    def next_cup_number(self, simulated: bool) -> int:
        """The number for the next cup: 1 to 99, then again, never one that is out."""
        with self._reading() as session:
            return queries.next_cup_number(session, simulated)

    def last_tries(self, team: str, simulated: bool, limit: int = 5) -> list[Try]:
        """The team's latest tries that count, oldest first."""
        with self._reading() as session:
            return queries.last_tries(session, team, simulated, limit)

    def open_key(self, simulated: bool) -> KeyDraft | None:
        """The key that is being made, with the masses that count, to go on where it was left.

        A key without any mass is nothing to go on with, and is not given.
        """
        with self._reading() as session:
            return queries.open_key(session, simulated)

    def keys(self, simulated: bool) -> list[StoredKey]:
        """The keys that count, in the order in which they were made."""
        with self._reading() as session:
            return queries.keys(session, simulated)

    def used_letters(self, simulated: bool) -> set[str]:
        """The letters of jars that have a key."""
        with self._reading() as session:
            return queries.used_letters(session, simulated)

    def closed_jars(self, simulated: bool) -> list[ClosedJar]:
        """The jars whose key counts, by letter, with what they weigh closed."""
        with self._reading() as session:
            return jars.closed_jars(session, simulated)

    def jars_to_guess(self, simulated: bool) -> list[Guessed]:
        """The jars whose key counts, by letter."""
        with self._reading() as session:
            return queries.guessed(session, JAR, simulated)

    def open_volume(self, simulated: bool) -> VolumeDraft | None:
        """The volume key that is being made, with the sizes or masses that count.

        A key without any of them is nothing to go on with, and is not given.
        """
        with self._reading() as session:
            return volumes.open_volume(session, simulated)

    def volumes(self, simulated: bool) -> list[StoredVolume]:
        """The volume keys that count beside such a balance, in the order in which they were made.

        What a ruler measured is real beside any balance.
        """
        with self._reading() as session:
            return volumes.volumes(session, simulated)

    def boxes_to_guess(self, simulated: bool) -> list[Guessed]:
        """The boxes of those keys, by number as text."""
        with self._reading() as session:
            return volumes.boxes_to_guess(session, simulated)

    def guesses(self, key_id: str) -> list[Guess]:
        """The guesses at one key, in the order in which they were made."""
        with self._reading() as session:
            return queries.guesses(session, key_id)

    def last_check(self, balance: str, simulated: bool) -> BalanceChecked | None:
        """The latest check of the balance of that name, None if there is none."""
        with self._reading() as session:
            return queries.last_check(session, balance, simulated)

    def rounds(self, simulated: bool) -> list[StoredRound]:
        """The rounds, in the order in which they were opened."""
        with self._reading() as session:
            return rounds.rounds(session, simulated)

    def round_notes(
        self, round_id: str, after: str = FIRST, *, kinds: Collection[NoteKind] = ()
    ) -> list[RoundNote]:
        """The notes of a round that were kept after that one, or all; in the order of keeping.

        With ``kinds`` only those that are about such things.
        """
        with self._reading() as session:
            return rounds.notes(session, round_id, after, kinds)

    def said_last(self, round_id: str, about: str) -> Mapping[str, Any] | None:
        """What the latest note of a round about that thing holds, None if there is none."""
        with self._reading() as session:
            return round_locks.latest(session, round_id, about)

    def export(self, folder: Path) -> list[Exported]:
        """Write every table to a folder that is not there yet, or has none of them."""
        return list(export(self._address, folder))

    def take_in(self, folder: Path, readable: Readable) -> list[TakenIn]:
        """Take in the exported tables of another kiosk: all that fits, or nothing at all.

        ``readable`` says whether this version can read a round's note: see `importing.take_in`.
        """
        with self._writing() as session:
            return take_in(session, folder, readable)

    def remember(self, name: str, text: str) -> None:
        """Keep a small choice for next time, in place of the one before."""
        with self._writing() as session:
            session.merge(ChoiceRow(name=self._named(name), text=text))

    def recall(self, name: str) -> str | None:
        """The choice that was remembered under this name."""
        with self._reading() as session:
            row = session.get(ChoiceRow, self._named(name))
            return None if row is None else row.text

    def _named(self, choice: str) -> str:
        """On a server, where kiosks stand in several places, some choices are of one of them."""
        one_of_several = choice in OF_ONE_KIOSK and self._engine.dialect.name != "sqlite"
        return f"{choice} {platform.node()}" if one_of_several else choice

    @contextmanager
    def _writing(self) -> Iterator[Session]:
        with in_plain_words(self.where), Session(self._engine) as session, session.begin():
            yield session
            if self._engine.dialect.name != "sqlite":
                session.execute(text(f"NOTIFY {CHANNEL}"))  # goes out with the commit

    @contextmanager
    def _reading(self) -> Iterator[Session]:
        with in_plain_words(self.where), Session(self._reader) as session, session.begin():
            yield session


def _opened(where: str | None) -> tuple[Engine, str]:
    path = file_of(where)
    return open_server(where or "") if path is None else (open_file(path), str(path))
