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
    _run(where, "version-1.sql")


def version_8(where: str) -> None:
    """A records file whose volumes were all measured with a ruler: a box, and one half measured."""
    _run(where, "version-8.sql")


def _run(where: str, name: str) -> None:
    script = Path(__file__).parents[2] / "fixtures/records" / name
    with closing(sqlite3.connect(where)) as file:
        file.executescript(script.read_text(encoding="utf-8"))


@contextmanager
def at_every_connect(look: Callable[[sqlite3.Connection, object], None]) -> Iterator[None]:
    event.listen(Engine, "connect", look)
    try:
        yield
    finally:
        event.remove(Engine, "connect", look)
