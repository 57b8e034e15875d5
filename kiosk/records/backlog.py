"""What a kiosk does while the server is away: it goes on where that is honest, and catches up.

What was captured goes to the journal. Then the kiosk may go on as if it were stored, except where
only the server can say that it holds: a number or a letter is given to one cup or jar by it alone,
and an answer is shown to all only when every kiosk knows it.
"""

from __future__ import annotations

import logging
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from time import monotonic
from typing import TYPE_CHECKING, Any

from kiosk.records.entries import AnswerShown, CupTaken, Entry, KeyMade
from kiosk.records.errors import MAY_PASS, NEVER_FITS, Problem, RecordsError, unexpected
from kiosk.records.refused_words import described
from kiosk.records.round_notes import NoteKind, RoundNote, said_in
from kiosk.records.volume_entries import VolumeMade
from kiosk.texts import say

if TYPE_CHECKING:
    from kiosk.records.journal import Journal
    from kiosk.records.store import Store

_log = logging.getLogger(__name__)
AGAIN_S = 2.0  # between two tries to catch up: each may take a few seconds
_ANSWERED = (CupTaken, KeyMade, VolumeMade, AnswerShown)
# What happened, whoever knows of it: a mass, an answer, a clock that was paused or stopped.
_CAPTURED_NOTES = (NoteKind.CUP.value, NoteKind.ANSWER.value, NoteKind.CLOCK.value)
_ANSWER = ("estimate", "unreadable")  # what a typed answer says
_START = "start"  # of a clock: it freezes rules and keys, which may be others by now


@dataclass(frozen=True, slots=True, kw_only=True)
class News:
    """How many saves wait in the journal, and the sentences for those refused for good just now."""

    waiting: int
    refused: tuple[str, ...] = ()


class Backlog:
    """Keeps through the store while it answers, and in the journal meanwhile.

    ``open_store`` gives the open store, or tries to open it. Belongs to the writer's thread.
    """

    def __init__(
        self,
        journal: Journal,
        open_store: Callable[[], Store],
        clock: Callable[[], float] = monotonic,
    ) -> None:
        self._journal = journal
        self._open_store = open_store
        self._clock = clock
        self._tried_at = float("-inf")
        self._why = RecordsError(Problem.CLOSED)  # the last try to catch up failed
        self._owed: set[str] = set()  # whoever asked for these asks again, and is told then
        self._refused: list[str] = []
        self.waiting = journal.count()

    def close(self) -> None:
        """Let go of the journal."""
        self._journal.close()

    def news(self) -> News:
        """What there is to tell; a refusal is told once."""
        refused, self._refused = self._refused, []
        return News(waiting=self.waiting, refused=tuple(refused))

    def save(self, entries: Sequence[Entry]) -> None:
        """Keep all of these or none, after those that wait, on the server or in the journal.

        RecordsError if they can never be stored, or if whoever asks must wait for the server; in
        that case they are in the journal and may be asked for again.
        """
        self._catch_up_if_due()
        if not self.waiting:
            try:
                self._open_store().save(*entries)
            except RecordsError as error:
                if error.problem not in MAY_PASS:
                    raise
                self._failed(error)
            else:
                return
        self._journal.add(entries)
        self.waiting = self._journal.count()
        if any(map(_needs_an_answer, entries)):
            self._owed.update(entry.id for entry in entries)
            raise self._why

    def ask(self) -> Store:
        """The store, for a question. RecordsError while the answer would lack what waits."""
        self._catch_up_if_due()
        if self.waiting and self._why.problem in MAY_PASS:
            raise self._why
        return self._open_store()

    def catch_up(self) -> None:
        """Store what waits, in order, as far as that goes now."""
        try:
            for place, text in self._journal.waiting():
                self._store(place, text)
            self.waiting = self._journal.count()
        except RecordsError as error:
            self._failed(error)
            self.waiting = self._journal.count()

    def _catch_up_if_due(self) -> None:
        if self.waiting and self._clock() - self._tried_at >= AGAIN_S:
            self.catch_up()

    def _failed(self, error: RecordsError) -> None:
        self._why, self._tried_at = error, self._clock()

    def _store(self, place: int, text: str) -> None:
        from kiosk.records.entry_text import entries_of

        try:
            entries = entries_of(text)
        except (KeyError, TypeError, ValueError) as error:  # another version wrote it
            _log.exception("the journal holds what cannot be read")
            self._refuse(place, (), unexpected(error))
            return
        try:
            self._open_store().save(*entries)
        except RecordsError as error:
            if error.problem not in NEVER_FITS:
                raise
            self._refuse(place, entries, error)
        else:
            self._journal.stored(place)
            self._owed.difference_update(entry.id for entry in entries)

    def _refuse(self, place: int, entries: Sequence[Entry], why: RecordsError) -> None:
        told = say("journal.refused", what=described(entries, self._said_last), why=why)
        self._journal.refuse(place, told)
        known = self._owed & {entry.id for entry in entries}
        if not known and not (entries and all(map(self._is_there_too, entries))):
            self._refused.append(told)

    def _is_there_too(self, entry: Entry) -> bool:
        """Whether somebody else typed the same answer meanwhile: nobody needs to do anything."""
        if not isinstance(entry, RoundNote) or entry.kind != NoteKind.ANSWER:
            return False
        mine, last = said_in(entry.content), self._said_last(entry.round_id, entry.about) or {}
        return bool(last) and all(mine.get(name) == last.get(name) for name in _ANSWER)

    def _said_last(self, round_id: str, about: str) -> Mapping[str, Any] | None:
        try:
            return self._open_store().said_last(round_id, about)
        except RecordsError:  # gone again: it is told with less
            return None


def _needs_an_answer(entry: Entry) -> bool:
    if isinstance(entry, RoundNote):
        starts = entry.kind == NoteKind.CLOCK and said_in(entry.content).get("turn") == _START
        return starts or entry.kind not in _CAPTURED_NOTES
    return isinstance(entry, _ANSWERED)
