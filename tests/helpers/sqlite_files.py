"""Looking into a records file from outside, and at every connection to it."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from sqlalchemy import Engine, event

from kiosk.evidence import Source
from kiosk.records.store import Store
from tests.helpers.recorded import cup_taken


def pragma(where: str, name: str) -> object:
    with closing(sqlite3.connect(where)) as file:
        return file.execute(f"PRAGMA {name}").fetchone()[0]


def some_records(where: str, cups: int = 30, source: Source = Source.BALANCE) -> None:
    store = Store(where)
    store.save(*(cup_taken(number, source=source) for number in range(1, cups + 1)))
    store.close()


def version_1(where: str) -> None:
    """A records file as the first version made it: cups out and in, a key, simulated and real."""
    script = Path(__file__).parents[2] / "fixtures/records/version-1.sql"
    with closing(sqlite3.connect(where)) as file:
        file.executescript(script.read_text(encoding="utf-8"))


@contextmanager
def at_every_connect(look: Callable[[sqlite3.Connection, object], None]) -> Iterator[None]:
    event.listen(Engine, "connect", look)
    try:
        yield
    finally:
        event.remove(Engine, "connect", look)
