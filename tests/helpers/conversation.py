"""A conversation written down: what the dialect must send, and what it is answered."""

from __future__ import annotations

from drivers.dialects import Dialect
from drivers.events import BalanceEvent
from drivers.packet import Packet

STEP = 0.05  # seconds between two looks at the line


def converse(
    dialect: Dialect, pairs: list[tuple[bytes, bytes | None]], start: float = 0.0
) -> tuple[list[BalanceEvent], float]:
    """Play the pairs (request without its ends, answer or None) and give the events and the time.

    A request that differs, or does not come within two seconds, fails. Answers take 50 ms.
    """
    events: list[BalanceEvent] = []
    now = start
    for sent, answered in pairs:
        waited = 0
        while not (request := dialect.due(now)):
            events += dialect.feed(Packet(now, b""))
            now += STEP
            waited += 1
            assert waited * STEP <= 2.0, f"{sent!r} was never sent"
        assert request == b"\n" + sent + b"\r"
        now += STEP
        if answered is not None:
            events += dialect.feed(Packet(now, answered))
    return events, now
