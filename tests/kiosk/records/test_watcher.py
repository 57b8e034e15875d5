from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from queue import Empty, Queue
from threading import Event
from typing import TYPE_CHECKING

import pytest

from kiosk.records.changes import changes_at
from kiosk.records.store import Store
from kiosk.records.watcher import Watcher, watching
from tests.helpers.both_stores import BOTH_STORES
from tests.helpers.recorded import cup_taken

if TYPE_CHECKING:
    from tests.helpers.postgres import Postgres

PATIENCE_S = 10.0
Told = Queue[float]


@pytest.fixture
def watched() -> Iterator[Callable[[str], Told]]:
    """Begins to watch records: the moments at which something was told, after the first one."""
    watchers: list[Watcher] = []

    def watch(where: str) -> Told:
        told: Told = Queue()
        watchers.append(Watcher(watching(where), lambda: told.put(time.monotonic())))
        watchers[-1].start()
        told.get(timeout=PATIENCE_S)
        return told

    yield watch
    for watcher in watchers:
        watcher.close(PATIENCE_S)


@BOTH_STORES
def test_what_another_kiosk_wrote_is_told_within_a_second(
    store: Store, where: str, watched: Callable[[str], Told]
) -> None:
    told = watched(where)
    for number in (1, 2):
        store.save(cup_taken(number))
        written = time.monotonic()
        assert told.get(timeout=PATIENCE_S) - written < 1


@BOTH_STORES
def test_marks_are_equal_while_nobody_writes(store: Store, where: str) -> None:
    store.save(cup_taken(1))
    with closing(changes_at(where)) as changes:
        before = changes.mark()
        store.cups_out(simulated=False)
        assert changes.mark() == before
        store.save(cup_taken(2))
        assert changes.mark() != before


def test_a_hint_of_the_server_comes_at_once(on_server: str) -> None:
    with closing(Store(on_server)) as store, closing(changes_at(on_server)) as changes:
        store.save(cup_taken(1))
        begun = time.monotonic()
        changes.wait(Event())
        assert time.monotonic() - begun < 0.3  # much less than until the next look


def test_a_file_that_was_put_in_the_place_of_another_is_noticed(
    store: Store, where: str, watched: Callable[[str], Told]
) -> None:
    told = watched(where)
    other = where + ".other"
    Store(other).close()
    os.replace(other, where)
    told.get(timeout=PATIENCE_S)


def test_records_that_are_made_later_are_watched_then(
    where: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("kiosk.records.watcher.AGAIN_S", 0.01)
    told: Told = Queue()
    watcher = Watcher(watching(where), lambda: told.put(0))
    watcher.start()
    with pytest.raises(Empty):
        told.get(timeout=0.1)
    Store(where).close()
    told.get(timeout=PATIENCE_S)
    watcher.close(PATIENCE_S)


def test_a_server_that_is_there_again_is_told(
    own_server: Postgres, watched: Callable[[str], Told], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("kiosk.records.watcher.AGAIN_S", 0.05)
    told = watched(own_server.fresh())
    own_server.stop("immediate")
    own_server.start()
    told.get(timeout=PATIENCE_S)


def test_closing_does_not_wait_for_the_next_look(store: Store, where: str) -> None:
    watcher = Watcher(watching(where), lambda: None)
    watcher.start()
    begun = time.monotonic()
    watcher.close(PATIENCE_S)
    assert time.monotonic() - begun < 1
