"""A writer whose answers come when a test says so, in the test's own thread."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from typing import Any

from kiosk.records.entries import Entry
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store

Request = tuple[Callable[[Store], Any], Callable[[Any], None], Callable[[RecordsError], None]]


class HeldWriter:
    """Stands in for a Writer on a store; `answer` does what was asked, `fail` refuses it."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self._requests: deque[Request] = deque()

    def ask(
        self,
        query: Callable[[Store], Any],
        *,
        done: Callable[[Any], None],
        failed: Callable[[RecordsError], None],
    ) -> None:
        """Hold a request."""
        self._requests.append((query, done, failed))

    def save(
        self, *entries: Entry, done: Callable[[], None], failed: Callable[[RecordsError], None]
    ) -> None:
        """Hold a request to keep something."""
        self.ask(lambda store: store.save(*entries), done=lambda _: done(), failed=failed)

    @property
    def asked(self) -> int:
        """How many requests wait for an answer."""
        return len(self._requests)

    def answer(self) -> None:
        """Do all that was asked, and what is asked because of it."""
        while self._requests:
            self.answer_one()

    def answer_one(self) -> None:
        """Do what was asked first."""
        query, done, failed = self._requests.popleft()
        try:
            answer = query(self.store)
        except RecordsError as error:
            failed(error)
        else:
            done(answer)

    def fail(self, problem: Problem = Problem.FULL) -> None:
        """Refuse all that was asked."""
        for _ in range(self.asked):
            _, _, failed = self._requests.popleft()
            failed(RecordsError(problem, where="records.sqlite", count=99))
