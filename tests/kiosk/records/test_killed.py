"""The program is killed at any moment: what it said to be kept is there."""

from __future__ import annotations

import random
import signal
import sqlite3
import time
from multiprocessing import get_context
from multiprocessing.connection import Connection

from kiosk.records.entries import TryThrownAway
from kiosk.records.store import Store
from tests.helpers.killed_keeper import keep_until_killed
from tests.helpers.recorded import AT

ROUNDS = 10
LONGEST_S = 0.06  # from the first kept entry to the kill; an entry takes a few thousandths


def killed_at_random(where: str, rng: random.Random) -> list[str]:
    """The ids that a keeper told before it was killed."""
    context = get_context("forkserver")
    context.set_forkserver_preload(["tests.helpers.killed_keeper"])
    here, there = context.Pipe(duplex=False)
    keeper = context.Process(target=keep_until_killed, args=(where, there))
    keeper.start()
    there.close()
    assert here.poll(30)
    time.sleep(rng.uniform(0, LONGEST_S))
    keeper.kill()
    keeper.join()
    assert keeper.exitcode == -signal.SIGKILL
    return all_that_came(here)


def all_that_came(here: Connection) -> list[str]:
    ids = []
    with here:
        try:
            while True:
                ids.append(here.recv_bytes().decode())
        except EOFError:
            return ids


def free_the_number(where: str) -> None:
    """The keeper always takes the same number, which a killed one may have left out."""
    store = Store(where)
    for cup in store.cups_out(simulated=False):
        store.save(TryThrownAway(try_id=cup.id, reason="killed", at=AT))
    store.close()


def column(file: sqlite3.Connection, question: str) -> list[str]:
    return [row[0] for row in file.execute(question)]


def test_what_was_said_to_be_kept_survives_kill_9(where: str) -> None:
    rng = random.Random(20260314)
    told: set[str] = set()
    for _ in range(ROUNDS):
        free_the_number(where)
        told.update(killed_at_random(where, rng))
        file = sqlite3.connect(where)
        taken = set(column(file, "SELECT id FROM cups_taken"))
        back = set(column(file, "SELECT try_id FROM cups_handed_in"))
        kept = taken | set(column(file, "SELECT id FROM cups_handed_in"))
        out = set(column(file, "SELECT holder FROM labels_taken"))
        thrown_away = set(column(file, "SELECT try_id FROM tries_thrown_away"))
        assert told <= kept
        assert out == taken - back - thrown_away
        assert column(file, "PRAGMA integrity_check") == ["ok"]
        assert column(file, "PRAGMA foreign_key_check") == []
        file.close()
    assert len(told) > ROUNDS
