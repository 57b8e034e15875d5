"""The watcher: one thread that notices when somebody, perhaps at another kiosk, wrote something."""

from __future__ import annotations

import logging
from collections.abc import Callable
from contextlib import suppress
from threading import Event, Thread
from typing import TYPE_CHECKING

from kiosk.records.errors import RecordsError

if TYPE_CHECKING:
    from kiosk.records.changes import Changes

_log = logging.getLogger(__name__)
AGAIN_S = 1.0  # between two looks at records that are out of reach
REST_S = 0.1  # after a change: many quick ones are told as a few


def watching(where: str | None) -> Callable[[], Changes]:
    """A way to look at the records at ``where`` later: SQLAlchemy is imported only then."""

    def look() -> Changes:
        from kiosk.records.changes import changes_at

        return changes_at(where)

    return look


class Watcher:
    """Calls ``changed``, in its own thread, when something may have been written.

    Also at the beginning, and when records that were out of reach are there again. Our own writing
    counts as anybody's. It is a hint to read again: it may come when there is nothing new.
    """

    def __init__(self, look: Callable[[], Changes], changed: Callable[[], None]) -> None:
        self._look = look
        self._changed = changed
        self._closing = Event()
        self._thread = Thread(target=self._run, name="records watcher", daemon=True)

    def start(self) -> None:
        """Begin to watch."""
        self._thread.start()

    def close(self, deadline: float) -> None:
        """Watch no more; wait at most so many seconds for the thread."""
        self._closing.set()
        if self._thread.is_alive():
            self._thread.join(deadline)

    def _run(self) -> None:
        while not self._closing.is_set():
            try:
                self._watch(self._look())
            except RecordsError:
                pass  # whoever writes or reads will say it
            except Exception:  # watching is a hint only: it is tried again, and the log keeps why
                _log.exception("the records cannot be watched")
            self._closing.wait(AGAIN_S)

    def _watch(self, changes: Changes) -> None:
        seen = ""
        try:
            while not self._closing.is_set():
                mark = changes.mark()
                if mark != seen:
                    seen = mark
                    self._changed()
                    self._closing.wait(REST_S)
                changes.wait(self._closing)
        finally:
            with suppress(Exception):  # what is out of reach cannot be let go of in order
                changes.close()
