"""Has anybody written to the records? A mark that is another one after every commit."""

from __future__ import annotations

from pathlib import Path
from threading import Event
from typing import Any, Protocol

from sqlalchemy import create_engine
from sqlalchemy.pool import NullPool

from kiosk.records.errors import in_plain_words
from kiosk.records.looking import connect_to_look
from kiosk.records.places import file_of
from kiosk.records.server import CHANNEL, server_url, shown_url

EVERY_S = 0.5  # looked at least as often: within a second it is seen
_GLANCE_S = 0.1  # how long closing may have to wait for somebody who listens


class Changes(Protocol):
    """What a watcher looks at. Belongs to the thread that made it; raises RecordsError."""

    def mark(self) -> str:
        """Equal marks: nobody committed anything in between."""

    def wait(self, closing: Event) -> None:
        """Return after EVERY_S, sooner after a hint or when somebody wants to close."""

    def close(self) -> None:
        """Let go of the file or server."""


def changes_at(where: str | None) -> Changes:
    """What happens at that place of records, named as for a Store."""
    path = file_of(where)
    return _OnServer(where or "") if path is None else _InFile(path)


class _InFile:
    def __init__(self, path: Path) -> None:
        self._path = path
        with in_plain_words(str(path)):
            self._connection = connect_to_look(path)

    def mark(self) -> str:
        with in_plain_words(str(self._path)):
            # Another file may have been put in its place, which this connection would not see.
            try:
                file = self._path.stat()
            except OSError:
                return "gone"
            (version,) = self._connection.execute("PRAGMA data_version").fetchone()
        return f"{file.st_dev} {file.st_ino} {version}"

    def wait(self, closing: Event) -> None:
        closing.wait(EVERY_S)

    def close(self) -> None:
        self._connection.close()


class _OnServer:
    def __init__(self, where: str) -> None:
        url = server_url(where)
        self._shown = shown_url(url)
        self._engine = create_engine(url, poolclass=NullPool, isolation_level="AUTOCOMMIT")
        with in_plain_words(self._shown):
            self._connection = self._engine.connect()
            self._connection.exec_driver_sql(f"LISTEN {CHANNEL}")
        self._driver: Any = self._connection.connection.driver_connection

    def mark(self) -> str:
        # Which transactions are over: whoever writes has a number there until the commit.
        with in_plain_words(self._shown):
            return str(self._connection.exec_driver_sql("SELECT pg_current_snapshot()").scalar())

    def wait(self, closing: Event) -> None:
        with in_plain_words(self._shown):
            for _ in range(round(EVERY_S / _GLANCE_S)):
                # Hints sent meanwhile are waiting in the connection; those sent before are not.
                if closing.is_set() or any(self._driver.notifies(timeout=_GLANCE_S, stop_after=1)):
                    return

    def close(self) -> None:
        self._connection.close()
        self._engine.dispose()
