"""The writer: one thread that owns the store, so that no screen ever waits for a disk."""

from __future__ import annotations

import logging
from collections.abc import Callable
from functools import partial
from queue import SimpleQueue
from threading import Thread
from typing import TYPE_CHECKING, TypeVar

from kiosk.records.entries import Entry
from kiosk.records.errors import Problem, RecordsError, unexpected

if TYPE_CHECKING:
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


class Writer:
    """Takes requests in order and does them one by one in its own thread.

    The store is opened with the first request; if that fails, the request is answered by
    ``failed`` and the next one tries again. Every request is answered exactly once, by a call
    that is handed to ``answered`` in the writer's thread: it has to bring the call to where the
    callbacks belong. ``failed`` is given a RecordsError, whose text is the sentence to show.
    """

    def __init__(
        self, open_store: Callable[[], Store], answered: Callable[[Callable[[], None]], None]
    ) -> None:
        self._open_store = open_store
        self._answered = answered
        self._store: Store | None = None
        self._requests: SimpleQueue[Callable[[], bool] | None] = SimpleQueue()
        self._closing = False
        self._all_done = False
        self._thread = Thread(target=self._run, name="records writer", daemon=True)
        self._thread.start()

    def save(self, *entries: Entry, done: Callable[[], None], failed: Failed) -> None:
        """Keep all of these or none; ``done`` is called once they are on the disk.

        After ``failed`` the same entries may be saved again: nothing is kept twice.
        """
        self.ask(lambda store: store.save(*entries), done=lambda _: done(), failed=failed)

    def ask(
        self, query: Callable[[Store], T], *, done: Callable[[T], None], failed: Failed
    ) -> None:
        """Call ``query`` with the store in the writer's thread and hand its answer to ``done``."""
        if self._closing:
            self._answered(partial(failed, RecordsError(Problem.CLOSED)))
        else:
            self._requests.put(partial(self._do, query, done, failed))

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
        while (request := self._requests.get()) is not None:
            done = request()
            all_done = all_done and (done or not self._closing)
        if self._store is not None:
            self._store.close()
        self._all_done = all_done

    def _do(self, query: Callable[[Store], T], done: Callable[[T], None], failed: Failed) -> bool:
        try:
            if self._store is None:
                self._store = self._open_store()
            answer = query(self._store)
        except RecordsError as error:
            self._answer(partial(failed, error))
            return False
        except Exception as error:
            _log.exception("the records could not do what was asked")
            self._answer(partial(failed, unexpected(error)))
            return False
        self._answer(partial(done, answer))
        return True

    def _answer(self, call: Callable[[], None]) -> None:
        try:
            self._answered(call)
        except Exception:  # the thread has to live on for the next request
            _log.exception("an answer of the records found nobody")
