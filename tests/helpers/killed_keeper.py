"""A process that keeps cups through the writer, and tells each id once it is said to be kept."""

from __future__ import annotations

from functools import partial
from multiprocessing.connection import Connection
from threading import Event

from kiosk.records.entries import Entry
from kiosk.records.errors import RecordsError
from kiosk.records.store import Store
from kiosk.records.writer import Writer
from tests.helpers.recorded import cup_taken, handed_in


def keep_until_killed(where: str, told: Connection) -> None:
    """Cups are taken and handed in, one after the other, until somebody ends this."""
    writer = Writer(partial(Store, where), answered=lambda call: call())
    while True:
        cup = cup_taken()
        for entry in (cup, handed_in(cup)):
            _keep(writer, entry, told)


def _keep(writer: Writer, entry: Entry, told: Connection) -> None:
    answered = Event()

    def done() -> None:
        told.send_bytes(entry.id.encode())
        answered.set()

    def failed(error: RecordsError) -> None:
        raise SystemExit(str(error))

    writer.save(entry, done=done, failed=failed)
    if not answered.wait(10):
        raise SystemExit("the writer did not answer")
