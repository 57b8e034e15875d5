"""What can happen to the file in the middle of the day: nothing is lost, nothing is half kept."""

from __future__ import annotations

import dataclasses
import os
import sqlite3
import threading
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from kiosk.records import sqlite_file
from kiosk.records.errors import Problem
from kiosk.records.store import Store
from tests.helpers.recorded import cup_taken, handed_in, refused, weighing
from tests.helpers.sqlite_files import at_every_connect, pragma


@contextmanager
def little_room(where: str) -> Iterator[None]:
    """A disk that takes no page more than the file has."""
    pages = pragma(where, "page_count")

    def limit(connection: sqlite3.Connection, _record: object) -> None:
        connection.execute(f"PRAGMA max_page_count = {pages}")

    with at_every_connect(limit):
        yield


def test_a_full_disk_is_named_and_the_same_entries_can_be_kept_later(where: str) -> None:
    Store(where)
    long_frame = weighing("12.3", raw=bytes(100_000))
    entries = (cup_taken(7), dataclasses.replace(cup_taken(8), empty=long_frame))
    with little_room(where):
        crowded = Store(where)
        assert refused(crowded, *entries) is Problem.FULL
        assert crowded.cups_out(simulated=False) == []
    crowded.save(*entries)
    assert [cup.number for cup in crowded.cups_out(simulated=False)] == [7, 8]


def test_another_program_that_holds_the_file_is_named(
    monkeypatch: pytest.MonkeyPatch, store: Store, where: str
) -> None:
    monkeypatch.setattr(sqlite_file, "WAIT_S", 0.05)
    with closing(sqlite3.connect(where)) as holder:
        holder.execute("BEGIN IMMEDIATE")
        assert refused(store, cup_taken(7)) is Problem.IN_USE
        assert store.cups_out(simulated=False) == []
    store.save(cup_taken(7))


def test_two_programs_that_write_at_once_wait_for_each_other(where: str) -> None:
    stores = [Store(where), Store(where)]
    start = threading.Barrier(len(stores))

    def work(store: Store, first: int) -> int:
        start.wait()
        for number in range(first, first + 20):
            store.save(cup_taken(number))
        return first

    with ThreadPoolExecutor() as pool:
        assert list(pool.map(work, stores, (1, 51))) == [1, 51]
    assert len(stores[0].cups_out(simulated=False)) == 40


def test_a_file_that_went_away_is_missed_at_once_and_found_again(store: Store, where: str) -> None:
    cup = cup_taken()
    store.save(cup)
    os.rename(where, where + ".away")
    assert refused(store, handed_in(cup)) is Problem.NOT_WRITABLE
    assert not Path(where).exists()
    os.rename(where + ".away", where)
    store.save(handed_in(cup))
    assert len(store.last_tries("Heron", simulated=False)) == 1
