"""A file is taken in while another kiosk goes on with the same round on the same server."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import ExitStack, closing
from pathlib import Path
from time import monotonic

import psycopg
import pytest

from kiosk.records.exchange import export
from kiosk.records.store import Store
from kiosk.rounds.contents import Stage, Step, readable
from kiosk.settings import Task
from tests.helpers.pan import STARTED
from tests.helpers.round_notes import DIVISION, an_id, answer, said, with_teams

BEGUN = with_teams(["Wren", "Heron"])
LATE = said(BEGUN, answer("Wren", Task.COUNT_LOW, 400))


@pytest.fixture
def kiosks(on_server: str) -> Iterator[list[Store]]:
    with ExitStack() as stack:
        yield [stack.enter_context(closing(Store(on_server))) for _ in range(2)]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """What a kiosk without a network exported, with an answer that nobody else knows."""
    where = str(tmp_path / "other.sqlite")
    with closing(Store(where)) as other:
        other.save(*[one.note for chain in LATE.chains.values() for one in chain])
    list(export(where, tmp_path / "stick"))
    return tmp_path / "stick"


def wait_till_somebody_waits(on_server: str) -> None:
    last = monotonic() + 4
    with psycopg.connect(on_server, autocommit=True) as asking:
        while not asking.execute("SELECT 1 FROM pg_locks WHERE NOT granted").fetchone():
            assert monotonic() < last, "the other kiosk was not made to wait"


def test_another_kiosk_waits_with_that_round_and_comes_behind_it(
    kiosks: list[Store], folder: Path, on_server: str
) -> None:
    here, there = kiosks
    here.save(*[one.note for chain in BEGUN.chains.values() for one in chain])
    step = Step(division=DIVISION, stage=Stage.LOCKED)
    locked = BEGUN.next_note(step, at=STARTED, new_id=an_id)
    tried: list[Future[None]] = []

    def meanwhile(kind: str, about: str, content: str) -> bool:
        if not tried:
            tried.append(threads.submit(there.save, locked))
            wait_till_somebody_waits(on_server)
        return readable(kind, about, content)

    with ThreadPoolExecutor(1) as threads:
        here.take_in(folder, meanwhile)
        tried[0].result(4)
    notes = there.round_notes(BEGUN.id, after=BEGUN.last)
    assert [note.about for note in notes] == ["answer wren count low first", step.about]
