"""The server is killed in the middle of a save: saving again keeps everything, and once."""

from __future__ import annotations

import time
from contextlib import closing
from threading import Event, Thread
from typing import TYPE_CHECKING

from sqlalchemy import Connection, Engine, event

from kiosk.records.entries import CupTaken, Entry
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store
from tests.helpers.recorded import cup_taken, handed_in
from tests.helpers.server_records import content, somebody_waits

if TYPE_CHECKING:
    from tests.helpers.postgres import Postgres

KILLS = 3
LONGEST_S = 10.0  # for the server to be there again, by far


class Keeper(Thread):
    """A kiosk that takes cups and hands them in, again and again until each is kept."""

    def __init__(self, where: str) -> None:
        super().__init__()
        self.taken: list[CupTaken] = []
        self.given_up = False
        self.failures = 0
        self.enough = Event()
        self._where = where

    def run(self) -> None:
        with closing(Store(self._where)) as store:
            while not self.enough.is_set() and not self.given_up:
                cup = cup_taken()
                self._keep(store, cup)
                self._keep(store, handed_in(cup))
                self.taken.append(cup)

    def _keep(self, store: Store, entry: Entry) -> None:
        until = time.monotonic() + LONGEST_S
        while time.monotonic() < until:
            try:
                store.save(entry)
            except RecordsError as error:
                if error.problem is not Problem.AWAY:
                    break
                self.failures += 1
                time.sleep(0.002)
            else:
                return
        self.given_up = True


def test_nothing_is_lost_and_nothing_is_there_twice(own_server: Postgres) -> None:
    where = own_server.fresh()
    keeper = Keeper(where)
    keeper.start()
    for kill in range(KILLS):
        before = len(keeper.taken)
        until = time.monotonic() + LONGEST_S
        while len(keeper.taken) < before + 5 and time.monotonic() < until:
            time.sleep(0.003 * (kill + 1))
        own_server.stop("immediate")
        own_server.start()
    keeper.enough.set()
    keeper.join(LONGEST_S)
    assert not keeper.given_up
    assert keeper.failures >= KILLS
    assert len(keeper.taken) >= 5 * KILLS
    kept = content(where)
    ids = [cup.id for cup in keeper.taken]
    assert sorted(row["id"] for row in kept["cups_taken"]) == sorted(ids)
    assert sorted(row["try_id"] for row in kept["cups_handed_in"]) == sorted(ids)
    assert kept["labels_taken"] == []
    weighed = {cup.empty.id for cup in keeper.taken}
    assert len(kept["weighings"]) == 2 * len(ids)
    assert weighed <= {row["id"] for row in kept["weighings"]}


def test_a_save_whose_answer_got_lost_is_not_taken_for_somebody_elses(on_server: str) -> None:
    cup = cup_taken(7)
    in_the_middle, go_on = Event(), Event()

    def stop_before_the_end(_connection: Connection) -> None:
        in_the_middle.set()
        go_on.wait(LONGEST_S)

    def save() -> None:
        with closing(Store(on_server)) as store:
            event.listen(Engine, "commit", stop_before_the_end, once=True)
            store.save(cup)

    with closing(Store(on_server)) as again:
        lost = Thread(target=save)
        lost.start()
        assert in_the_middle.wait(LONGEST_S)
        release = Thread(target=lambda: somebody_waits(on_server) and go_on.set())
        release.start()
        again.save(cup)  # the number is taken by this very cup
        for thread in (lost, release):
            thread.join(LONGEST_S)
        assert [out.id for out in again.cups_out(simulated=False)] == [cup.id]
