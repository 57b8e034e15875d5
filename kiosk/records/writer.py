"""The writer: one thread that owns the store, so that no screen ever waits for a disk."""

from __future__ import annotations

import logging
from collections.abc import Callable, Sequence
from functools import partial
from queue import Empty, SimpleQueue
from threading import Thread
from typing import TYPE_CHECKING, TypeVar

from kiosk.records.backlog import AGAIN_S, Backlog, News
from kiosk.records.entries import Entry
from kiosk.records.errors import Problem, RecordsError, unexpected

if TYPE_CHECKING:
    from kiosk.records.journal import Journal
    from kiosk.records.store import Store

_log = logging.getLogger(__name__)
T = TypeVar("T")
Failed = Callable[[RecordsError], None]


def opening(where: str | None) -> Callable[[], Store]:
    """A way to open the store at ``where`` later: SQLAlchemy is imported only then."""

    def open_store() -> Store:
        from kiosk.records.store import Store

        return Store(where)

    return open_store


def opening_journal(where: str | None) -> Callable[[], Journal | None]:
    """A way to open the journal of those records later; None if they need none, being a file."""

    def open_journal() -> Journal | None:
        from kiosk.records.journal import Journal, journal_file

        path = journal_file(where)
        return None if path is None else Journal(path)

    return open_journal


def _no_journal() -> None:
    return None


class Writer:
    """Takes requests in order and does them one by one in its own thread.

    The store is opened with the first request; if that fails, the request is answered by
    ``failed`` and the next one tries again. Every request is answered exactly once, by a call
    that is handed to ``answered`` in the writer's thread: it has to bring the call to where the
    callbacks belong. ``failed`` is given a RecordsError, whose text is the sentence to show.

    With a journal, what the records do not take while they are out of reach waits in it and is
    stored later by itself (see Backlog). ``told`` is called, like an answer, with what there is to
    know about it.
    """

    def __init__(
        self,
        open_store: Callable[[], Store],
        answered: Callable[[Callable[[], None]], None],
        *,
        open_journal: Callable[[], Journal | None] = _no_journal,
        told: Callable[[News], None] = lambda _: None,
    ) -> None:
        self._open_store = open_store
        self._open_journal = open_journal
        self._answered = answered
        self._told = told
        self._store: Store | None = None
        self._backlog: Backlog | None = None
        self._known = News(waiting=0)
        self._begun = False
        self._requests: SimpleQueue[Callable[[], bool] | None] = SimpleQueue()
        self._closing = False
        self._all_done = False
        self._thread = Thread(target=self._run, name="records writer", daemon=True)
        self._thread.start()

    def save(self, *entries: Entry, done: Callable[[], None], failed: Failed) -> None:
        """Keep all of these or none; ``done`` is called once they are on a disk.

        After ``failed`` the same entries may be saved again: nothing is kept twice.
        """
        self._request(partial(self._keep, entries), lambda _: done(), failed)

    def ask(
        self, query: Callable[[Store], T], *, done: Callable[[T], None], failed: Failed
    ) -> None:
        """Call ``query`` with the store in the writer's thread and hand its answer to ``done``."""
        self._request(lambda: query(self._asked()), done, failed)

    def _request(self, act: Callable[[], T], done: Callable[[T], None], failed: Failed) -> None:
        if self._closing:
            self._answered(partial(failed, RecordsError(Problem.CLOSED)))
        else:
            self._requests.put(partial(self._do, act, done, failed))

    def close(self, deadline: float) -> bool:
        """Finish what was asked, within so many seconds, and let go of the store.

        False if something is still waiting or could not be done: what was to be kept may be lost.
        """
        if not self._closing:
            self._closing = True
            self._requests.put(None)
        self._thread.join(deadline)
        return self._all_done

    def _run(self) -> None:
        all_done = True
        while (request := self._next()) is not None:
            done = request()
            all_done = all_done and (done or not self._closing)
        if self._store is not None:
            self._store.close()
        if self._backlog is not None:
            self._backlog.close()
        self._all_done = all_done

    def _next(self) -> Callable[[], bool] | None:
        """The next request; while nobody asks for anything, what waits is tried again."""
        while self._backlog is not None and self._backlog.waiting:
            try:
                return self._requests.get(timeout=AGAIN_S)
            except Empty:
                self._do(self._backlog.catch_up, lambda _: None, lambda _: None)
        return self._requests.get()

    def _do(self, act: Callable[[], T], done: Callable[[T], None], failed: Failed) -> bool:
        try:
            self._begin()
            answer = act()
        except RecordsError as error:
            found: Callable[[], None] = partial(failed, error)
        except Exception as error:  # a fault of ours is told too, and the thread lives on
            _log.exception("the records could not do what was asked")
            found = partial(failed, unexpected(error))
        else:
            self._tell()
            self._answer(partial(done, answer))
            return True
        self._tell()
        self._answer(found)
        return False

    def _begin(self) -> None:
        if not self._begun:
            journal = self._open_journal()
            self._begun = True
            if journal is not None:
                self._backlog = Backlog(journal, self._opened)

    def _opened(self) -> Store:
        if self._store is None:
            self._store = self._open_store()
        return self._store

    def _asked(self) -> Store:
        return self._opened() if self._backlog is None else self._backlog.ask()

    def _keep(self, entries: Sequence[Entry]) -> None:
        if self._backlog is None:
            self._opened().save(*entries)
        else:
            self._backlog.save(entries)

    def _tell(self) -> None:
        news = News(waiting=0) if self._backlog is None else self._backlog.news()
        if news != self._known:
            self._known = News(waiting=news.waiting)
            self._answer(partial(self._told, news))

    def _answer(self, call: Callable[[], None]) -> None:
        try:
            self._answered(call)
        except Exception:  # the thread has to live on for the next request
            _log.exception("an answer of the records found nobody")
