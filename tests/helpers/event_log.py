"""What a balance published, and a wait for it that ends."""

from __future__ import annotations

import queue
import time
from typing import TypeVar

from drivers.events import BalanceEvent

Event = TypeVar("Event")


class EventLog:
    """Callable as ``publish``; keeps every event in order."""

    def __init__(self) -> None:
        self.events: list[BalanceEvent] = []
        self._new: queue.SimpleQueue[BalanceEvent] = queue.SimpleQueue()

    def __call__(self, event: BalanceEvent) -> None:
        self.events.append(event)
        self._new.put(event)

    def of(self, kind: type[Event]) -> list[Event]:
        """All events of one kind so far."""
        return [event for event in self.events if isinstance(event, kind)]

    def wait_for(self, kind: type[Event], within: float = 3.0) -> Event:
        """The next event of that kind that nobody waited for yet; fails when it does not come."""
        end = time.monotonic() + within
        while (left := end - time.monotonic()) > 0:
            try:
                event = self._new.get(timeout=left)
            except queue.Empty:
                break
            if isinstance(event, kind):
                return event
        raise AssertionError(f"no {kind.__name__} within {within} s; came: {self.events[-5:]}")
